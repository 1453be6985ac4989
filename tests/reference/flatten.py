#!/usr/bin/python3
# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Thickness after flattening against a linear programme solved by HiGHS (scipy.optimize.linprog).

The programme in (a, b, c, t) is written out over sampled spots of both faces; the worst spots of a
dense grid, sharpened by golden section, are added until none sticks out by more than 1e-8 mm. Nothing
is shared with the program but the definition of a warped lamination.

A slab that rests on one face before it is cut may rest in many equally good ways. So the program's own tilt
is judged: the plane under the face at that tilt must come as near to it at the middle of the slab as the
best plane of another linear programme does, and the thickness at that tilt must be the program's.
Usage: flatten.py TOOL FOLDER [SLABS]"""

import subprocess
import sys
from functools import partial

import numpy as np
from scipy.optimize import linprog

from tap import run

EDGE, FLAT = 0, 1
SHIMMED, SHOW_FACE_FIRST, UNDERSIDE_FIRST = 0, 1, 2
TOLERANCE = 2e-6  # mm: the program promises 1e-6
GRID = np.array([(i / 24, j / 8) for i in range(25) for j in range(9)])

PARTS = [np.flatnonzero(mask) for mask in (
    GRID[:, 0] == 0, GRID[:, 0] == 1, GRID[:, 1] == 0, GRID[:, 1] == 1,
    (GRID[:, 0] > 0) & (GRID[:, 0] < 1) & (GRID[:, 1] > 0) & (GRID[:, 1] < 1))]
NEAR = 0.1  # mm: more than any of the slabs' faces bends between two spots of the grid
LOCAL = np.array([(i, j) for i in np.linspace(-1, 1, 7) for j in np.linspace(-1, 1, 7)])


def random_slab(rng):
    n = int(rng.integers(1, 16))
    scale = rng.choice([0.0, 0.5, 3.0])  # some slabs are straight: every spot ties
    rows = []
    for _ in range(n):
        length = 2000.0 if rng.random() < 0.6 else float(rng.uniform(900, 2000))
        rows.append(dict(
            length=length,
            thickness=float(rng.uniform(18, 60)),
            height=85.0 if rng.random() < 0.4 else float(rng.uniform(82, 88)),
            crook=float(rng.normal(0, scale)),
            cup=float(rng.normal(0, scale / 2)),
            twist=float(rng.normal(0, scale)) if rng.random() < 0.5 else 0.0,
            taper=float(rng.normal(0, scale / 2)) if rng.random() < 0.5 else 0.0,
            start=0.0 if rng.random() < 0.5 else 2000.0 - length,
            turn=int(rng.integers(0, 4))))
    return dict(layup=int(rng.integers(0, 2)), alignment=int(rng.integers(0, 4)), rows=rows)


class Lamination:
    """One lamination in the slab; s and u run from 0 to 1 along and across."""

    def __init__(self, row, layup, y):
        over, ends = row["turn"] & 1, row["turn"] & 2
        sign = -1.0 if over else 1.0
        left, right = row["height"], row["height"] + row["taper"]
        if ends:
            left, right = right, left
        self.x, self.y = row["start"], y
        self.length, self.width = row["length"], row["thickness"]
        self.left, self.right = left, right
        self.crook = sign * row["crook"]
        self.cup = sign * row["cup"] if layup == FLAT else 0.0
        wide = row["thickness"] if layup == FLAT else row["height"]
        self.twist = row["twist"] * row["thickness"] / wide
        self.low = 0.0

    def underside(self, s, u):
        return (self.low + self.crook * (1 - (2 * s - 1) ** 2) + self.cup * (1 - (2 * u - 1) ** 2)
                + self.twist * (s - 0.5) * (u - 0.5))

    def top(self, s, u):
        return self.underside(s, u) + self.left * (1 - s) + self.right * s

    def middle(self, s, u):
        return (self.underside(s, u) + self.top(s, u)) / 2

    def at(self, s, u):
        return self.x + s * self.length, self.y + u * self.width


def sharpen(value, centre, best):
    """Ever finer grids around a spot, which shrink only when the best one is not on their rim (a narrow
    valley is followed to its end)."""
    span = np.array([1 / 24, 1 / 8])
    while span[0] > 1e-6:
        spots = np.clip(centre + LOCAL * span, 0, 1)
        values = value(spots[:, 0], spots[:, 1])
        k = int(np.argmin(values))
        moved = values[k] < best
        if moved:
            best, centre = float(values[k]), spots[k]
        if not moved or np.all(np.abs(LOCAL[k]) < 1):
            span = span * 0.5
    return best, centre


def least(value):
    """Least of value(s, u) on the unit square: the best spot of each edge and of the inside, sharpened."""
    values = value(GRID[:, 0], GRID[:, 1])
    best = np.inf, None
    for part in PARTS:
        k = part[int(np.argmin(values[part]))]
        if values[k] < best[0] + NEAR:
            best = min(best, sharpen(value, GRID[k], float(values[k])), key=lambda found: found[0])
    return best


def align(laminations, alignment):
    height = max(max(l.left, l.right) for l in laminations)
    for l in laminations:
        if alignment == 0:
            l.low = -least(l.underside)[0]
        elif alignment == 1:
            l.low = height + least(lambda s, u: -l.top(s, u))[0]
        elif alignment == 3:
            low, high = least(l.middle)[0], -least(lambda s, u: -l.middle(s, u))[0]
            l.low = height / 2 - (low + high) / 2


def build(slab):
    laminations, y = [], 0.0
    for row in slab["rows"]:
        laminations.append(Lamination(row, slab["layup"], y))
        y += row["thickness"]
    align(laminations, slab["alignment"])
    return laminations, 2000.0, y


def middle(laminations):
    areas = np.array([l.length * l.width for l in laminations])
    x = np.array([l.x + l.length / 2 for l in laminations])
    y = np.array([l.y + l.width / 2 for l in laminations])
    return float(areas @ x / areas.sum()), float(areas @ y / areas.sum())


def lowest(laminations, face, slope_x, slope_y):
    """Least of face(lamination) less the tilt, over all laminations."""
    def less(l):
        def value(s, u):
            x, v = l.at(s, u)
            return face(l)(s, u) - slope_x * x - slope_y * v
        return value
    return min(least(less(l))[0] for l in laminations)


def rest(laminations, face, length, width):
    """How high a plane under a face can come at the middle of the slab."""
    xm, ym = middle(laminations)
    rows, limits = [], []

    def add(l, s, u):
        x, v = l.at(s, u)
        rows.append([x / length, v / width, 1])
        limits.append(float(face(l)(s, u)))

    for l in laminations:
        for s in (0.0, 0.5, 1.0):
            for u in (0.0, 1.0):
                add(l, s, u)
    for _ in range(60):
        answer = linprog([-xm / length, -ym / width, -1], A_ub=rows, b_ub=limits,
                         bounds=[(None, None)] * 3, method="highs",
                         options=dict(primal_feasibility_tolerance=1e-9,
                                      dual_feasibility_tolerance=1e-9))
        assert answer.status == 0, answer.message
        a, b, c = answer.x
        worst = 0.0
        for l in laminations:
            def over(s, u):
                x, v = l.at(s, u)
                return face(l)(s, u) - a * x / length - b * v / width - c

            gap, (s, u) = least(over)
            if gap < -1e-8:
                add(l, s, u)
                worst = max(worst, -gap)
        if worst <= 1e-7:
            return -answer.fun
    raise RuntimeError("the cutting planes did not end")


def underside(l):
    return l.underside


def top_turned_over(l):
    return lambda s, u: -l.top(s, u)


def underside_turned_over(l):
    return lambda s, u: -l.underside(s, u)


def top(l):
    return l.top


def check_rest(slab, got):
    """The program's tilt is a best rest, and its thickness is the one at that tilt."""
    thickness, slope_x, slope_y = got
    laminations, length, width = build(slab)
    sign = 1.0 if slab["work"] == SHOW_FACE_FIRST else -1.0
    face = underside if slab["work"] == SHOW_FACE_FIRST else top_turned_over
    xm, ym = middle(laminations)
    height = (lowest(laminations, face, sign * slope_x, sign * slope_y)
              + sign * (slope_x * xm + slope_y * ym))
    best = rest(laminations, face, length, width)
    assert best - TOLERANCE <= height <= best + TOLERANCE, f"rests at {height}, HiGHS {best}, {slab}"
    between = (lowest(laminations, top, slope_x, slope_y)
               + lowest(laminations, underside_turned_over, -slope_x, -slope_y))
    assert abs(thickness - between) <= TOLERANCE, f"{between} at its tilt, program {thickness}, {slab}"


