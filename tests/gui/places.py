# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The list of places by keyboard in the real window."""

import desk
import tap

COUNTER = desk.EXAMPLES / 'bakery-counter.broadstave'


@desk.patient
def has(program, place, state):
    """Whether the row of a place in the list has a state; its name is its label's."""
    for node in desk.walk(program.app):
        if node.getRoleName() == 'list item' and node.childCount and node[0].name == place:
            return node.getState().contains(state)
    return False


def check_tab(place):
    """Tab goes on from the list into the place, which stays the one that is shown."""
    with desk.Desk(COUNTER) as program:
        program.click_on('label', place)
        desk.wait(f'{place} in the list', lambda: has(program, place, desk.pyatspi.STATE_FOCUSED))
        program.key('Tab')
        desk.wait(f'the focus in {place}',
                  lambda: not has(program, place, desk.pyatspi.STATE_FOCUSED))
        assert has(program, place, desk.pyatspi.STATE_SELECTED), 'another place is shown'


tap.run([(f'/gui/places/tab/{place.lower()}', lambda place=place: check_tab(place))
         for place in ('Boards', 'Laminations', 'Shop')])
