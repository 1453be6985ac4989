#!/usr/bin/python3
# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""How far the 45 degree rule is out, by plane elasticity: the program's spacing, the exact pressure there.

Layers of orthotropic wood that slide on one another, without ends, under clamps that stand s apart: the
load is a Fourier series, and each wave is solved exactly by Airy's stress function (f(y) cos kx, with
s11 f'''' - (2 s12 + s66) k2 f'' + s22 k4 f = 0), layer on layer. Nothing is shared with the program.
Usage: clamping.py TOOL"""

import cmath
import os
import pathlib
import re
import subprocess
import sys

import numpy as np

import tap

LAYERS = 12
WAVES = 150
# E along, E across, G (MPa) and Poisson's ratio of a softwood, a medium and a dense hardwood.
WOODS = ((11000, 550, 650, 0.4), (11500, 900, 850, 0.4), (13000, 1300, 1200, 0.4))
MODELS = pathlib.Path(os.environ['BROADSTAVE_SOURCE']) / 'docs' / 'models.md'


def squeeze_and_bend(wood, t, k):
    """Of one layer under a pressure cos kx: shortening when it acts on both faces; deflection when half of
    it pushes one face and half pulls the other."""
    along, across, shear, poisson = wood
    s11, s22, s12, s66 = 1 / along, 1 / across, -poisson / along, 1 / shear
    middle = 2 * s12 + s66
    root = cmath.sqrt(middle**2 - 4 * s11 * s22)
    a, b = (k * cmath.sqrt((middle + sign * root) / (2 * s11)) for sign in (1, -1))
    y = t / 2
    deflections = []
    for even, odd in ((cmath.cosh, cmath.sinh), (cmath.sinh, cmath.cosh)):
        # No shear on the faces, and the stress k2 f = 1 there.
        matrix = np.array([[a * odd(a * y), b * odd(b * y)], [even(a * y), even(b * y)]])
        first, second = np.linalg.solve(matrix, [0, 1 / k**2])
        deflections.append((s11 * (first * a**3 * odd(a * y) + second * b**3 * odd(b * y)) / k**2).real)
    return -2 * deflections[0], -deflections[1] / 2


def find_pressures(wood, t, head, spacing):
    """Least and greatest pressure of every glue line, as parts of the mean."""
    x = np.linspace(0, spacing / 2, 401)
    pressure = np.ones((LAYERS - 1, x.size))
    for wave in range(1, WAVES + 1):
        k = 2 * np.pi * wave / spacing
        if k * t > 60:
            break  # waves that short do not reach the first glue line
        load = 4 * np.sin(k * head / 2) / (k * head)
        squeeze, bend = squeeze_and_bend(wood, t, k)
        own, other = bend + squeeze / 4, bend - squeeze / 4
        size = LAYERS - 1
        matrix = np.diag([-2 * own] * size) + np.diag([other] * (size - 1), 1) \
            + np.diag([other] * (size - 1), -1)
        right = np.zeros(size)
        right[0] = right[-1] = -other * load
        pressure += np.outer(np.linalg.solve(matrix, right), np.cos(k * x))
    return pressure.min(axis=1), pressure.max(axis=1)


def ask(t, head):
    answer = subprocess.run([sys.argv[1], str(t), str(head)], capture_output=True, text=True, check=True)
    return [float(number) for number in answer.stdout.split()]


def read_table():
    """The least pressures that docs/models.md prints: {(t, b): [of each wood]}."""
    text = MODELS.read_text(encoding='utf-8')
    heads = [int(head) for head in re.findall(r'\| b (\d+)', text)]
    return {(int(row[0]), head): [float(part) for part in cell.split(',')]
            for row in re.findall(r'^\| (\d+) \| (.*) \|$', text, re.MULTILINE)
            for head, cell in zip(heads, row[1].split(' | '))}


def check_layer():
    """Long waves: Euler's beam with shear, and plain compression by t / E."""
    along, across, shear, _ = wood = WOODS[1]
    t, k = 20.0, 2 * np.pi / 2000
    squeeze, bend = squeeze_and_bend(wood, t, k)
    beam = 12 / (along * t**3 * k**4) + 1.2 / (shear * t * k**2)
    assert abs(squeeze / (t / across) - 1) < 0.01, squeeze
    assert abs(bend / beam - 1) < 0.01, bend


def check_even_load():
    """Heads that touch press evenly: the sum of all waves is nothing."""
    least, greatest = find_pressures(WOODS[0], 40, 120, 120)
    assert np.allclose(least, 1) and np.allclose(greatest, 1)


def check_cell(t, head, printed):
    spacing, lowest, highest = ask(t, head)
    assert abs(spacing - (head + 2 * t)) < 1e-6, spacing
    for wood, value in zip(WOODS, printed):
        least = find_pressures(wood, t, head, spacing)[0][0]
        assert abs(least - value) <= 0.0051, f'computed {least:.4f}, printed {value}'
        assert lowest <= least <= highest, f'{least:.3f} is not within {lowest} to {highest}'


def check_table():
    assert len(TABLE) == 9 and all(len(printed) == len(WOODS) for printed in TABLE.values()), TABLE


TABLE = read_table()
tap.run([('/clamping/layer', check_layer), ('/clamping/even-load', check_even_load),
         ('/clamping/table-read', check_table)] +
        [(f'/clamping/least/t-{t}-b-{head}', lambda cell=(t, head, printed): check_cell(*cell))
         for (t, head), printed in TABLE.items()])
