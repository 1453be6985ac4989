#!/usr/bin/python3
# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""How much faster the solver is than finite elements of the same accuracy, on the same stacks.

Elements of 5 mm with contact, from tests/reference; neither side makes use of the stack being alike at
both ends. Medians. Usage: pressing-elements.py PRESS_TOOL
"""
import os
import statistics
import sys
import time

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..', 'reference'))
from elastic_stack import Stack  # noqa: E402
from pressing import DENSE, MEDIUM, even_clamps, pile, run_tool  # noqa: E402

LENGTH = 2400.0
STACKS = [
    ('12 laminations, closed', pile(12, 40.0, MEDIUM, LENGTH), even_clamps(12, LENGTH, 5e3, 40.0)),
    ('12 laminations, opening', pile(12, 40.0, DENSE, LENGTH), even_clamps(6, LENGTH, 5e3, 40.0)),
    ('24 laminations, closed', pile(24, 40.0, MEDIUM, LENGTH), even_clamps(12, LENGTH, 5e3, 40.0)),
    ('24 laminations, opening', pile(24, 40.0, DENSE, LENGTH), even_clamps(6, LENGTH, 5e3, 40.0)),
]


def time_elements(pieces, clamps):
    begun = time.process_time()
    Stack(pieces, 5.0, LENGTH, half=False).pressures(clamps)
    return time.process_time() - begun


def main():
    for name, pieces, clamps in STACKS:
        elements = statistics.median(time_elements(pieces, clamps) for _ in range(3))
        ours = statistics.median(run_tool(sys.argv[1], pieces, clamps)[1] for _ in range(9)) * 1e-6
        print(f'{name}: elements {elements:.2f} s, ours {1e3 * ours:.1f} ms, '
              f'{elements / ours:.0f} times as fast', flush=True)


if __name__ == '__main__':
    main()