def solve(slab):
    laminations, length, width = build(slab)

    rows, limits = [], []

    def add(l, s, u, is_top):
        x, v = l.at(s, u)
        if is_top:
            rows.append([x / length, v / width, 1, 1])
            limits.append(float(l.top(s, u)))
        else:
            rows.append([-x / length, -v / width, -1, 0])
            limits.append(-float(l.underside(s, u)))

    for l in laminations:
        for s in (0.0, 0.5, 1.0):
            for u in (0.0, 1.0):
                add(l, s, u, True)
                add(l, s, u, False)
    for _ in range(60):
        answer = linprog([0, 0, 0, -1], A_ub=rows, b_ub=limits, bounds=[(None, None)] * 4,
                         method="highs", options=dict(primal_feasibility_tolerance=1e-9,
                                                      dual_feasibility_tolerance=1e-9))
        assert answer.status == 0, answer.message
        a, b, c, t = answer.x
        worst = 0.0
        for l in laminations:
            def above(s, u):
                x, v = l.at(s, u)
                return l.top(s, u) - a * x / length - b * v / width - c - t

            def below(s, u):
                x, v = l.at(s, u)
                return a * x / length + b * v / width + c - l.underside(s, u)

            for value, is_top in ((above, True), (below, False)):
                gap, (s, u) = least(value)
                if gap < -1e-8:
                    add(l, s, u, is_top)
                    worst = max(worst, -gap)
        if worst <= 1e-7:
            return t, worst
    raise RuntimeError("the cutting planes did not end")


