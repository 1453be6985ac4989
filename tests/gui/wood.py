# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Woods compared, chosen and given figures of the person's own, in the real window."""

import collections
import json
import re
import tempfile
from pathlib import Path

import desk
import tap

COUNTER = desk.EXAMPLES / 'bakery-counter.broadstave'
SHELF = desk.EXAMPLES / 'bread-shelf.broadstave'

# Everything of the place is in sight.
SIZE = (1500, 1560)

# Of the Wood Handbook (FPL-GTR-190, 2010): table 5-3a, side hardness at 12 %; table 13-5, movement
# for each % of moisture; table 4-2, moisture at 70 °F (21.1 °C) and 35 %, then 60 %.
#
# The weight is that of 1.5 x 0.6 x 0.06 m, 54 litres, at 8.95 %, the middle of the two moistures. By
# chapter 4 there, from the specific gravity at 12 % of table 5-3a: G / (1 + 0.265 x 0.6 G) when
# green, Gb / (1 - 0.265 x 0.702 Gb) at 8.95 %, and a litre weighs 1.0895 times that. Beech: 0.64,
# 0.581, 0.651, 0.710 kg; maple: 0.63, 0.573, 0.641, 0.698 kg.
Wood = collections.namedtuple('Wood', 'name hardness weight radial tangential')
BEECH = Wood('Beech, American', '5.8 kN', '38.3 kg', 0.00190, 0.00431)
MAPLE = Wood('Maple, sugar (hard maple)', '6.4 kN', '37.7 kg', 0.00165, 0.00353)
DRY, DAMP = 6.9, 11.0


def find_movement(coefficient):
    """Of the slab's width over the year in mm, and how far the roundings of table 4-2 may lead off."""
    return 600 * coefficient * (DAMP - DRY), 600 * coefficient * 0.1 + 0.05


class Ringless:
    """A folder with a copy of the counter's plan, whose boards and rings are not known, in a climate
    that the handbook's table has."""

    def __enter__(self):
        plan = json.loads(COUNTER.read_text(encoding='utf-8'))
        del plan['boards']
        for lamination in plan['laminations']:
            for key in ('board', 'pith_y_mm', 'pith_z_mm'):
                lamination.pop(key, None)
        plan['slab']['dry_season'] = {'temperature_C': 21.1, 'humidity_pct': 35}
        plan['slab']['damp_season'] = {'temperature_C': 21.1, 'humidity_pct': 60}
        self.folder = tempfile.TemporaryDirectory()
        self.path = Path(self.folder.name) / 'counter.broadstave'
        self.path.write_text(json.dumps(plan), encoding='utf-8')
        return self.path

    def __exit__(self, *problem):
        self.folder.cleanup()


def go_there(program):
    program.click_on('label', 'Wood')
    desk.wait('the woods', lambda: read_row(program, 'Alder, red'))


@desk.patient
def read_row(program, wood):
    """What the table says of a wood; nothing when it is not in it."""
    for node in desk.walk(program.app):
        if node.getRoleName() == 'table row' and node.childCount and node[0].childCount \
                and node[0][0].name == wood:
            return [cell[0].name.replace('\u202f', ' ') for cell in node]
    return []


def wait_row(program, wood, *texts):
    desk.wait(f'{wood}: {texts}', lambda: set(texts) <= set(read_row(program, wood)))


def find_field(program, name):
    for node in desk.walk(program.app):
        if node.getRoleName() == 'text' and node.name == name:
            return node
    return None


