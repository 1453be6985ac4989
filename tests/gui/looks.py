# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The window at its sizes and in its colours: nothing is cut off, nothing lies on anything else. The
pictures in the build folder's `shots` are for people to look at."""

import subprocess

import desk
import tap

COUNTER = desk.EXAMPLES / 'bakery-counter.broadstave'
TABLE = desk.EXAMPLES / 'wedging-table.broadstave'
SIXTY = desk.EXAMPLES / 'library-counter.broadstave'

SEEN = ('label', 'push button', 'list item')


def list_boxes(node):
    """Everything that is seen outside scrolled lists, as (name, x, y, width, height)."""
    if node.getRoleName() == 'list' and node.name == 'Findings':
        return
    if node.getRoleName() in SEEN and node.name:
        box = node.queryComponent().getExtents(desk.pyatspi.WINDOW_COORDS)
        if box.width > 0 and box.height > 0:
            yield node.name, box.x, box.y, box.width, box.height
    for child in node:
        if child is not None:
            yield from list_boxes(child)


def overlap(a, b):
    return a[1] < b[1] + b[3] and b[1] < a[1] + a[3] and a[2] < b[2] + b[4] and b[2] < a[2] + a[4]


def contain(a, b):
    return a[1] <= b[1] and a[2] <= b[2] and a[1] + a[3] >= b[1] + b[3] and \
        a[2] + a[4] >= b[2] + b[4]


def check(plan, width, height, theme, scale=1):
    with desk.Desk(plan, size=(width * scale, height * scale), GTK_THEME=theme,
                   GDK_SCALE=str(scale)) as program:
        def find_frame():
            box = program.app[0].queryComponent().getExtents(desk.pyatspi.WINDOW_COORDS)
            return (box.width, box.height) == (width, height)
        desk.wait('the size', find_frame)
        name = f"look-{width}x{height}-{'dark' if 'dark' in theme else 'light'}-{scale}"
        program.shoot(name)
        boxes = list(list_boxes(program.app[0]))
        outside = [box for box in boxes if box[1] < 0 or box[2] < 0 or
                   box[1] + box[3] > width or box[2] + box[4] > height]
        assert not outside, f'outside of the window: {outside}'
        laminations = [box for box in boxes if ', place ' in box[0]]
        assert laminations
        others = [box for box in boxes if box not in laminations]
        crossed = [(a, b) for i, a in enumerate(others) for b in others[i + 1:]
                   if overlap(a, b) and not contain(a, b) and not contain(b, a)]
        assert not crossed, f'on one another: {crossed}'
        covered = [(a, b) for a in others for b in laminations if overlap(a, b)]
        assert not covered, f'on the pictures: {covered}'


def check_colours():
    """Light and dark really differ: the picture's corner is the window's ground."""
    grounds = {}
    for look in ('light', 'dark'):
        path = desk.SHOTS / f'look-1280x780-{look}-1.png'
        value = subprocess.run(['convert', path, '-crop', '1x1+10+400', '-colorspace', 'gray',
                                '-format', '%[fx:mean]', 'info:'], check=True,
                               capture_output=True, text=True).stdout
        grounds[look] = float(value)
    assert grounds['light'] > 0.9 and grounds['dark'] < 0.3, grounds


LIGHT, DARK = 'Adwaita', 'Adwaita:dark'

tap.run([
    ('/gui/looks/1024x700/light', lambda: check(TABLE, 1024, 700, LIGHT)),
    ('/gui/looks/1024x700/dark', lambda: check(COUNTER, 1024, 700, DARK)),
    ('/gui/looks/1280x780/light', lambda: check(COUNTER, 1280, 780, LIGHT)),
    ('/gui/looks/1280x780/dark', lambda: check(COUNTER, 1280, 780, DARK)),
    ('/gui/looks/1600x1000/light', lambda: check(SIXTY, 1600, 1000, LIGHT)),
    ('/gui/looks/1600x1000/dark', lambda: check(SIXTY, 1600, 1000, DARK)),
    ('/gui/looks/3800x2100/light', lambda: check(SIXTY, 3800, 2100, LIGHT)),
    ('/gui/looks/3800x2100/dark', lambda: check(TABLE, 3800, 2100, DARK)),
    ('/gui/looks/1900x1050/twice', lambda: check(COUNTER, 1900, 1050, LIGHT, scale=2)),
    ('/gui/looks/1024x700/twice', lambda: check(SIXTY, 1024, 700, DARK, scale=2)),
    ('/gui/looks/colours', check_colours),
])
