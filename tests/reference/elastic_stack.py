# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Plane orthotropic elasticity of a pile of laminations that slide on one another.

Two independent ways: finite elements with frictionless contact, and, for equal layers under clamps every s
without ends, the exact stress functions. Plane stress in x (grain) and y (across); mm, N, MPa.

Elements: rectangles of four nodes with two incompatible modes, so that they bend without locking
(Wilson, E.L. et al. 1973, Incompatible displacement models; from memory). Contact: node on node, a spring
10,000 times as stiff as the layer, that cannot pull.
"""
import cmath
import math

import numpy as np
import scipy.sparse as sp
import scipy.sparse.linalg as sla

CONTACT = 1e4   # contact spring, in stiffnesses of a layer through its thickness
ANCHOR = 1e-10  # keeps the pile from drifting, likewise


def compliance(e_along, e_across, shear, nu):
    return np.array([[1 / e_along, -nu / e_along, 0],
                     [-nu / e_along, 1 / e_across, 0],
                     [0, 0, 1 / shear]])


def element(a, b, height, stiffness):
    """Stiffness of a rectangle a x b, its two inner modes solved for and left out."""
    corners = [(-1, -1), (1, -1), (1, 1), (-1, 1)]
    full = np.zeros((12, 12))
    for xi in (-1 / math.sqrt(3), 1 / math.sqrt(3)):
        for eta in (-1 / math.sqrt(3), 1 / math.sqrt(3)):
            strain = np.zeros((3, 12))
            slopes = [(cx * (1 + cy * eta) / 4 * 2 / a, cy * (1 + cx * xi) / 4 * 2 / b)
                      for cx, cy in corners]
            slopes += [(-2 * xi * 2 / a, 0.0), (0.0, -2 * eta * 2 / b)]
            for i, (dx, dy) in enumerate(slopes):
                strain[0, 2 * i] = dx
                strain[1, 2 * i + 1] = dy
                strain[2, 2 * i] = dy
                strain[2, 2 * i + 1] = dx
            full += strain.T @ stiffness @ strain * (height * a * b / 4)
    inner = full[8:, 8:]
    return full[:8, :8] - full[:8, 8:] @ np.linalg.solve(inner, full[8:, :8])


class Stack:
    """pieces: dicts course, start, length, thickness, height, e_along, e_across, shear, nu, bow.
    With `half`, only the left half up to x = length / 2 is kept; the cut stays plane. """

    def __init__(self, pieces, dx, length, half=True, both_cuts=False):
        self.pieces, self.dx, self.length = pieces, dx, length
        self.cut = round(length / 2 / dx) if half else None
        self.both_cuts = both_cuts
        self.n = 0
        self.parts = []
        rows, cols, values = [], [], []
        fixed = []
        for piece in pieces:
            first = round(piece['start'] / dx)
            last = round((piece['start'] + piece['length']) / dx)
            if self.cut is not None:
                last = min(last, self.cut)
            if first >= last:
                self.parts.append(None)
                continue
            ny = max(4, math.ceil(piece['thickness'] / 5.0))
            nx = last - first
            node = self.n // 2 + np.arange((nx + 1) * (ny + 1)).reshape(nx + 1, ny + 1)
            self.n += 2 * node.size
            d = np.linalg.inv(compliance(piece['e_along'], piece['e_across'], piece['shear'],
                                         piece['nu']))
            k = element(dx, piece['thickness'] / ny, piece['height'], d)
            quads = np.stack([node[:-1, :-1], node[1:, :-1], node[1:, 1:], node[:-1, 1:]], axis=-1)
            dofs = np.stack([2 * quads, 2 * quads + 1], axis=-1).reshape(-1, 8)
            rows.append(np.repeat(dofs, 8, axis=1).ravel())
            cols.append(np.tile(dofs, (1, 8)).ravel())
            values.append(np.tile(k.ravel(), len(dofs)))
            if last == self.cut:
                fixed += list(2 * node[-1])
            else:
                fixed.append(2 * node[nx // 2, ny // 2])
            if both_cuts:
                fixed += list(2 * node[0])
            self.parts.append((first, last, node))
            layer = piece['e_across'] * piece['height'] / piece['thickness'] * dx
            rows.append(2 * node.ravel() + 1)
            cols.append(2 * node.ravel() + 1)
            values.append(np.full(node.size, ANCHOR * layer))
        self.k = sp.csc_matrix((np.concatenate(values), (np.concatenate(rows), np.concatenate(cols))),
                               shape=(self.n, self.n))
        self.free = np.setdiff1d(np.arange(self.n), fixed)
        self.find_contacts()

    def bow_at(self, piece, x):
        xi = (x - piece['start']) / piece['length']
        return piece['bow'] * 4 * xi * (1 - xi)

    def find_contacts(self):
        """Arrays over all contacts: line, x, the two v unknowns, length, height, spring, gap."""
        table = []
        for i, a in enumerate(self.pieces):
            for j, b in enumerate(self.pieces):
                if b['course'] != a['course'] + 1 or self.parts[i] is None or self.parts[j] is None:
                    continue
                first = max(self.parts[i][0], self.parts[j][0])
                last = min(self.parts[i][1], self.parts[j][1])
                height = min(a['height'], b['height'])
                layer = a['e_across'] * height / a['thickness']
                for station in range(first, last + 1) if first < last else []:
                    length = self.dx * (0.5 if station in (first, last) else 1.0)
                    x = station * self.dx
                    table.append((a['course'], x,
                                  2 * self.parts[i][2][station - self.parts[i][0], -1] + 1,
                                  2 * self.parts[j][2][station - self.parts[j][0], 0] + 1,
                                  length, height, CONTACT * layer * length,
                                  self.bow_at(b, x) - self.bow_at(a, x)))
        columns = list(zip(*table))
        self.line, self.x = np.array(columns[0]), np.array(columns[1])
        self.upper, self.lower = np.array(columns[2]), np.array(columns[3])
        self.area = np.array(columns[4]) * np.array(columns[5])
        self.spring, self.gap = np.array(columns[6]), np.array(columns[7])

    def loads(self, clamps):
        f = np.zeros(self.n)
        last_course = self.pieces[-1]['course']
        for x, force, head in clamps:
            for piece, part in zip(self.pieces, self.parts):
                if part is None or piece['course'] not in (0, last_course):
                    continue
                first, last, node = part
                face, sign = (node[:, 0], 1) if piece['course'] == 0 else (node[:, -1], -1)
                for e in range(last - first):
                    left = (first + e) * self.dx
                    low, high = max(x - head / 2, left), min(x + head / 2, left + self.dx)
                    if low >= high:
                        continue
                    q = sign * force / head * (high - low)
                    share = ((low + high) / 2 - left) / self.dx
                    f[2 * face[e] + 1] += q * (1 - share)
                    f[2 * face[e + 1] + 1] += q * share
        return f

    def pressures(self, clamps):
        """Pressure at every contact; raises when the open spots do not settle."""
        f = self.loads(clamps)
        closed = np.ones(len(self.x), bool)
        for _ in range(40):
            k = np.where(closed, self.spring, 0.0)
            springs = sp.coo_matrix(
                (np.concatenate([k, k, -k, -k]),
                 (np.concatenate([self.upper, self.lower, self.upper, self.lower]),
                  np.concatenate([self.upper, self.lower, self.lower, self.upper]))),
                shape=(self.n, self.n))
            rhs = f.copy()
            np.add.at(rhs, self.upper, k * self.gap)
            np.add.at(rhs, self.lower, -k * self.gap)
            matrix = (self.k + springs.tocsc())[self.free][:, self.free]
            u = np.zeros(self.n)
            u[self.free] = sla.splu(matrix.tocsc(), permc_spec='MMD_AT_PLUS_A',
                                    options={'SymmetricMode': True},
                                    diag_pivot_thresh=0.0).solve(rhs[self.free])
            overlap = u[self.upper] - u[self.lower] - self.gap
            wanted = overlap > 0
            if (wanted == closed).all():
                return k * overlap / self.area
            closed = wanted
        raise RuntimeError('the open spots do not settle')


def exact_layer(t, e_along, e_across, shear, nu, k):
    """Cs and Ca of a layer for one wave: its squeeze under equal, and its mid-plane's move under
    opposite, face pressures; stress function f(y) cos kx with faces free of shear."""
    s11, s22, s12, s66 = 1 / e_along, 1 / e_across, -nu / e_along, 1 / shear
    b = 2 * s12 + s66
    root = cmath.sqrt(b * b - 4 * s11 * s22)
    lam = [cmath.sqrt((b + sign * root) / (2 * s11)) for sign in (1, -1)]
    z = [g * k * t / 2 for g in lam]
    answers = []
    for even in (True, False):
        h = cmath.cosh if even else cmath.sinh
        dh = cmath.sinh if even else cmath.cosh
        m = np.array([[lam[0] * k * dh(z[0]), lam[1] * k * dh(z[1])], [h(z[0]), h(z[1])]])
        amplitude = np.linalg.solve(m, np.array([0, 1 / k ** 2]))
        third = sum(amplitude[i] * (lam[i] * k) ** 3 * dh(z[i]) for i in range(2))
        answers.append((s11 * third / k ** 2).real)
    return -2 * answers[0], -answers[1] / 2


def exact_pressures(n, t, spacing, head, layer, x, n_waves=120):
    """p / p_mean of lines 1..n-1 at x from a clamp, clamps every `spacing`, everything closed."""
    p = np.ones((n - 1, len(x)))
    for m in range(1, n_waves + 1):
        k = 2 * math.pi * m / spacing
        if k * t > 60:
            break
        cs, ca = exact_layer(t, *layer, k)
        d, s = ca - cs / 4, ca + cs / 4
        q = 4 * math.sin(k * head / 2) / (k * head)
        matrix = (np.diag(np.full(n - 1, -2 * s)) + np.diag(np.full(n - 2, d), 1)
                  + np.diag(np.full(n - 2, d), -1))
        rhs = np.zeros(n - 1)
        rhs[0] -= d * q
        rhs[-1] -= d * q
        p += np.outer(np.linalg.solve(matrix, rhs), np.cos(k * x))
    return p
