# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The places by keyboard and as they are read out, in the real window."""

import re

import desk
import tap

COUNTER = desk.EXAMPLES / 'bakery-counter.broadstave'

PLACES = ('Slab', 'Wood', 'Boards', 'Buying', 'Cutting', 'Laminations', 'Glue-up', 'Flattening',
          'Clamping', 'Schedule', 'Shop')

# What a person works with, by the names of its role for assistive technology.
CONTROLS = ('check box', 'combo box', 'entry', 'link', 'page tab', 'push button', 'radio button',
            'slider', 'spin button', 'switch', 'text', 'toggle button')


@desk.patient
def has(program, place, state):
    """Whether the row of a place in the list has a state."""
    for node in desk.walk(program.app):
        if node.getRoleName() == 'list item' and node.name == place:
            return node.getState().contains(state)
    return False


def get_owner(program):
    """The place that holds the focus, by the name that its page is read out by; or None."""
    for node in desk.walk(program.app):
        if node.getState().contains(desk.pyatspi.STATE_FOCUSED):
            while node and not (node.getRoleName() == 'panel' and node.name in PLACES):
                node = node.parent
            return node.name if node else None
    return None


def check_tab():
    """Tab goes on from the list into each place, which stays the one that is shown, and Shift and Tab
    lead back."""
    with desk.Desk(COUNTER) as program:
        for place in PLACES:
            program.click_on('label', place)
            desk.wait(f'{place} in the list',
                      lambda: has(program, place, desk.pyatspi.STATE_FOCUSED))
            program.key('Tab')
            desk.wait(f'the focus in {place}', lambda: get_owner(program) == place)
            assert has(program, place, desk.pyatspi.STATE_SELECTED), 'another place is shown'
            desk.wait(f'from {place} back in the list by Shift and Tab',
                      lambda: has(program, place, desk.pyatspi.STATE_FOCUSED)
                      or program.key('shift+Tab'))


def check_keys():
    """From the wish of an empty plan through all places by keys alone; the focus is always in the
    place that is shown."""
    with desk.Desk(COUNTER) as program:
        program.key('ctrl+n')
        desk.wait('the first field', lambda: program.get_focused() == 'Length')
        program.type('1500\n600\n60\n')
        desk.wait('the wish', lambda: program.sees('Too few laminations'))
        for place in PLACES[1:]:
            program.key('alt+Next')
            desk.wait(f'the focus in {place}', lambda: get_owner(program) == place)
        program.key('alt+Prior')
        desk.wait('back', lambda: get_owner(program) == PLACES[-2])


def list_unnamed(program):
    """Controls that take the focus and are read out by nothing but what they are made of."""
    return [f'{node.getRoleName()} {node.name} in {node.parent.name}'
            for node in desk.walk(program.app)
            if node.getRoleName() in CONTROLS
            and node.getState().contains(desk.pyatspi.STATE_FOCUSABLE)
            and (not node.name or re.match('Gtk[A-Z]|Bs[A-Z]', node.name))]


def check_names():
    """Web Content Accessibility Guidelines 2.1, success criterion 4.1.2: name, role, value."""
    with desk.Desk(COUNTER) as program:
        for place in PLACES:
            program.click_on('label', place)
            desk.wait(f'{place} in the list',
                      lambda: has(program, place, desk.pyatspi.STATE_SELECTED))
            parts = ('Moisture and movement', 'Money and weight') if place == 'Wood' else ()
            for part in parts:
                program.click_on('page tab', part)
            try:
                desk.wait('names', lambda: not list_unnamed(program))
            except AssertionError:
                raise AssertionError(f'{place}: {list_unnamed(program)}') from None


tap.run([
    ('/gui/places/tab', check_tab),
    ('/gui/places/keys', check_keys),
    ('/gui/places/names', check_names),
])
