# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The slab put in order by pointer and by keys."""

import desk
import tap

COUNTER = desk.EXAMPLES / 'bakery-counter.broadstave'
ORDER = 'A1 A2 B1 B2 C1 C2 D1 D2 E1 E2 F1 F2 G1 G2 H1 H2'
A1_THIRD = 'A2 B1 A1 B2 C1 C2 D1 D2 E1 E2 F1 F2 G1 G2 H1 H2'


def check_drag():
    with desk.Desk(COUNTER) as program:
        start, end = program.get_place('A1'), program.get_place('B1')
        program.pick_up(*start)
        program.carry(*start, end[0] + 8, end[1])
        program.wait_order(A1_THIRD)
        program.shoot('carried')
        assert 'changed' not in program.get_title()
        program.drop()
        desk.wait('an edit', lambda: 'changed' in program.get_title())
        program.wait_order(A1_THIRD)
        program.shoot('dropped')


def check_drag_back():
    """Put down where it was, nothing has happened."""
    with desk.Desk(COUNTER) as program:
        start, end = program.get_place('A1'), program.get_place('C1')
        program.pick_up(*start)
        program.carry(*start, *end)
        program.carry(*end, *start)
        program.drop()
        program.wait_free()
        program.wait_order(ORDER)
        assert 'changed' not in program.get_title()
        program.key('t')
        desk.wait('one edit', lambda: 'changed' in program.get_title())
        program.key('ctrl+z')
        desk.wait('nothing left', lambda: 'changed' not in program.get_title())


def check_escape():
    with desk.Desk(COUNTER) as program:
        start, end = program.get_place('A1'), program.get_place('C1')
        program.pick_up(*start)
        program.carry(*start, *end)
        program.key('Escape')
        program.wait_order(ORDER)
        program.carry(*end, end[0] + 60, end[1])
        program.drop()
        program.wait_order(ORDER)
        assert 'changed' not in program.get_title()


def check_rack():
    with desk.Desk(COUNTER) as program:
        rack = program.get_place('I2')
        program.drag(program.get_place('A1'), (rack[0] + 200, rack[1]))
        program.wait_order(ORDER.removeprefix('A1 '))
        assert 'A1, in the rack' in program.get_items()
        program.shoot('set-aside')
        slab = program.get_place('B1')
        program.drag(program.get_place('A1'), (slab[0] - 90, slab[1]))
        program.wait_order(ORDER)


def check_keys():
    with desk.Desk(COUNTER) as program:
        program.click(*program.get_place('A1'))
        desk.wait('the focus', lambda: (program.get_focused() or '').startswith('A1,'))
        program.key('alt+Right', 'alt+Right')
        program.wait_order(A1_THIRD)
        program.key('t')
        desk.wait('turned over', lambda: 'A1, place 3 of 16, turned over' in
                  ' '.join(program.get_items()))
        program.key('e')
        desk.wait('and end for end', lambda: 'A1, place 3 of 16, turned over and end for end' in
                  ' '.join(program.get_items()))
        program.shoot('keys')
        program.key('Delete')
        program.wait_order(ORDER.removeprefix('A1 '))
        program.key('Insert')
        program.wait_order(ORDER.removeprefix('A1 ') + ' A1')
        program.key('alt+Home')
        program.wait_order(ORDER)


def check_arrows():
    with desk.Desk(COUNTER) as program:
        program.click(*program.get_place('A1'))
        desk.wait('the focus', lambda: (program.get_focused() or '').startswith('A1,'))
        for key, label in (('Right', 'A2'), ('Right', 'B1'), ('Left', 'A2'), ('Down', 'I'),
                           ('Up', 'A')):
            program.key(key)
            desk.wait(f'{label} after {key}',
                      lambda label=label: (program.get_focused() or '').startswith(label))


def check_undo():
    """Several steps back and forth; the selection comes along."""
    with desk.Desk(COUNTER) as program:
        program.click(*program.get_place('A1'))
        program.key('alt+Right', 'alt+Right', 'alt+End')
        last = ORDER.removeprefix('A1 ') + ' A1'
        program.wait_order(last)
        program.wait_seen('push button', 'Undo: Move A1 to place 16')
        program.key('ctrl+z')
        program.wait_order(A1_THIRD)
        program.key('ctrl+z', 'ctrl+z')
        program.wait_order(ORDER)
        program.wait_seen('push button', 'Redo: Move A1 to place 2')
        program.key('ctrl+shift+z', 'ctrl+shift+z', 'ctrl+y')
        program.wait_order(last)
        program.shoot('redone')


def check_menu():
    """By the menu that opens on the lamination."""
    with desk.Desk(COUNTER) as program:
        program.click(*program.get_place('C1'), button=3)
        program.wait_seen('menu item', 'Turn over')
        program.shoot('lamination-menu')
        program.key('Escape')
        program.click_on('push button', 'Turn end for end')
        desk.wait('turned', lambda: 'C1, place 5 of 16, turned over,' in
                  ' '.join(program.get_items()))


def check_finding():
    with desk.Desk(COUNTER) as program:
        program.click_on('panel', 'note. A defect shows: F2')
        program.wait_seen('push button', 'Set aside')
        program.key('Tab')
        program.shoot('finding')
        desk.wait('F2 selected', lambda: program.find('list item', 'F2').getState().contains(
            desk.pyatspi.STATE_SELECTED))


def check_why():
    with desk.Desk(COUNTER) as program:
        program.click_on('push button', 'Why: Assembly time')
        program.wait_seen('label', 'Assembly time')
        desk.wait('the formula', lambda: any('T = ' in node.name for node in desk.walk(program.app)
                                             if node.getRoleName() == 'label'))
        program.shoot('why')


def check_live_numbers():
    """While it is carried to the rack, what the order costs follows."""
    with desk.Desk(COUNTER) as program:
        before = program.wait_seen('panel', 'What the order costs').name
        start, rack = program.get_place('A1'), program.get_place('I2')
        program.pick_up(*start)
        program.carry(*start, rack[0] + 200, rack[1])
        desk.wait('another cost', lambda: program.find('panel', 'What the order costs').name != before)
        program.key('Escape')
        desk.wait('the cost again', lambda: program.find('panel', 'What the order costs').name == before)
        program.drop()


def check_sixty():
    """One of sixty, brought near and carried along while the view scrolls."""
    with desk.Desk(desk.EXAMPLES / 'library-counter.broadstave') as program:
        before = program.get_order()
        program.click(*program.get_place('3a'))
        program.key('ctrl+plus', 'ctrl+plus', 'ctrl+plus', 'ctrl+plus')
        program.shoot('sixty-near')
        start = program.get_place('3a')
        program.pick_up(*start)
        program.carry(*start, 940, start[1])
        desk.wait('the far end', lambda: program.get_order().split()[-1] == '3a')
        program.drop()
        program.shoot('sixty-carried')
        program.key('ctrl+0', 'ctrl+z')
        program.wait_order(before)


tap.run([
    ('/gui/glue-up/drag', check_drag),
    ('/gui/glue-up/drag-back', check_drag_back),
    ('/gui/glue-up/escape', check_escape),
    ('/gui/glue-up/rack', check_rack),
    ('/gui/glue-up/keys', check_keys),
    ('/gui/glue-up/arrows', check_arrows),
    ('/gui/glue-up/undo', check_undo),
    ('/gui/glue-up/menu', check_menu),
    ('/gui/glue-up/finding', check_finding),
    ('/gui/glue-up/why', check_why),
    ('/gui/glue-up/live-numbers', check_live_numbers),
    ('/gui/glue-up/sixty', check_sixty),
])
