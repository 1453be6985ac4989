# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""From laminations that have no board to a purchase in the rack, in the real window."""

import json
import tempfile
from pathlib import Path

import desk
import tap

COUNTER = desk.EXAMPLES / 'bakery-counter.broadstave'
WISH = desk.EXAMPLES / 'hatch-counter.broadstave'


class Unbought:
    """A copy of the counter's plan without its boards, and with what the hatch's yards offer, of the
    counter's wood and thicker, since 38 mm do not come out of 8/4 with certainty."""

    def __enter__(self):
        plan = json.loads(COUNTER.read_text(encoding='utf-8'))
        offers = json.loads(WISH.read_text(encoding='utf-8'))['offers']
        del plan['boards']
        for lamination in plan['laminations']:
            del lamination['board']
        plan['offers'] = [offer | {'wood': plan['woods'][0]['id'], 'thickness_mm': 63.5}
                          for offer in offers]
        self.folder = tempfile.TemporaryDirectory()
        path = Path(self.folder.name) / 'unbought.broadstave'
        path.write_text(json.dumps(plan), encoding='utf-8')
        return path

    def __exit__(self, *problem):
        self.folder.cleanup()


def go_to_buying(program):
    program.click_on('label', 'Buying')
    desk.wait('what to buy', lambda: program.sees('to buy for'))


def check_buy():
    """What to buy is there without asking; bought, it stands in the rack; one undo leads back."""
    with Unbought() as path, desk.Desk(path) as program:
        go_to_buying(program)
        desk.wait('a proof', lambda: program.sees('Proven: it cannot be done for less'))
        program.shoot('buying')
        program.wait_seen('push button', 'Put these boards in the rack').queryAction().doAction(0)
        desk.wait('nothing more to buy', lambda: program.sees('every lamination has its board'))
        program.wait_seen('push button', 'Undo: Put boards in the rack')
        program.click_on('label', 'Cutting')
        desk.wait('the cuts', lambda: program.sees('Everything has a place.'))
        program.shoot('buying-cut')
        program.key('ctrl+z')
        desk.wait('unbought', lambda: 'changed' not in program.get_title())


def check_typed():
    """A price typed by keys changes what is paid; nonsense is refused beside the field."""
    with Unbought() as path, desk.Desk(path) as program:
        go_to_buying(program)
        before = program.wait_seen('panel', 'Price of the boards').name
        entry = program.wait_seen('text', 'Price')
        box = entry.queryComponent().getExtents(desk.pyatspi.WINDOW_COORDS)
        program.click(box.x + box.width // 2, box.y + box.height // 2)
        program.key('ctrl+a')
        program.type('much')
        program.key('Return')
        desk.wait('a complaint', lambda: program.sees('A price is expected'))
        program.key('ctrl+a')
        program.type('1.50')
        program.key('Return')
        desk.wait('another price',
                  lambda: program.find('panel', 'Price of the boards').name != before)


tap.run([
    ('/gui/buying/buy', check_buy),
    ('/gui/buying/typed', check_typed),
])
