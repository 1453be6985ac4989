#!/usr/bin/python3
# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Prices of small orders against CBC and GLPK, which solve a two-level arc flow model.

One flow along the first axis for each kind of board says which slices are cut from it; one flow across
each size of slice says what it holds, and carries as many units as slices of that size are cut. Nothing
is shared with the program but the rules: kerfs between pieces, trims, two stages, sizes trimmed last.
Usage: cutting.py TOOL"""

import random
import subprocess
import sys
import tempfile
from pathlib import Path

import tap

CROSSCUT, RIP, EITHER = 1, 2, 3
ORDERS = 40
SECONDS = 20  # for one order, of the other solver


def draw_order(rng):
    order = {'kerf': rng.choice([0, 3, 5]), 'trim_end': rng.choice([0, 15]),
             'trim_edge': rng.choice([0, 2]), 'order': rng.choice([CROSSCUT, RIP, EITHER])}
    boards = rng.randint(1, 4)
    order['stock'] = []
    for number in range(boards):
        length, width = rng.randrange(1500, 3000, 100), rng.randrange(100, 260, 25)
        supply = -1 if number == 0 or rng.random() < 0.6 else rng.randint(1, 2)
        order['stock'].append((length, width, length * width * rng.randint(40, 60) // 100000, supply))
    length, width, _, _ = order['stock'][0]
    order['parts'] = [(rng.randrange(300, length - 100, 50), rng.randrange(40, min(width, 140) - 5, 5),
                       rng.randint(1, 6)) for _ in range(rng.randint(1, 6))]
    return order


def reachable(sizes, room):
    """Places that pieces can start at."""
    places = {0}
    for place in range(room + 1):
        if place in places:
            places.update(place + size for size in sizes if place + size <= room)
    return sorted(places)


class Model:
    """An integer programme in the LP format that both solvers read."""

    def __init__(self):
        self.rows, self.integers, self.objective, self.bounds = [], [], [], []

    def variable(self, upper=None):
        name = f'x{len(self.integers)}'
        self.integers.append(name)
        if upper is not None:
            self.bounds.append(f' 0 <= {name} <= {upper}')
        return name

    def row(self, terms, sense, right):
        if terms:
            self.rows.append(' r%d: %s %s %d' % (
                len(self.rows),
                ' '.join(f'{"+" if factor > 0 else "-"} {abs(factor)} {name}' for factor, name in terms),
                sense, right))

    def text(self):
        lines = ['Minimize', ' price: ' + ' '.join(f'+ {p} {x}' for p, x in self.objective),
                 'Subject To', *self.rows, 'Bounds', *self.bounds, 'General']
        lines += [' ' + name for name in self.integers]
        return '\n'.join([*lines, 'End', ''])


def add_flow(model, sizes, room, total):
    """A flow of `total` units from 0 to room over arcs of some sizes and idle arcs to the next place.
    sizes: {key: size}. Returns the arcs: {key: [variables]}."""
    places = reachable(sizes.values(), room)
    if places[-1] != room:
        places.append(room)
    into = {place: [] for place in places}
    out = {place: [] for place in places}
    arcs = {key: [] for key in sizes}
    for place, following in zip(places, places[1:]):
        idle = model.variable()
        out[place].append(idle)
        into[following].append(idle)
    for key, size in sizes.items():
        for place in places:
            if place + size <= room and place + size in into:
                arc = model.variable()
                arcs[key].append(arc)
                out[place].append(arc)
                into[place + size].append(arc)
    model.row([(1, x) for x in out[0]] + [(-f, x) for f, x in total], '=', 0)
    for place in places[1:-1]:
        model.row([(1, x) for x in into[place]] + [(-1, x) for x in out[place]], '=', 0)
    return arcs


def build(order):
    """First sizes and second sizes are those of the axis that the first or second cuts divide."""
    model, kerf = Model(), order['kerf']
    holds = {part: [] for part in range(len(order['parts']))}
    for length, width, price, supply in order['stock']:
        taken = []
        for way in (CROSSCUT, RIP):
            if not order['order'] & way:
                continue
            rooms = [length - 2 * order['trim_end'] + kerf, width - 2 * order['trim_edge'] + kerf]
            parts = [(l + kerf, w + kerf) for l, w, _ in order['parts']]
            if way == RIP:
                rooms.reverse()
                parts = [part[::-1] for part in parts]
            firsts = {first: first for first, second in parts if first <= rooms[0] and second <= rooms[1]}
            if not firsts:
                continue
            board = model.variable()
            taken.append(board)
            model.objective.append((price, board))
            slices = add_flow(model, firsts, rooms[0], [(1, board)])
            for first, cut in slices.items():
                fitting = {part: second for part, (size, second) in enumerate(parts)
                           if size <= first and second <= rooms[1]}
                strips = add_flow(model, fitting, rooms[1], [(1, x) for x in cut])
                for part, arcs in strips.items():
                    holds[part] += arcs
        if supply >= 0:
            model.row([(1, board) for board in taken], '<=', supply)
    for part, arcs in holds.items():
        model.row([(1, x) for x in arcs], '>=', order['parts'][part][2])
    return model


def solve_by_cbc(path):
    """(best price or None, whether it is the optimum)"""
    text = subprocess.run(['cbc', path, 'sec', str(SECONDS), 'solve', 'quit'], capture_output=True,
                          text=True, check=True).stdout
    value = [line.split()[-1] for line in text.splitlines() if line.startswith('Objective value:')]
    return (round(float(value[0])) if value else None), 'Result - Optimal solution found' in text


def solve_by_glpk(path):
    report = Path(path).with_suffix('.sol')
    text = subprocess.run(['glpsol', '--lp', path, '--tmlim', str(SECONDS), '--cuts', '-o', report],
                          capture_output=True, text=True, check=True).stdout
    optimal = 'INTEGER OPTIMAL SOLUTION FOUND' in text
    value = [line.split('=')[1].split()[0] for line in report.read_text().splitlines()
             if line.startswith('Objective:')]
    return (round(float(value[0])) if optimal else None), optimal


def ask(tool, orders):
    lines = []
    for order in orders:
        lines.append(' '.join(str(order[key]) for key in ('kerf', 'trim_end', 'trim_edge', 'order'))
                     + f' {len(order["stock"])} {len(order["parts"])}')
        lines += [' '.join(map(str, row)) for row in order['stock'] + order['parts']]
    answer = subprocess.run([tool], input='\n'.join(lines), capture_output=True, text=True, check=True)
    return [tuple(map(int, line.split())) for line in answer.stdout.splitlines()]


def check(order, answer, solve):
    price, bound, proven, _, missing = answer
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / 'order.lp'
        path.write_text(build(order).text(), encoding='ascii')
        best, optimal = solve(str(path))
    what = f'{order}: price {price}, bound {bound}; other solver {best}, optimal {optimal}'
    assert missing == 0, what
    assert bound <= price, what
    assert best is None or bound <= best, what
    if optimal:
        assert price == best and proven, what


def main():
    tool = sys.argv[1]
    rng = random.Random(11)
    orders = [draw_order(rng) for _ in range(ORDERS)]
    answers = ask(tool, orders)
    cases = []
    for number, (order, answer) in enumerate(zip(orders, answers), 1):
        name, solve = ('glpk', solve_by_glpk) if number % 4 == 0 else ('cbc', solve_by_cbc)
        cases.append((f'/reference/cutting/{name}/order-{number}',
                      lambda order=order, answer=answer, solve=solve: check(order, answer, solve)))
    tap.run(cases)


main()