def fill_in(program, name, text):
    """The field of just that name: others may begin with it."""
    field = desk.wait(name, lambda: find_field(program, name))
    box = field.queryComponent().getExtents(desk.pyatspi.WINDOW_COORDS)
    program.click(box.x + box.width // 2, box.y + box.height // 2)
    program.key('ctrl+a')
    program.type(text)
    program.key('Return')


def press(program, name):
    """A button, by its name as it is read: with the letter that is underlined."""
    program.wait_seen('push button', name).queryAction().doAction(0)


def get_range(row):
    """Movements in mm: were all rings radial, or tangential."""
    low, high = next(re.fullmatch(r'([\d.]+) to ([\d.]+) mm', text) for text in row
                     if ' to ' in text).groups()
    return float(low), float(high)


def check_compare():
    """The numbers of two woods, and the reasons that follow what is asked."""
    with Ringless() as path, desk.Desk(path, size=SIZE) as program:
        go_there(program)
        for wood in (BEECH, MAPLE):
            row = read_row(program, wood.name)
            assert {wood.hardness, wood.weight, 'too hard'} <= set(row), row
            for found, coefficient in zip(get_range(row), (wood.radial, wood.tangential)):
                wanted, tolerance = find_movement(coefficient)
                assert abs(found - wanted) <= tolerance, (row, wanted)
        program.shoot('wood')
        fill_in(program, 'Side hardness, from', '6 kN')
        fill_in(program, 'Side hardness, to', '7 kN')
        wait_row(program, BEECH.name, 'too soft')
        wait_row(program, MAPLE.name, 'fits')
        fill_in(program, 'The slab weighs, at most', '37 kg')
        wait_row(program, BEECH.name, 'too soft, too heavy')
        wait_row(program, MAPLE.name, 'too heavy')
        desk.wait('the reason', lambda: program.sees('37\u202fkg was the most'))
        program.click_on('check box', 'Only those that _fit')
        desk.wait('no beech', lambda: not read_row(program, BEECH.name))
        program.shoot('wood-asked')


def check_choose():
    """Another wood for the slab changes what it weighs and how it moves, until that is undone."""
    with Ringless() as path, desk.Desk(path, size=SIZE) as program:
        go_there(program)
        fill_in(program, 'Side hardness, from', '6 kN')
        fill_in(program, 'Side hardness, to', '7 kN')
        program.click_on('check box', 'Only those that _fit')
        program.click_on('label', MAPLE.name)
        desk.wait('the maple', lambda: program.sees('Acer saccharum'))
        press(program, 'For _all laminations')
        program.wait_seen('push button', 'Undo: Choose wood')
        woods = save(program, path)
        assert woods == {'sugar-maple'}, woods
        program.click_on('page tab', 'Moisture and movement')
        maple = read_movement(program)
        program.key('ctrl+z')
        desk.wait('beech again', lambda: read_movement(program) != maple)
        # Without rings the mean of the two stands in.
        for found, wood in ((maple, MAPLE), (read_movement(program), BEECH)):
            wanted, tolerance = find_movement((wood.radial + wood.tangential) / 2)
            assert abs(found - wanted) <= tolerance, (found, wanted)
        assert save(program, path) == {'american-beech'}


def read_movement(program):
    """The year's movement as the sentence says it, in mm."""
    def find():
        for node in desk.walk(program.app):
            text = re.search(r'grows and shrinks by ([\d.]+)', node.name or '')
            if text:
                return float(text[1])
        return None
    return desk.wait('how it moves', find)


def save(program, path):
    """The woods of the laminations, as saved."""
    program.key('ctrl+s')
    desk.wait('saved', lambda: 'changed' not in program.get_title())
    plan = json.loads(path.read_text(encoding='utf-8'))
    return {lamination['wood'] for lamination in plan['laminations']}


def check_own():
    """A wood of one's own, and a figure of the table's that is known better: kept for other plans."""
    with tempfile.TemporaryDirectory() as data, Ringless() as path:
        with desk.Desk(path, size=SIZE, XDG_DATA_HOME=data) as program:
            go_there(program)
            press(program, '_Copy as your own wood')
            fill_in(program, 'Name', 'Beech of the north slope')
            fill_in(program, 'Side hardness', '6.2 kN')
            wait_row(program, 'Beech of the north slope', '6.2 kN')
            press(program, '_Keep its figures')
            wait_row(program, 'Beech of the north slope', 'your own')
            program.click_on('label', 'Beech, American')
            desk.wait('the beech', lambda: program.sees('Beech, American (Fagus'))
            fill_in(program, 'Side hardness', '5.9 kN')
            wait_row(program, BEECH.name, '5.9 kN')
            press(program, '_Keep its figures')
            wait_row(program, BEECH.name, 'your own')
            program.shoot('wood-own')
        kept = json.loads((Path(data) / 'broadstave' / 'woods.json').read_text(encoding='utf-8'))
        figures = {wood['id']: wood['side_hardness_N'] for wood in kept['woods']}
        assert sorted(figures.values()) == [5900, 6200] and figures['american-beech'] == 5900, kept
        with desk.Desk(SHELF, size=SIZE, XDG_DATA_HOME=data) as program:
            go_there(program)
            wait_row(program, 'Beech of the north slope', '6.2 kN', 'your own')
            wait_row(program, BEECH.name, '5.9 kN', 'your own')
            program.click_on('label', BEECH.name)
            desk.wait('the beech', lambda: program.sees('Beech, American (Fagus'))
            press(program, '_Forget what you kept')
            wait_row(program, BEECH.name, '5.8 kN')
            wait_row(program, 'Beech of the north slope', '6.2 kN', 'your own')


tap.run([
    ('/gui/wood/compare', check_compare),
    ('/gui/wood/choose', check_choose),
    ('/gui/wood/own', check_own),
])
