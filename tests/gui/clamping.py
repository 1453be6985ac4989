# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Clamps moved and tightened by pointer and by keys in the real window."""

import re

import pyatspi

import desk
import tap

COUNTER = desk.EXAMPLES / 'bakery-counter.broadstave'
LENGTH = 1530  # mm of its slab

# Beside the slab in its picture, in sizes of the text; and that, in pixels.
LEFT, RIGHT, TEXT = 3.6, 2.0, 40 / 3


def open_place(program):
    program.click_on('label', 'Clamping')
    return desk.wait('the picture', lambda: find_picture(program))


def find_picture(program):
    for node in desk.walk(program.app):
        if re.match(r'Clamps along the slab|Clamp \d+ of', node.name or ''):
            return node
    return None


@desk.patient
def get_clamp(program):
    """Number, of how many, place in mm and force in kN of the chosen clamp, as they are read out."""
    found = re.match(r'Clamp (\d+) of (\d+): at ([\d.]+)\s*mm, ([\d.]+)\s*kN',
                     find_picture(program).name)
    return found and (int(found[1]), int(found[2]), float(found[3]), float(found[4]))


@desk.patient
def get_spot(program, x_mm):
    """Where a clamp's upper head is, in pixels of the window."""
    box = find_picture(program).queryComponent().getExtents(pyatspi.WINDOW_COORDS)
    left, right = box.x + LEFT * TEXT, box.x + box.width - RIGHT * TEXT
    return round(left + (right - left) * x_mm / LENGTH), box.y + 58


@desk.patient
def get_pressure(program):
    """The number in the column at the right, as it is read out."""
    for node in desk.walk(program.app):
        if (node.name or '').startswith('Weakest pressure: '):
            return node.name
    return None


def check_drag():
    """The numbers follow the pointer; what is dropped is one step, and undone by one."""
    with desk.Desk(COUNTER) as program:
        open_place(program)
        before = desk.wait('a pressure', lambda: get_pressure(program))
        start, end = get_spot(program, 487), get_spot(program, 590)
        program.pick_up(*start)
        program.carry(*start, *end)
        desk.wait('a weaker spot', lambda: get_pressure(program) != before)
        program.shoot('clamp-carried')
        assert 'changed' not in program.get_title()
        program.drop()
        desk.wait('an edit', lambda: 'changed' in program.get_title())
        number, of, place, force = get_clamp(program)
        assert (number, of) == (4, 11), (number, of)
        assert abs(place - 590) < 5, place
        program.shoot('clamp-dropped')
        program.key('ctrl+z')
        desk.wait('nothing left', lambda: 'changed' not in program.get_title())
        desk.wait('the pressure of before', lambda: get_pressure(program) == before)


def check_escape():
    with desk.Desk(COUNTER) as program:
        open_place(program)
        before = desk.wait('a pressure', lambda: get_pressure(program))
        start, end = get_spot(program, 487), get_spot(program, 590)
        program.pick_up(*start)
        program.carry(*start, *end)
        desk.wait('a weaker spot', lambda: get_pressure(program) != before)
        program.key('Escape')
        desk.wait('the pressure of before', lambda: get_pressure(program) == before)
        program.drop()
        assert 'changed' not in program.get_title()


def check_keys():
    with desk.Desk(COUNTER) as program:
        open_place(program)
        program.click(*get_spot(program, 487))
        desk.wait('the clamp', lambda: get_clamp(program) and get_clamp(program)[0] == 4)
        force = get_clamp(program)[3]
        program.key('Right', 'Right', 'comma')
        desk.wait('moved', lambda: get_clamp(program)[2] == 487 + 19)
        program.key('minus', 'minus')
        desk.wait('eased by two twentieths of 6.5 kN',
                  lambda: abs(get_clamp(program)[3] - (force - 0.65)) < 0.02)
        program.key('Delete')
        desk.wait('ten', lambda: get_clamp(program)[1] == 10)
        program.key('Insert')
        desk.wait('eleven', lambda: get_clamp(program)[1] == 11)
        program.key('Next', 'Next')
        program.shoot('clamp-keys')
        program.key(*['ctrl+z'] * 4)
        desk.wait('nothing left', lambda: 'changed' not in program.get_title())


def check_laminations_stay():
    """The keys of the glue-up do nothing here."""
    with desk.Desk(COUNTER) as program:
        open_place(program)
        program.click(*get_spot(program, 487))
        desk.wait('the clamp', lambda: get_clamp(program))
        program.key('alt+Right', 'e')
        program.key('Next')
        desk.wait('the next clamp', lambda: get_clamp(program)[0] == 5)
        assert 'changed' not in program.get_title()


tap.run([
    ('/gui/clamping/drag', check_drag),
    ('/gui/clamping/escape', check_escape),
    ('/gui/clamping/keys', check_keys),
    ('/gui/clamping/laminations-stay', check_laminations_stay),
])
