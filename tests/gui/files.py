# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Plans opened, saved and guarded in the real window."""

import json
import shutil
import tempfile
from pathlib import Path

import desk
import tap

COUNTER = desk.EXAMPLES / 'bakery-counter.broadstave'
ORDER = 'A1 A2 B1 B2 C1 C2 D1 D2 E1 E2 F1 F2 G1 G2 H1 H2'
MOVED = 'A2 A1 B1 B2 C1 C2 D1 D2 E1 E2 F1 F2 G1 G2 H1 H2'


class Folder:
    """A folder with a copy of the counter's plan."""

    def __enter__(self):
        self.folder = tempfile.TemporaryDirectory()
        self.plan = Path(self.folder.name) / 'counter.broadstave'
        shutil.copy(COUNTER, self.plan)
        return self

    def __exit__(self, *problem):
        self.folder.cleanup()


def move_a1(program):
    program.click(*program.get_place('A1'))
    program.key('alt+Right')
    program.wait_order(MOVED)


def read_order(path):
    plan = json.loads(path.read_text(encoding='utf-8'))
    labels = {lamination['id']: lamination['label'] for lamination in plan['laminations']}
    return ' '.join(labels[place['lamination']] for place in plan['order'])


def choose_file(program, title, path):
    """Types a path into the file chooser that has that title."""
    window = desk.wait(title, lambda: desk.find_windows(title))
    desk.xdotool('windowfocus', '--sync', window[0], 'sleep', 0.3)
    if title.startswith('Open'):
        program.type('/')
        desk.xdotool('sleep', 0.3, 'key', 'ctrl+a')
    else:
        program.key('ctrl+a')
    program.type(str(path))
    desk.xdotool('sleep', 0.3)
    program.key('Return')
    desk.wait('the chooser to close', lambda: not desk.find_windows(title))
    desk.xdotool('windowfocus', '--sync', program.window)


def check_save_and_reopen():
    with Folder() as folder:
        with desk.Desk(folder.plan) as program:
            move_a1(program)
            program.key('ctrl+s')
            desk.wait('saved', lambda: 'changed' not in program.get_title())
            assert read_order(folder.plan) == MOVED
            program.key('ctrl+z')
            desk.wait('changed against the file', lambda: 'changed' in program.get_title())
            program.key('ctrl+shift+z')
            desk.wait('as saved again', lambda: 'changed' not in program.get_title())
        with desk.Desk(folder.plan) as program:
            program.wait_order(MOVED)
            program.shoot('reopened')


def check_save_as():
    with Folder() as folder, desk.Desk(folder.plan) as program:
        move_a1(program)
        program.key('ctrl+shift+s')
        other = folder.plan.with_name('other')
        choose_file(program, 'Save the plan', other)
        desk.wait('the new name', lambda: '(other.broadstave)' in program.get_title())
        assert read_order(other.with_suffix('.broadstave')) == MOVED
        assert read_order(folder.plan) == ORDER


def check_open():
    with Folder() as folder, desk.Desk() as program:
        program.key('ctrl+o')
        choose_file(program, 'Open a plan', folder.plan)
        desk.wait('the plan', lambda: '(counter.broadstave)' in program.get_title())


def check_refused(content, words):
    with Folder() as folder, desk.Desk(folder.plan) as program:
        bad = folder.plan.with_name('bad.broadstave')
        bad.write_text(content, encoding='utf-8')
        program.key('ctrl+o')
        choose_file(program, 'Open a plan', bad)
        desk.wait('a message', lambda: desk.find_windows('This file cannot be used'))
        message = desk.wait('a sentence', lambda: [
            node.name for node in desk.walk(program.app)
            if node.getRoleName() == 'label' and words in node.name])
        program.shoot('refused-' + words.split()[0])
        assert 'bad.broadstave' in message[0], message
        program.key('Escape')
        desk.wait('the message to close', lambda: not desk.find_windows('This file cannot be used'))
        program.wait_order(ORDER)
        assert '(counter.broadstave)' in program.get_title()


def check_guard_back():
    with Folder() as folder, desk.Desk(folder.plan) as program:
        move_a1(program)
        program.key('ctrl+w')
        desk.wait('a question', lambda: desk.find_windows('Save the changes'))
        program.shoot('guard')
        program.key('Escape')
        desk.wait('the question to close', lambda: not desk.find_windows('Save the changes'))
        program.wait_order(MOVED)
        assert program.process.poll() is None


def check_guard_save():
    with Folder() as folder, desk.Desk(folder.plan) as program:
        move_a1(program)
        program.key('ctrl+w')
        desk.wait('a question', lambda: desk.find_windows('Save the changes'))
        program.key('Return')
        program.wait_end()
        assert read_order(folder.plan) == MOVED


def check_guard_lose():
    with Folder() as folder, desk.Desk(folder.plan) as program:
        move_a1(program)
        program.key('ctrl+q')
        desk.wait('a question', lambda: desk.find_windows('Save the changes'))
        program.key('alt+l')
        program.wait_end()
        assert read_order(folder.plan) == ORDER


def check_guard_not_needed():
    with Folder() as folder, desk.Desk(folder.plan) as program:
        move_a1(program)
        program.key('ctrl+z')
        program.wait_order(ORDER)
        program.key('ctrl+w')
        program.wait_end()


def check_example():
    """Another plan from the menu, after the question about the changes of this one."""
    with Folder() as folder, desk.Desk(folder.plan) as program:
        move_a1(program)
        program.click_on('push button', 'Menu')
        program.choose('Begin with an example')
        program.shoot('menu')
        program.choose('Potter')
        desk.wait('a question', lambda: desk.find_windows('Save the changes'))
        program.key('alt+l')
        desk.wait('the example', lambda: program.get_title().startswith('Wedging table'))
        program.shoot('example')


def check_folder_gone():
    """What cannot be saved is said, and nothing is lost."""
    with Folder() as folder, desk.Desk(folder.plan) as program:
        move_a1(program)
        shutil.rmtree(folder.plan.parent)
        program.key('ctrl+s')
        desk.wait('a message', lambda: desk.find_windows('The plan is not saved'))
        program.key('Return')
        desk.wait('the message to close', lambda: not desk.find_windows('The plan is not saved'))
        assert 'changed' in program.get_title()
        program.wait_order(MOVED)
        folder.plan.parent.mkdir()


tap.run([
    ('/gui/files/save-and-reopen', check_save_and_reopen),
    ('/gui/files/save-as', check_save_as),
    ('/gui/files/open', check_open),
    ('/gui/files/refused/no-json', lambda: check_refused('not a plan\n', 'line 1')),
    ('/gui/files/refused/wrong-kind', lambda: check_refused(
        COUNTER.read_text(encoding='utf-8').replace('"length_mm": 1500', '"length_mm": "long"'),
        'slab.length_mm')),
    ('/gui/files/refused/from-the-future', lambda: check_refused(
        COUNTER.read_text(encoding='utf-8').replace('"version": 1', '"version": 99'), 'version')),
    ('/gui/files/guard/go-back', check_guard_back),
    ('/gui/files/guard/save', check_guard_save),
    ('/gui/files/guard/lose', check_guard_lose),
    ('/gui/files/guard/not-needed', check_guard_not_needed),
    ('/gui/files/example', check_example),
    ('/gui/files/folder-gone', check_folder_gone),
])
