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


def walk_place(node, place):
    """What is in the window, of all pages only that of one place: the others are large."""
    yield node
    for child in node:
        if child is not None and (child.name == place or child.name not in PLACES
                                  or child.getRoleName() != 'panel'):
            yield from walk_place(child, place)


def has_focus(program, place):
    """Whether something in the page of a place has the focus."""
    for node in walk_place(program.app, place):
        if node.getRoleName() == 'panel' and node.name == place:
            return any(inner.getState().contains(desk.pyatspi.STATE_FOCUSED)
                       for inner in desk.walk(node))
    return False


def check_tab():
    """Tab goes on from the list into each place, which stays the one that is shown, and Shift and Tab
    lead back."""
    with desk.Desk(COUNTER) as program:
        for place in PLACES:
            program.click_on('label', place)
            desk.wait(f'{place} in the list',
                      lambda: has(program, place, desk.pyatspi.STATE_FOCUSED))
            program.key('Tab')
            desk.wait(f'the focus in {place}', lambda: has_focus(program, place))
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
            desk.wait(f'the focus in {place}', lambda: has_focus(program, place))
        program.key('alt+Prior')
        desk.wait('back', lambda: has_focus(program, PLACES[-2]))


@desk.patient
def list_unnamed(program, place):
    """Controls that take the focus and are read out by nothing but what they are made of."""
    return [f'{node.getRoleName()} {node.name} in {node.parent.name}'
            for node in walk_place(program.app, place)
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
                desk.wait('names', lambda: not list_unnamed(program, place))
            except AssertionError:
                raise AssertionError(f'{place}: {list_unnamed(program, place)}') from None


tap.run([
    ('/gui/places/tab', check_tab),
    ('/gui/places/keys', check_keys),
    ('/gui/places/names', check_names),
])