def main():
    tool, count = sys.argv[1], int(sys.argv[3]) if len(sys.argv) > 3 else 80
    rng = np.random.default_rng(20)
    slabs = [dict(random_slab(rng), work=SHIMMED) for _ in range(count)]
    slabs += [dict(random_slab(rng), work=1 + i % 2) for i in range(count // 2)]
    text = ""
    for slab in slabs:
        text += f"{len(slab['rows'])} {slab['layup']} {slab['alignment']} {slab['work']}\n"
        for r in slab["rows"]:
            text += " ".join(repr(r[k]) for k in ("length", "thickness", "height", "crook", "cup",
                                                  "twist", "taper", "start")) + f" {r['turn']}\n"
    lines = subprocess.run([tool], input=text, capture_output=True, text=True,
                           check=True).stdout.splitlines()

    assert len(lines) == len(slabs)

    def check(slab, got):
        if slab["work"] != SHIMMED:
            check_rest(slab, got)
            return
        wanted, left = solve(slab)
        assert abs(got[0] - wanted) <= TOLERANCE, f"HiGHS {wanted} (left {left}), program {got}, {slab}"

    run((f"/reference/flatten/{('shimmed', 'show-face-first', 'underside-first')[slab['work']]}/"
         f"{('on-edge', 'on-flat')[slab['layup']]}/{len(slab['rows'])}-laminations-{i + 1}",
         partial(check, slab, [float(number) for number in lines[i].split()]))
        for i, slab in enumerate(slabs))


main()
