#!/usr/bin/python3
# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""How many times faster than CBC the best order is found and proved, on the problems of
tests/reference/order.py; the start of both programs is counted.
Usage: order-cbc.py TOOL"""

import random
import statistics
import subprocess
import sys
import time
from pathlib import Path

sys.path.append(str(Path(__file__).parents[1] / 'reference'))
import order  # noqa: E402

SIZES = (8, 10, 12)
PROBLEMS = 5


def seconds(work):
    start = time.perf_counter()
    result = work()
    return time.perf_counter() - start, result


def main():
    rng = random.Random(5)
    for n in SIZES:
        ratios, ours, theirs = [], [], []
        for _ in range(PROBLEMS):
            case = order.draw_case(rng, n, False)
            text = order.case_text(case)
            own, answer = seconds(lambda: subprocess.run([sys.argv[1]], input=text, text=True,
                                                         capture_output=True, check=True).stdout)
            cbc, cost = seconds(lambda: order.solve(case, order.solve_by_cbc))
            assert int(answer.split()[0]) == cost
            ours.append(own)
            theirs.append(cbc)
            ratios.append(cbc / own)
        print(f'{n} places: {1000 * statistics.median(ours):.1f} ms, CBC '
              f'{1000 * statistics.median(theirs):.0f} ms, {statistics.median(ratios):.0f} times faster')


main()
