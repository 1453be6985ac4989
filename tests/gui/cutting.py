# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Boards cut up in the real window, by pointer and by keys."""

import re

import desk
import tap

BAKERY = desk.EXAMPLES / 'bakery-counter.broadstave'
COUNTER = desk.EXAMPLES / 'school-counter.broadstave'


@desk.patient
def get_pieces(program):
    """What is read out of every piece."""
    for node in desk.walk(program.app):
        if node.getRoleName() == 'list' and node.name.startswith('Pieces to cut'):
            return [item.name for item in node]
    return []


def get_board(program, label):
    found = [re.search(r'on board (\w+),', piece)[1] for piece in get_pieces(program)
             if piece.startswith(label + ',')]
    return found[0] if found else None


def find_box(program, begin, within='on board'):
    """Where a piece is, once it has been laid out."""
    for node in desk.walk(program.app):
        if (node.getRoleName() == 'list item' and node.name.startswith(begin)
                and within in node.name):
            box = node.queryComponent().getExtents(desk.pyatspi.WINDOW_COORDS)
            return box if box.width > 20 and box.y > 150 else None
    return None


def get_middle(program, begin, within='on board'):
    box = desk.wait(f'the place of {begin} {within}', lambda: find_box(program, begin, within))
    return box.x + box.width // 2, box.y + box.height // 2


def plan_cuts(program):
    program.click_on('label', 'Cutting')
    program.click_on('push button', 'Plan the cuts')
    desk.wait('a place for all pieces', lambda: len(get_pieces(program)) == 27)
    desk.wait('the proof', lambda: program.sees('Proven: nothing costs less'))


def check_milled():
    """Laminations milled long ago need no place."""
    with desk.Desk(BAKERY) as program:
        program.click_on('label', 'Cutting')
        desk.wait('nothing to cut', lambda: program.sees('Nothing is left to cut: every'))
        assert not program.sees('no place') and not program.sees('no room beside')
        program.shoot('cutting-milled')


def check_plan():
    with desk.Desk(COUNTER) as program:
        plan_cuts(program)
        program.shoot('cutting-planned')
        assert 'changed' in program.get_title()
        program.key('ctrl+z')
        desk.wait('no cuts', lambda: get_pieces(program) == [])
        assert 'changed' not in program.get_title()


def check_drag():
    """To a board that nothing is cut from: the others stay, and the cost is told under way."""
    with desk.Desk(COUNTER) as program:
        plan_cuts(program)
        start, pieces = get_middle(program, 'A,'), get_pieces(program)
        target = get_middle(program, '', 'on board 4,')[1] + 90  # board 5 is under board 4
        program.pick_up(*start)
        program.carry(*start, start[0], target, steps=20)
        desk.wait('the cost', lambda: program.sees('Boards:') and program.sees('now'))
        program.shoot('cutting-carried')
        program.drop()
        desk.wait('the other board', lambda: get_board(program, 'A') == '5')
        desk.wait('pinned', lambda: any(p.startswith('A,') and p.endswith('pinned')
                                        for p in get_pieces(program)))
        assert sorted(p for p in pieces if not p.startswith('A,')) == sorted(
            p for p in get_pieces(program) if not p.startswith('A,'))
        program.shoot('cutting-dropped')
        program.wait_seen('push button', 'Undo: Cut A from board 5')
        program.key('ctrl+z')
        desk.wait('all as it was', lambda: sorted(get_pieces(program)) == sorted(pieces))


def check_escape():
    with desk.Desk(COUNTER) as program:
        plan_cuts(program)
        start, pieces = get_middle(program, 'A,'), get_pieces(program)
        program.pick_up(*start)
        program.carry(*start, start[0] + 40, start[1] + 200, steps=20)
        program.key('Escape')
        program.drop()
        desk.wait('all as it was', lambda: get_pieces(program) == pieces)


def check_keys():
    """Chosen, moved, pinned and marked without a pointer; laid out at the end."""
    with desk.Desk(COUNTER) as program:
        plan_cuts(program)
        program.click(*get_middle(program, 'A,'))
        desk.wait('the focus', lambda: 'on board' in (program.get_focused() or ''))
        before = get_board(program, 'A')
        program.key('shift+Next')
        desk.wait('another board', lambda: get_board(program, 'A') not in (None, before))
        desk.wait('the focus', lambda: (program.get_focused() or '').startswith('A,'))
        program.key('k')
        desk.wait('released', lambda: any(p.startswith('A,') and p.endswith('planned')
                                          for p in get_pieces(program)))
        program.key('c')
        desk.wait('cut', lambda: any(p.startswith('A,') and p.endswith(', cut')
                                     for p in get_pieces(program)))
        program.shoot('cutting-keys')
        program.click_on('push button', 'Lay out the laminations')
        desk.wait('laid out', lambda: program.sees('14 laminations now have their boards'))
        program.wait_seen('push button', 'Undo: Lay out 14 laminations')
        program.click_on('push button', 'Plan the rest')
        desk.wait('the proof', lambda: program.sees('Proven: nothing costs less'))
        assert len(get_pieces(program)) == 27


tap.run([
    ('/gui/cutting/milled', check_milled),
    ('/gui/cutting/plan', check_plan),
    ('/gui/cutting/drag', check_drag),
    ('/gui/cutting/escape', check_escape),
    ('/gui/cutting/keys', check_keys),
])
