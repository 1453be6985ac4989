#!/usr/bin/python3
# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Pressures of our solver against plane orthotropic finite elements with frictionless contact.

First the elements are checked on the exact layered solution. Then, on each stack and at every line
between the first clamp and the last: greatest pressure within 5 %, least within 0.03 of the mean.
Prints TAP. Usage: pressing.py PRESS_TOOL
"""
import subprocess
import sys
import time

import numpy as np

from elastic_stack import Stack, exact_pressures

DX = 5.0          # of the elements, mm
GREATEST = 0.05   # allowed difference of the greatest pressure, as a part of it
LEAST = 0.03      # allowed difference of the least pressure, as a part of the mean
EXACT = 0.02      # allowed difference of the elements from the exact solution, likewise

SOFT = dict(e_along=11000.0, e_across=550.0, shear=650.0, nu=0.40)
MEDIUM = dict(e_along=11500.0, e_across=900.0, shear=850.0, nu=0.38)
DENSE = dict(e_along=13000.0, e_across=1300.0, shear=1200.0, nu=0.37)


def piece(course, thickness, wood, length, height=80.0, bow=0.0, start=0.0, caul=0):
    return dict(course=course, start=start, length=length, thickness=thickness, height=height,
                bow=bow, caul=caul, **wood)


def pile(n, thickness, wood, length, **more):
    return [piece(i, thickness, wood, length, **more) for i in range(n)]


def with_cauls(pieces, thickness, height, wood, length):
    """The same between two cauls; courses counted anew."""
    inner = [dict(p, course=p['course'] + 1) for p in pieces]
    last = inner[-1]['course'] + 1
    return ([piece(0, thickness, wood, length, height=height, caul=1)] + inner
            + [piece(last, thickness, wood, length, height=height, caul=1)])


def bowed(pieces, bows):
    return [dict(p, bow=bows[i % len(bows)]) for i, p in enumerate(pieces)]


def even_clamps(n, length, force, head, end=0.45):
    spacing = length / (n - 1 + 2 * end)
    return [(spacing * (end + i), force, head) for i in range(n)]


def mixed_pile(length):
    sizes = [(28, SOFT, 80), (45, MEDIUM, 84), (33, DENSE, 80), (52, SOFT, 88), (38, MEDIUM, 80),
             (25, DENSE, 82), (41, SOFT, 80)]
    return [piece(i, t, wood, length, height=h) for i, (t, wood, h) in enumerate(sizes)]


def butted_pile(length):
    """Five courses; the third is two pieces end to end."""
    pieces = pile(5, 36.0, MEDIUM, length)
    joint = 400.0
    pieces[2:3] = [piece(2, 36.0, MEDIUM, joint), piece(2, 36.0, MEDIUM, length - joint, start=joint)]
    return pieces


# name, pieces, length, clamps, whether the left half tells all
CASES = [
    ('two-thick', pile(2, 60.0, MEDIUM, 1200.0), 1200.0, even_clamps(6, 1200.0, 6e3, 40.0), True),
    ('two-thin', pile(2, 20.0, SOFT, 720.0), 720.0, even_clamps(8, 720.0, 2e3, 35.0), True),
    ('three', pile(3, 40.0, DENSE, 960.0), 960.0, even_clamps(6, 960.0, 6e3, 40.0), True),
    ('six', pile(6, 40.0, MEDIUM, 1200.0), 1200.0, even_clamps(6, 1200.0, 6e3, 40.0), True),
    ('twelve-thin', pile(12, 20.0, DENSE, 960.0), 960.0, even_clamps(8, 960.0, 4e3, 40.0), True),
    ('twelve-soft-across', pile(12, 40.0, dict(SOFT, e_across=350.0), 1200.0), 1200.0,
     even_clamps(6, 1200.0, 6e3, 40.0), True),
    ('twenty-four', pile(24, 40.0, MEDIUM, 1200.0), 1200.0, even_clamps(6, 1200.0, 6e3, 40.0), True),
    ('opens-between-clamps', pile(4, 30.0, DENSE, 1400.0), 1400.0, even_clamps(4, 1400.0, 6e3, 40.0),
     True),
    ('opens-deep', pile(10, 25.0, MEDIUM, 1600.0), 1600.0, even_clamps(4, 1600.0, 6e3, 40.0), True),
    ('cauls', with_cauls(pile(6, 40.0, MEDIUM, 1400.0), 50.0, 60.0, DENSE, 1400.0), 1400.0,
     even_clamps(4, 1400.0, 8e3, 40.0), True),
    ('thin-cauls', with_cauls(pile(8, 30.0, SOFT, 1200.0), 25.0, 50.0, DENSE, 1200.0), 1200.0,
     even_clamps(6, 1200.0, 5e3, 50.0), True),
    ('bowed-alike', bowed(pile(5, 40.0, MEDIUM, 1600.0), [2.0]), 1600.0,
     even_clamps(8, 1600.0, 5e3, 40.0), True),
    ('bowed-apart', bowed(pile(6, 30.0, MEDIUM, 1600.0), [1.5, -1.5, 0.5]), 1600.0,
     even_clamps(8, 1600.0, 4e3, 40.0), True),
    ('bowed-and-opening', bowed(pile(3, 45.0, DENSE, 1600.0), [2.0, 0.0, -2.0]), 1600.0,
     even_clamps(4, 1600.0, 4e3, 40.0), True),
    ('mixed-uneven-clamps', mixed_pile(1200.0), 1200.0,
     [(90.0, 5e3, 40.0), (300.0, 6e3, 50.0), (480.0, 4e3, 30.0), (720.0, 6e3, 40.0),
      (900.0, 5e3, 40.0), (1100.0, 5e3, 40.0)], False),
    ('butt-joint', butted_pile(1000.0), 1000.0, even_clamps(5, 1000.0, 5e3, 40.0), False),
]


class Tap:
    def __init__(self):
        self.n, self.failed = 0, 0

    def case(self, name, complaints):
        self.n += 1
        self.failed += bool(complaints)
        print(f"{'not ok' if complaints else 'ok'} {self.n} /pressing/{name}", flush=True)
        for text in complaints:
            print(f'# {text}')


def check_exact(tap):
    """The elements against the exact solution: 12 equal layers, everything closed, no ends."""
    for name, t, spacing, layer in (('a-20-120', 20.0, 120.0, (12000.0, 1200.0, 800.0, 0.37)),
                                    ('a-40-300', 40.0, 300.0, (12000.0, 1200.0, 800.0, 0.37)),
                                    ('b-40-200', 40.0, 200.0, (12000.0, 700.0, 800.0, 0.40))):
        wood = dict(zip(('e_along', 'e_across', 'shear', 'nu'), layer))
        stack = Stack(pile(12, t, wood, spacing), DX, spacing, both_cuts=True)
        p = stack.pressures([(0.0, 5e3, 40.0)]) / (5e3 / (80.0 * spacing))
        x = stack.x[stack.line == 0]
        wanted = exact_pressures(12, t, spacing, 40.0, layer, x)
        worst = max(np.abs(p[stack.line == i] / wanted[i].max() - wanted[i] / wanted[i].max()).max()
                    for i in range(11))
        tap.case(f'elements-are-exact/{name}',
                 [f'off by {worst:.3f} of the greatest'] if worst > EXACT else [])


def run_tool(tool, pieces, clamps):
    step = min([10.0] + [c[2] / 4 for c in clamps] + [p['thickness'] / 4 for p in pieces])
    text = f'model squeeze\nstep {step}\n'
    for p in pieces:
        text += (f"piece {p['course']} {p['start']} {p['length']} {p['thickness']} {p['height']} "
                 f"{p['e_along']} {p['e_across']} {p['shear']} {p['bow']} {p['caul']}\n")
    for x, force, head in clamps:
        text += f'clamp {x} {force} {head}\n'
    done = subprocess.run([tool], input=text + 'solve\n', capture_output=True, text=True, check=True)
    lines, microseconds = [], 0
    for row in done.stdout.splitlines():
        words = row.split()
        if words[0] == 'line':
            lines.append([])
        elif words[0] == 'done':
            microseconds = int(words[1])
        else:
            lines[-1].append([float(w) for w in words])
    return [np.array(rows) for rows in lines], microseconds


def within(x, pieces, low, high):
    """Between first and last clamp, and 10 mm off the ends of pieces."""
    keep = (x >= low) & (x <= high)
    for p in pieces:
        for end in (p['start'], p['start'] + p['length']):
            keep &= np.abs(x - end) >= 10.0 - 1e-6
    return keep


def check_stack(tap, tool, case):
    name, pieces, length, clamps, half = case
    ours, microseconds = run_tool(tool, pieces, clamps)
    begun = time.monotonic()
    stack = Stack(pieces, DX, length, half=half)
    cut = length / 2 if half else length
    pressures = stack.pressures([c for c in clamps if c[0] < cut])
    seconds = time.monotonic() - begun
    low, high = clamps[0][0], min(clamps[-1][0], cut)
    complaints, worst_greatest, worst_least = [], 0.0, 0.0
    for i, rows in enumerate(ours):
        of_line = stack.line == i
        wanted = pressures[of_line][within(stack.x[of_line], pieces, low, high)]
        got = rows[within(rows[:, 0], pieces, low, high), 1]
        mean = sum(c[1] for c in clamps) / length / (stack.area[of_line].max() / DX)
        greatest = got.max() / wanted.max() - 1
        least = (got.min() - wanted.min()) / mean
        worst_greatest = max(worst_greatest, greatest, key=abs)
        worst_least = max(worst_least, least, key=abs)
        if abs(greatest) > GREATEST or abs(least) > LEAST:
            complaints.append(f'line {i + 1}: greatest {got.max() / mean:.3f} for '
                              f'{wanted.max() / mean:.3f}, least {got.min() / mean:.3f} for '
                              f'{wanted.min() / mean:.3f} of the mean')
    tap.case(name, complaints)
    print(f'# greatest {100 * worst_greatest:+.1f} %, least {worst_least:+.3f} of the mean; '
          f'{seconds:.2f} s by elements, {1e-3 * microseconds:.1f} ms ours')


def main():
    tap = Tap()
    print(f'1..{3 + len(CASES)}')
    check_exact(tap)
    for case in CASES:
        check_stack(tap, sys.argv[1], case)
    return 1 if tap.failed else 0


if __name__ == '__main__':
    sys.exit(main())
