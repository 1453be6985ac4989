# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""An order looked for and used in the real window."""

import desk
import tap

COUNTER = desk.EXAMPLES / 'bakery-counter.broadstave'
ORDER = 'A1 A2 B1 B2 C1 C2 D1 D2 E1 E2 F1 F2 G1 G2 H1 H2'


def look(program):
    """By keys alone: opens the pane and looks."""
    program.key('ctrl+r')
    program.wait_seen('push button', 'Look for an order')
    program.key('ctrl+l')
    desk.wait('the proof', lambda: program.sees('Proved: no order is better.'))


def get_cost(program):
    return program.find('panel', 'What the order costs').name


def check_use():
    """Nothing moves unasked; used by the pointer; one undo leads back."""
    with desk.Desk(COUNTER) as program:
        before = get_cost(program)
        look(program)
        program.shoot('order-proposed')
        assert program.get_order() == ORDER
        assert 'changed' not in program.get_title()
        program.click_on('push button', 'Use this order')
        desk.wait('another order', lambda: program.get_order() != ORDER)
        desk.wait('another cost', lambda: get_cost(program) != before)
        assert program.sees('The slab lies in this order.')
        program.wait_seen('push button', 'Undo: Use the proposed order')
        program.shoot('order-used')
        program.key('ctrl+z')
        program.wait_order(ORDER)
        assert 'changed' not in program.get_title()


def check_keys():
    """Used and closed by keys."""
    with desk.Desk(COUNTER) as program:
        look(program)
        program.key('ctrl+u')
        desk.wait('another order', lambda: program.get_order() != ORDER)
        program.key('ctrl+shift+r')
        desk.wait('the pane gone', lambda: not program.find('push button', 'Use this order'))
        program.key('ctrl+z')
        program.wait_order(ORDER)


def check_stop():
    """Sixty take a while: stopped, the best so far is there to be used."""
    with desk.Desk(desk.EXAMPLES / 'library-counter.broadstave') as program:
        before = program.get_order()
        program.key('ctrl+r')
        program.wait_seen('push button', 'Look for an order')
        program.key('ctrl+l')
        desk.wait('a first order', lambda: program.sees('The order found costs'))
        program.key('ctrl+period')
        button = program.wait_seen('push button', 'Look for an order')
        desk.wait('the end', lambda: button.getState().contains(desk.pyatspi.STATE_SENSITIVE))
        program.shoot('order-sixty')
        program.key('ctrl+u')
        desk.wait('another order', lambda: program.get_order() != before)
        program.key('ctrl+z')
        program.wait_order(before)


def check_pin():
    """Pinned by a key at its place, it is there in the order found too."""
    with desk.Desk(COUNTER) as program:
        program.click(*program.get_place('D1'))
        desk.wait('the focus', lambda: (program.get_focused() or '').startswith('D1,'))
        program.key('p')
        program.wait_seen('push button', 'Undo: Pin D1 at place 7')
        look(program)
        assert program.sees('D1 at place 7')
        program.shoot('order-pinned')
        program.key('ctrl+u')
        desk.wait('another order', lambda: program.get_order() != ORDER)
        assert program.get_order().split()[6] == 'D1'


def check_stale():
    """Another plan in the meantime: the proposal says so and is not used."""
    with desk.Desk(COUNTER) as program:
        look(program)
        program.click(*program.get_place('A1'))
        desk.wait('the focus', lambda: (program.get_focused() or '').startswith('A1,'))
        program.key('Delete')
        program.wait_order(ORDER.removeprefix('A1 '))
        desk.wait('the words', lambda: program.sees('found for the plan as it was before'))
        program.shoot('order-stale')
        program.key('ctrl+u')
        program.wait_order(ORDER.removeprefix('A1 '))
        program.key('ctrl+z')
        desk.wait('the proof again', lambda: program.sees('Proved: no order is better.'))


tap.run([
    ('/gui/order/use', check_use),
    ('/gui/order/keys', check_keys),
    ('/gui/order/stop', check_stop),
    ('/gui/order/pin', check_pin),
    ('/gui/order/stale', check_stale),
])
