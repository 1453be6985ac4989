# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Packs made, proposed and used in the real window."""

import json
import tempfile
from pathlib import Path

import desk
import tap

COUNTER = desk.EXAMPLES / 'library-counter.broadstave'


def open_place(program):
    program.click_on('label', 'Schedule')
    desk.wait('the presses', lambda: program.sees('Press 1'))


def write_hasty(folder):
    """The counter without packs, glued with a quicker adhesive: too much for one press."""
    plan = json.loads(COUNTER.read_text(encoding='utf-8'))
    plan['packs'] = []
    plan['adhesive']['open_s'] = 240
    plan['adhesive']['total_s'] = 510
    plan['shop']['clamps'][0]['count'] = 60
    path = Path(folder) / 'hasty.broadstave'
    path.write_text(json.dumps(plan), encoding='utf-8')
    return path


def check_use():
    """What is proposed is used with one click, and one undo leads back."""
    with tempfile.TemporaryDirectory() as folder, desk.Desk(write_hasty(folder)) as program:
        open_place(program)
        assert program.sees('Not in one press, but in packs it can be glued.')
        program.shoot('schedule-proposed')
        program.click_on('push button', 'Use these packs')
        desk.wait('the packs', lambda: program.sees('With the packs that you chose.'))
        program.shoot('schedule-used')
        program.key('ctrl+z')
        desk.wait('no packs', lambda: program.sees('Not in one press'))
        assert 'changed' not in program.get_title()


def check_by_hand():
    """A pack is made by keys alone, and taken apart again."""
    with desk.Desk(desk.EXAMPLES / 'bakery-counter.broadstave') as program:
        open_place(program)
        assert program.sees('Press 1: A1 to H2')
        program.key('alt+h')
        program.key('ctrl+a')
        program.type('6')
        program.key('Tab', 'space')
        desk.wait('the pack', lambda: program.sees('A1 to C2: 6 laminations'))
        desk.wait('two presses', lambda: program.sees('Press 2, round 2: A1 to H2'))
        program.shoot('schedule-by-hand')
        program.wait_seen('push button', 'Take apart: A1 to C2').queryAction().doAction(0)
        desk.wait('one press', lambda: program.sees('Press 1: A1 to H2'))


def check_other_way():
    """Beside one's own packs the best way is looked at, and nothing changes by looking."""
    with desk.Desk(COUNTER) as program:
        open_place(program)
        desk.wait('own packs', lambda: program.sees('11 presses in 11 rounds'))
        program.click_on('label', 'Fewest rounds')
        desk.wait('the other presses', lambda: program.sees('Press 1: 1a to 30b'))
        program.shoot('schedule-other-way')
        assert 'changed' not in program.get_title()


tap.run([
    ('/gui/schedule/use', check_use),
    ('/gui/schedule/by-hand', check_by_hand),
    ('/gui/schedule/other-way', check_other_way),
])
