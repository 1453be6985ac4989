# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The program with its window, driven as a person would: by pointer and keys, seen through what it
shows to assistive technology. Runs inside display.sh."""

import functools
import os
import re
import subprocess
import time
from pathlib import Path

import pyatspi
from gi.repository import Atspi, GLib

SOURCE = Path(os.environ['BROADSTAVE_SOURCE'])
BUILD = Path(os.environ['BROADSTAVE_BUILD'])
PROGRAM = BUILD / 'src' / 'app' / 'broadstave'
EXAMPLES = SOURCE / 'data' / 'examples'
SHOTS = BUILD / 'shots'

PATIENCE_S = 120

# The program is a good deal slower under the sanitizers than the 0.8 s that an answer may take by
# default.
Atspi.set_timeout(PATIENCE_S * 1000, PATIENCE_S * 1000)


def wait(what, condition):
    """The first true answer of a condition; fails after a while. What goes from the window while it
    is being read is no answer."""
    until = time.monotonic() + PATIENCE_S
    gone = None
    while time.monotonic() < until:
        try:
            answer = condition()
        except GLib.GError as problem:
            answer, gone = None, problem
        if answer:
            return answer
        time.sleep(0.02)
    raise AssertionError(f'waited in vain: {what}') from gone


def patient(question):
    """A question to the window that is asked again where what it reads is just being replaced."""
    @functools.wraps(question)
    def ask(*arguments):
        answers = wait(question.__name__, lambda: [question(*arguments)])
        return answers[0]
    return ask


def xdotool(*words):
    return subprocess.run(['xdotool', *map(str, words)], check=True, capture_output=True,
                          text=True).stdout.split()


def find_windows(title):
    """Visible windows whose title begins so."""
    found = subprocess.run(['xdotool', 'search', '--onlyvisible', '--name', '^' + title],
                           capture_output=True, text=True)
    return found.stdout.split()


def walk(node):
    yield node
    for child in node:
        if child is not None:
            yield from walk(child)


class Desk:
    """One run of the program; a context manager."""

    def __init__(self, *arguments, size=None, **variables):
        self.process = subprocess.Popen([PROGRAM, *map(str, arguments)], cwd=Path.home(),
                                        env=os.environ | variables, stderr=subprocess.PIPE,
                                        text=True)
        self.window = wait('a window', self.find_window)
        if size:
            xdotool('windowmove', '--sync', self.window, 0, 0,
                    'windowsize', '--sync', self.window, *size)
        self.app = wait('the accessible program', self.find_app)
        wait('laminations', self.get_items)
        xdotool('windowfocus', '--sync', self.window)

    def __enter__(self):
        return self

    def __exit__(self, *problem):
        if self.process.poll() is None:
            self.process.terminate()
        errors = self.process.communicate(timeout=PATIENCE_S)[1]
        complaints = [line for line in errors.splitlines()
                      if re.search('CRITICAL|WARNING|Sanitizer|runtime error', line)]
        if problem[0] is None:
            assert not complaints, '\n'.join(complaints)

    def find_window(self):
        assert self.process.poll() is None, 'the program ended'
        found = subprocess.run(['xdotool', 'search', '--onlyvisible', '--pid',
                                str(self.process.pid)], capture_output=True, text=True)
        return found.stdout.split()[:1] and found.stdout.split()[0]

    def find_app(self):
        for app in pyatspi.Registry.getDesktop(0):
            if app and app.name == 'broadstave' and app.get_process_id() == self.process.pid:
                return app
        return None

    # What is seen.

    @patient
    def find(self, role, name):
        """The first thing of that role whose name begins so, or None."""
        for node in walk(self.app):
            if node.getRoleName() == role and node.name.startswith(name):
                return node
        return None

    @patient
    def sees(self, text):
        """Whether a label holds that."""
        return any(text in node.name for node in walk(self.app)
                   if node.getRoleName() == 'label' and node.name)

    def get_title(self):
        return self.app[0].name if self.app.childCount else None

    @patient
    def get_items(self):
        """The laminations as they are read out, from front to back, then the rack."""
        for node in walk(self.app):
            if node.getRoleName() == 'list' and node.name.startswith('Laminations'):
                return [item.name for item in node]
        return []

    def get_order(self):
        """Labels of the slab, as it is shown: 'A1 A2 B1 ...'."""
        places = [re.match(r'(.*), place (\d+) of', item) for item in self.get_items()]
        places = sorted((int(place[2]), place[1]) for place in places if place)
        return ' '.join(label for _, label in places)

    def get_place(self, label):
        """Middle of a lamination, in pixels of the window."""
        item = self.find('list item', label + ',')
        box = item.queryComponent().getExtents(pyatspi.WINDOW_COORDS)
        return box.x + box.width // 2, box.y + box.height // 2

    @patient
    def get_focused(self):
        for node in walk(self.app):
            if node.getState().contains(pyatspi.STATE_FOCUSED):
                return node.name
        return None

    def wait_order(self, wanted):
        try:
            wait('the order', lambda: self.get_order() == wanted)
        except AssertionError:
            raise AssertionError(f'the order is {self.get_order()} and not {wanted}') from None

    def wait_free(self):
        """Until nothing is carried."""
        button = self.wait_seen('push button', 'Turn over')
        wait('nothing carried', lambda: button.getState().contains(pyatspi.STATE_SENSITIVE))

    def wait_end(self):
        wait('the end', lambda: self.process.poll() is not None)
        assert self.process.returncode == 0, f'exit status {self.process.returncode}'

    def wait_seen(self, role, name):
        return wait(f'{role} {name}', lambda: self.find(role, name))

    # What is done.

    def key(self, *keys):
        for key in keys:
            xdotool('key', key)

    def type(self, text):
        xdotool('type', '--delay', 10, text)

    def click(self, x, y, button=1):
        xdotool('mousemove', '--window', self.window, x, y, 'click', button)

    def click_on(self, role, name):
        box = wait(f'{role} {name} to stand still', lambda: self.get_still_box(role, name))
        self.click(box.x + box.width // 2, box.y + box.height // 2)

    def get_still_box(self, role, name):
        """Where it is; None while the window is still being laid out."""
        component = self.wait_seen(role, name).queryComponent()
        before = component.getExtents(pyatspi.WINDOW_COORDS)
        time.sleep(0.05)
        box = component.getExtents(pyatspi.WINDOW_COORDS)
        is_still = (box.x, box.y, box.width) == (before.x, before.y, before.width)
        return box if is_still and box.width > 0 else None

    def choose(self, name):
        """An item of an open menu. A menu is a surface of its own, where pixels of the window mean
        nothing."""
        self.wait_seen('menu item', name).queryAction().doAction(0)

    def pick_up(self, x, y):
        xdotool('mousemove', '--window', self.window, x, y, 'sleep', 0.05, 'mousedown', 1)

    def carry(self, x_from, y_from, x_to, y_to, steps=12):
        for i in range(1, steps + 1):
            xdotool('mousemove', '--window', self.window, x_from + (x_to - x_from) * i // steps,
                    y_from + (y_to - y_from) * i // steps, 'sleep', 0.02)

    def drop(self):
        xdotool('mouseup', 1)

    def drag(self, start, end):
        self.pick_up(*start)
        self.carry(*start, *end)
        self.drop()

    def shoot(self, name):
        """A picture of the screen, for people to look at."""
        SHOTS.mkdir(exist_ok=True)
        time.sleep(0.4)
        subprocess.run(['import', '-silent', '-window', 'root', SHOTS / f'{name}.png'], check=True)
