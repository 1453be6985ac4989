#!/usr/bin/python3
# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""How long CBC takes for the one-dimensional instances as an arc flow: what bench/cutting is compared with.

Model: J. M. Valerio de Carvalho, Annals of Operations Research 86 (1999). Each instance gets 60 s.
Usage: BROADSTAVE_BENCHMARKS=folder cutting-arcflow.py"""

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

SECONDS = 60


def read(path):
    numbers = list(map(int, path.read_text(encoding='ascii').split()))
    return numbers[1], sorted(zip(numbers[2::2], numbers[3::2]), reverse=True)


def list_arcs(capacity, sizes):
    """(from, to, kind or None when idle). Decreasing sizes along each path leave no two orders of the same
    pieces."""
    reached, arcs = {0}, set()
    for kind, (size, demand) in enumerate(sizes):
        for start in sorted(reached):
            for copy in range(demand):
                place = start + copy * size
                if place + size > capacity:
                    break
                arcs.add((place, place + size, kind))
                reached.add(place + size)
    places = sorted(reached | {capacity})
    idle = [(a, b, None) for a, b in zip(places, places[1:]) if a > 0]
    return places, sorted(arcs) + idle


def wrap(name, terms, right):
    """A row of the LP format; CBC does not read very long lines."""
    return f' {name}: ' + '\n  '.join(' '.join(terms[i:i + 10]) for i in range(0, len(terms), 10)) + right


def build(capacity, sizes):
    """The programme in the LP format: a row for each place and for each size, a column for each arc."""
    places, arcs = list_arcs(capacity, sizes)
    balance = {place: [] for place in places}
    holds = [[] for _ in sizes]
    balance[0].append('+ z')
    balance[capacity].append('- z')
    for number, (start, end, kind) in enumerate(arcs):
        balance[start].append(f'- x{number}')
        balance[end].append(f'+ x{number}')
        if kind is not None:
            holds[kind].append(f'+ x{number}')
    lines = ['Minimize', ' boards: z', 'Subject To']
    lines += [wrap(f'n{place}', terms, ' = 0') for place, terms in balance.items()]
    lines += [wrap(f'd{kind}', terms, f' >= {sizes[kind][1]}') for kind, terms in enumerate(holds)]
    lines += ['General', ' z', *(f' x{number}' for number in range(len(arcs))), 'End', '']
    return '\n'.join(lines)


def main():
    folder = Path(os.environ['BROADSTAVE_BENCHMARKS']) / '1d'
    names = sys.argv[1:] or sorted(path.stem for path in folder.glob('*.txt'))
    total, proved = 0.0, 0
    with tempfile.TemporaryDirectory() as temporary:
        for name in names:
            path = Path(temporary) / (name + '.lp')
            path.write_text(build(*read(folder / (name + '.txt'))), encoding='ascii')
            start = time.monotonic()
            text = subprocess.run(['cbc', path, 'sec', str(SECONDS), 'solve', 'quit'],
                                  capture_output=True, text=True, check=True).stdout
            spent = time.monotonic() - start
            good = 'Result - Optimal solution found' in text
            if good:
                total += spent
                proved += 1
            print(f'  {name:18} {"proved" if good else "not proved":10} {spent:6.2f} s', flush=True)
    print(f'CBC on the arc flow: {proved} of {len(names)} proved, which took {total:.2f} s in all')


main()
