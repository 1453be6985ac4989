# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Boards typed into the rack, copied and marked with defects, in the real window."""

import json
import tempfile
from pathlib import Path

import desk
import tap

COUNTER = desk.EXAMPLES / 'bakery-counter.broadstave'


class Folder:
    """A folder with a copy of the counter's plan, with so many of its boards."""

    def __init__(self, n_boards=0):
        self.n_boards = n_boards

    def __enter__(self):
        self.folder = tempfile.TemporaryDirectory()
        self.path = Path(self.folder.name) / 'counter.broadstave'
        plan = json.loads(COUNTER.read_text(encoding='utf-8'))
        plan['boards'] = plan['boards'][:self.n_boards]
        plan.pop('cuts', None)
        kept = {board['id'] for board in plan['boards']}
        for lamination in plan['laminations']:
            if lamination.get('board') not in kept:
                lamination.pop('board', None)
        self.path.write_text(json.dumps(plan), encoding='utf-8')
        return self

    def __exit__(self, *problem):
        self.folder.cleanup()

    def read(self, program):
        """The boards once they are saved."""
        program.key('ctrl+s')
        desk.wait('saved', lambda: 'changed' not in program.get_title())
        return json.loads(self.path.read_text(encoding='utf-8')).get('boards', [])


def go_there(program):
    """To the place, and to the first cell of its table; from there on by keys."""
    program.click_on('label', 'Boards')
    program.click_on('table cell', 'Label')


def type_row(program, *cells):
    program.type('\t'.join(cells))
    program.key('Return')


def check_three_boards():
    """Sizes by hand: 8/4 is 50.8 mm, 7 1/2 in is 190.5 mm, 8 ft is 2438.4 mm."""
    with Folder() as folder, desk.Desk(folder.path) as program:
        go_there(program)
        type_row(program, 'B1', 'beech american', '8/4', '7 1/2"', "8'", '8.5', '42.50')
        type_row(program, 'B2', 'beech american', '50', '200', '2440')
        type_row(program, 'B3', 'beech am', '1 3/4', '12 cm', '2.44 m')
        program.shoot('boards-typed')
        boards = folder.read(program)
        sizes = [(board['label'], board['wood'], round(board['thickness_mm'], 3),
                  round(board['width_mm'], 3), round(board['length_mm'], 3)) for board in boards]
        assert sizes == [('B1', 'american-beech', 50.8, 190.5, 2438.4),
                         ('B2', 'american-beech', 50, 200, 2440),
                         ('B3', 'american-beech', 44.45, 120, 2440)], sizes
        assert boards[0]['moisture_pct'] == 8.5 and boards[0]['price_minor'] == 4250, boards[0]


def check_wrong_stays():
    """What cannot be taken over stays in its cell, and the plan as it was."""
    with Folder(2) as folder, desk.Desk(folder.path) as program:
        go_there(program)
        program.key('Right', 'Right')
        type_row(program, '12 ells')
        desk.wait('a sentence', lambda: program.find('label', '12 ells: the unit'))
        program.shoot('boards-wrong')
        assert 'changed' not in program.get_title()
        program.key('Escape')
        desk.wait('no sentence', lambda: not program.find('label', '12 ells: the unit'))
        type_row(program, '60')
        boards = folder.read(program)
        assert boards[0]['thickness_mm'] == 60, boards[0]


def check_one_step_each():
    with Folder(2) as folder, desk.Desk(folder.path) as program:
        go_there(program)
        program.key('ctrl+d')
        desk.wait('changed', lambda: 'changed' in program.get_title())
        program.key('ctrl+Delete')
        program.key('ctrl+z', 'ctrl+z')
        desk.wait('nothing left', lambda: 'changed' not in program.get_title())


def check_paste():
    """Two rows copied as a table, and pasted into the empty row."""
    with Folder(2) as folder, desk.Desk(folder.path) as program:
        go_there(program)
        program.key('Down', 'Up', 'shift+Down', 'ctrl+c', 'ctrl+End', 'Home', 'ctrl+v')
        desk.wait('an edit', lambda: 'changed' in program.get_title())
        boards = folder.read(program)
        assert len(boards) == 4, boards
        assert [board['label'] for board in boards] == ['A', 'B', 'A', 'B'], boards
        assert boards[2]['width_mm'] == boards[0]['width_mm'], boards


def check_defect():
    """Drawn with the pointer, then its kind chosen by keys; one step to undo."""
    with Folder(1) as folder, desk.Desk(folder.path) as program:
        go_there(program)
        program.key('Down', 'Up')
        box = desk.wait('the board', lambda: program.find('image', 'The faces of board')
                        ).queryComponent().getExtents(desk.pyatspi.WINDOW_COORDS)
        x, y = box.x + box.width // 2, box.y + 32
        program.drag((x, y), (x + 60, y + 12))
        desk.wait('the kinds', lambda: program.find('push button', 'wane'))
        program.key('Tab', 'Return')
        desk.wait('an edit', lambda: 'changed' in program.get_title())
        program.shoot('boards-defect')
        program.key('ctrl+z')
        desk.wait('nothing left', lambda: 'changed' not in program.get_title())
        program.key('ctrl+y')
        boards = folder.read(program)
        defects = boards[0]['defects']
        assert len(defects) == 1 and defects[0]['face'] == 'top', defects
        assert defects[0]['x_to_mm'] > defects[0]['x_from_mm'] + 50, defects


tap.run([
    ('/gui/boards/three-by-keyboard', check_three_boards),
    ('/gui/boards/wrong-stays', check_wrong_stays),
    ('/gui/boards/one-step-each', check_one_step_each),
    ('/gui/boards/copy-and-paste', check_paste),
    ('/gui/boards/defect', check_defect),
])
