#!/usr/bin/python3
# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Orders against CBC and GLPK on random laminations, some with pins.

The costs are priced here from docs/order-model.md alone. The integer program has a variable for each
pair of laminations that follow one another in given orientations, and a place for each lamination
(A. J. Orman, H. P. Williams, "A survey of different integer programming formulations of the travelling
salesman problem", 2006; the sequential form).
Usage: order.py TOOL [FOLDER]
"""

import functools
import math
import random
import re
import subprocess
import sys
import tempfile
from pathlib import Path

from tap import run

LEFT, RIGHT, TOP, UNDERSIDE = range(4)
# What is found on the left, right and top in each orientation, and the signs of x, y, z.
FACES = [(LEFT, RIGHT, TOP), (RIGHT, LEFT, UNDERSIDE), (RIGHT, LEFT, TOP), (LEFT, RIGHT, UNDERSIDE)]
SIGNS = [(1, 1, 1), (1, -1, -1), (-1, -1, 1), (-1, 1, -1)]
PLACE, NEIGHBOURS, FACE_UP = range(3)
LENGTH = 1200
SECONDS = 120

# How many problems of each number of places.
SIZES = {5: 64, 6: 60, 7: 40, 8: 26, 9: 8, 10: 4, 11: 2, 12: 2}
# GLPK is much slower than CBC, and takes every third of the small ones.
GLPK_MOST = 5


def thousandths(points):
    return math.floor(1000 * points + 0.5)


def defects_on(board, face):
    return [d for d in board['defects'] if d['face'] == face]


def price_face(board, face):
    return thousandths(sum(d['severity'] * (d['x1'] - d['x0']) * d['across'] / 100
                           for d in defects_on(board, face)))


def price_inside(board, o, plane):
    run_out = SIGNS[o][0] * board['run_out'][FACES[o][2] == UNDERSIDE]
    return price_face(board, FACES[o][2]) + (4000 if run_out == -plane else 0)


def extent(defect, o):
    return (defect['x0'], defect['x1']) if SIGNS[o][0] > 0 else (LENGTH - defect['x1'],
                                                                 LENGTH - defect['x0'])


def price_joint(a, oa, b, ob):
    cost = 0
    heart_a, heart_b = SIGNS[oa][1] * a['heart'], SIGNS[ob][1] * b['heart']
    if heart_a and heart_a == heart_b:
        cost += 3000
    cost += thousandths(0.5 * abs(a['lightness'] - b['lightness']))
    cost += thousandths(2 * abs(SIGNS[oa][1] * a['bow'] + SIGNS[ob][1] * b['bow']))
    cost += thousandths(abs(SIGNS[oa][2] * a['crook'] - SIGNS[ob][2] * b['crook']))
    cost += max(0, thousandths(2 * (abs(a['moisture'] - b['moisture']) - 1)))
    meeting = 0
    for p in defects_on(a, FACES[oa][1]):
        for q in defects_on(b, FACES[ob][0]):
            (p0, p1), (q0, q1) = extent(p, oa), extent(q, ob)
            meeting += min(p['severity'], q['severity']) * max(0, min(p1, q1) - max(p0, q0) + 10)
    return cost + thousandths(0.05 * meeting)


def price_first(case, i, o):
    return price_face(case['boards'][i], FACES[o][0]) if case['front'] else 0


def price_last(case, i, o):
    return price_face(case['boards'][i], FACES[o][1]) if case['back'] else 0


def price_order(case, order):
    boards = case['boards']
    joints = sum(price_joint(boards[i], a, boards[j], b)
                 for (i, a), (j, b) in zip(order, order[1:]))
    ends = price_first(case, *order[0]) + price_last(case, *order[-1])
    return joints + ends + min(sum(price_inside(boards[i], o, plane) for i, o in order)
                               for plane in (1, -1))


def draw_board(rng):
    def draw_defect():
        x0 = 5 * rng.randrange(225)
        return {'face': rng.randrange(4), 'x0': x0, 'x1': x0 + 5 * rng.randint(2, 12),
                'across': 5 * rng.randint(1, 4), 'severity': rng.choice([0.2, 0.5, 1, 2])}

    return {'bow': rng.randint(-3, 3) / 2, 'crook': rng.randint(-2, 2) / 2,
            'lightness': rng.randint(80, 120) / 2, 'moisture': rng.randint(60, 100) / 10,
            'heart': rng.choice([-1, -1, 0, 1, 1]), 'run_out': [rng.randint(-1, 1), rng.randint(-1, 1)],
            'defects': [draw_defect() for _ in range(rng.randrange(5))]}


def draw_pins(rng, n_boards, n):
    """At most one of each kind, on different boards, so that they can always be kept."""
    boards = rng.sample(range(n_boards), 4)
    pins = []
    if rng.random() < 0.5:
        pins.append((PLACE, boards[0], rng.choice([0, n - 1, n // 2]), 0, 0))
    if rng.random() < 0.5:
        pins.append((NEIGHBOURS, boards[1], 0, boards[2], 0))
    if rng.random() < 0.5:
        pins.append((FACE_UP, boards[3], 0, 0, rng.choice([TOP, UNDERSIDE])))
    return pins


def draw_case(rng, n, has_pins):
    n_boards = n + (rng.randint(1, 2) if rng.random() < 0.3 else 0)
    show = rng.choice([(0, 0), (0, 0), (1, 1), (1, 0), (0, 1)])
    return {'n': n, 'boards': [draw_board(rng) for _ in range(n_boards)], 'front': show[0],
            'back': show[1], 'pins': draw_pins(rng, n_boards, n) if has_pins else []}


def case_text(case):
    lines = [f"{len(case['boards'])} {case['n']} {case['front']} {case['back']}"]
    for b in case['boards']:
        lines.append(f"{LENGTH} {b['bow']} {b['crook']} {b['lightness']} {b['moisture']} {b['heart']} "
                     f"{b['run_out'][0]} {b['run_out'][1]} {len(b['defects'])}")
        lines += [f"{d['face']} {d['x0']} {d['x1']} {d['across']} {d['severity']}"
                  for d in b['defects']]
    lines.append(str(len(case['pins'])))
    lines += [' '.join(map(str, pin)) for pin in case['pins']]
    return '\n'.join(lines) + '\n'


def list_nodes(case):
    """(board, orientation) pairs that the pinned faces allow."""
    up = {pin[1]: pin[4] for pin in case['pins'] if pin[0] == FACE_UP}
    return [(i, o) for i in range(len(case['boards'])) for o in range(4)
            if up.get(i, FACES[o][2]) == FACES[o][2]]


def write_program(case, plane, path):
    boards, n, nodes = case['boards'], case['n'], list_nodes(case)
    arcs = [(u, v) for u in nodes for v in nodes if u[0] != v[0]]
    x = {(u, v): f'x_{u[0]}_{u[1]}_{v[0]}_{v[1]}' for u, v in arcs}
    s = {u: f's_{u[0]}_{u[1]}' for u in nodes}
    e = {u: f'e_{u[0]}_{u[1]}' for u in nodes}
    inside = {u: price_inside(boards[u[0]], u[1], plane) for u in nodes}

    cost = [(price_joint(boards[u[0]], u[1], boards[v[0]], v[1]) + inside[v], x[u, v]) for u, v in arcs]
    cost += [(price_first(case, *u) + inside[u], s[u]) for u in nodes]
    cost += [(price_last(case, *u), e[u]) for u in nodes]
    rows = [' + '.join(s.values()) + ' = 1', ' + '.join(e.values()) + ' = 1']
    for u in nodes:
        comes = [s[u]] + [x[v, w] for v, w in arcs if w == u]
        goes = [e[u]] + [x[v, w] for v, w in arcs if v == u]
        rows.append(' + '.join(comes) + ' - ' + ' - '.join(goes) + ' = 0')
    used = {i: [s[u] for u in nodes if u[0] == i] + [x[v, w] for v, w in arcs if w[0] == i]
            for i in range(len(boards))}
    pinned = {pin[1] for pin in case['pins'] if pin[0] == PLACE}
    for i, terms in used.items():
        rows.append(' + '.join(terms) + (' = 1' if n == len(boards) or i in pinned else ' <= 1'))
    rows.append(' + '.join(t for terms in used.values() for t in terms) + f' = {n}')
    for i in range(len(boards)):
        for j in range(len(boards)):
            if i != j:
                there = [x[v, w] for v, w in arcs if (v[0], w[0]) == (i, j)]
                back = [x[v, w] for v, w in arcs if (v[0], w[0]) == (j, i)]
                rows.append(f'p_{i} - p_{j} + ' + ' + '.join(f'{n} {t}' for t in there) + ' + '
                            + ' + '.join(f'{n - 2} {t}' for t in back) + f' <= {n - 1}')
    for i in range(len(boards)):
        rows += [f'p_{i} + ' + ' + '.join(f'{n - 1} {s[u]}' for u in nodes if u[0] == i) + f' <= {n - 1}']
        rows += [f'p_{i} - ' + ' - '.join(f'{n - 1} {e[u]}' for u in nodes if u[0] == i) + ' >= 0']
    for kind, i, place, other, _ in case['pins']:
        if kind == PLACE:
            rows.append(f'p_{i} = {place}')
        if kind == NEIGHBOURS:
            rows.append(' + '.join(x[v, w] for v, w in arcs if {v[0], w[0]} == {i, other}) + ' = 1')

    text = ['Minimize', ' obj: ' + '\n + '.join(f'{c} {name}' for c, name in cost if c), 'Subject To']
    text += [f' r{k}: ' + row.replace(' + ', '\n + ') for k, row in enumerate(rows)]
    text += ['Bounds'] + [f' 0 <= p_{i} <= {n - 1}' for i in range(len(boards))]
    text += ['Binary'] + [' ' + name for name in [*x.values(), *s.values(), *e.values()]] + ['End', '']
    path.write_text('\n'.join(text))


def solve_by_cbc(path):
    text = subprocess.run(['cbc', path, 'sec', str(SECONDS), 'ratio', '0', 'allow', '0', 'solve',
                           'quit'], capture_output=True, text=True, check=True).stdout
    assert 'Result - Optimal solution found' in text, f'CBC did not end: {text[-300:]}'
    return round(float(re.search(r'Objective value:\s+(\S+)', text).group(1)))


def solve_by_glpk(path):
    report = path.with_suffix('.txt')
    subprocess.run(['glpsol', '--lp', path, '--tmlim', str(SECONDS), '--cuts', '-o', report],
                   capture_output=True, check=True)
    text = report.read_text()
    assert 'INTEGER OPTIMAL' in text, f'GLPK did not end: {text[:300]}'
    return round(float(re.search(r'Objective:\s+\S+ = (\S+)', text).group(1)))


def solve(case, by):
    """Both planing directions; one is enough where turning the slab end for end gives the other."""
    is_mirrored = case['front'] == case['back'] and not any(pin[0] == PLACE for pin in case['pins'])
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / 'order.lp'
        costs = []
        for plane in (1,) if is_mirrored else (1, -1):
            write_program(case, plane, path)
            costs.append(by(path))
    return min(costs)


def check_pins(case, order):
    places = {i: k for k, (i, _) in enumerate(order)}
    assert len(places) == case['n'], f'a lamination is used twice: {order}'
    for kind, i, place, other, face in case['pins']:
        if kind == PLACE:
            assert places[i] == place, f'{i} stands at {places[i]}, not {place}'
        if kind == NEIGHBOURS:
            assert abs(places[i] - places[other]) == 1, f'{i} and {other} are apart'
        if kind == FACE_UP and i in places:
            assert FACES[order[places[i]][1]][2] == face, f'{i} lies on the wrong face'


def check(case, line, by):
    cost, bound, proof, *rest = map(int, line.split())
    order = list(zip(rest[::2], rest[1::2]))
    check_pins(case, order)
    assert price_order(case, order) == cost, f'told {cost}, the order costs {price_order(case, order)}'
    wanted = solve(case, by)
    assert cost == wanted, f'found {cost}, the solver {wanted}: {case}'
    assert bound <= wanted, f'bound {bound} above the optimum {wanted}: {case}'
    assert proof == wanted, f'proved {proof}, the optimum is {wanted}: {case}'


def main():
    rng = random.Random(31)
    cases = [(n, draw_case(rng, n, k % 4 == 3)) for n, count in SIZES.items() for k in range(count)]
    lines = subprocess.run([sys.argv[1]], input=''.join(case_text(case) for _, case in cases),
                           capture_output=True, text=True, check=True).stdout.splitlines()
    assert len(lines) == len(cases)
    rows = []
    for number, ((n, case), line) in enumerate(zip(cases, lines)):
        name, by = ('glpk', solve_by_glpk) if n <= GLPK_MOST and number % 3 == 0 else ('cbc', solve_by_cbc)
        rows.append((f"/reference/order/{name}/{number + 1}-{n}-of-{len(case['boards'])}",
                     functools.partial(check, case, line, by)))
    run(rows)


if __name__ == '__main__':
    main()
