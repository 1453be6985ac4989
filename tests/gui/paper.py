# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The diagram on its way to paper, read back."""

import re
import subprocess
import tempfile
from pathlib import Path

import desk
import tap

COUNTER = desk.EXAMPLES / 'bakery-counter.broadstave'

# What a file of a kind ends with.
LAST = {'.pdf': b'%%EOF', '.svg': b'</svg>', '.png': b'IEND'}


def run(*words):
    return subprocess.run(words, check=True, capture_output=True, text=True).stdout


def count_pages(path):
    return int(re.search(r'^Pages:\s+(\d+)$', run('pdfinfo', path), re.MULTILINE)[1])


def export(program, path):
    program.key('ctrl+e')
    title = 'Write the diagram'
    window = desk.wait('the chooser', lambda: desk.find_windows(title))
    desk.xdotool('windowfocus', '--sync', window[0], 'sleep', 0.3)
    program.key('ctrl+a')
    program.type(str(path))
    desk.xdotool('sleep', 0.3)
    program.key('Return')
    desk.wait('the whole file', lambda: path.exists() and
              path.read_bytes()[-20:].find(LAST[path.suffix]) >= 0 and not desk.find_windows(title))
    desk.xdotool('windowfocus', '--sync', program.window)


def check_pdf():
    """What the printer would get: text that can be searched, on pages of the paper's size."""
    with tempfile.TemporaryDirectory() as folder, desk.Desk(COUNTER) as program:
        path = Path(folder) / 'glue-up.pdf'
        program.click(*program.get_place('A1'))
        program.key('alt+End')
        export(program, path)
        text = run('pdftotext', '-layout', path, '-')
        assert 'Kneading counter for a village bakery' in text
        for label in ('A1', 'C2', 'H2'):
            assert label in text, label
        assert '61.6' in text, 'the thickness'
        pages = count_pages(path)
        assert pages >= 1
        size = re.search(r'^Page size:\s+(\S+) x (\S+) pts', run('pdfinfo', path), re.MULTILINE)
        assert sorted(round(float(side)) for side in size.groups()) in ([595, 842], [612, 792]), \
            size[0]
        desk.SHOTS.mkdir(exist_ok=True)
        run('pdftoppm', '-r', '80', '-png', path, desk.SHOTS / 'paper')
        run('pdffonts', path)


def check_workings():
    """With the workings there is more to read."""
    with tempfile.TemporaryDirectory() as folder, desk.Desk(COUNTER) as program:
        without, with_them = Path(folder) / 'without.pdf', Path(folder) / 'with.pdf'
        export(program, without)
        program.click_on('push button', 'Menu')
        program.choose('Print the workings too')
        program.key('Escape')
        export(program, with_them)
        assert count_pages(with_them) > count_pages(without)
        words = 'specific gravity of the densest wood'
        assert words in run('pdftotext', with_them, '-')
        assert words not in run('pdftotext', without, '-')


def check_picture(ending, start):
    with tempfile.TemporaryDirectory() as folder, desk.Desk(COUNTER) as program:
        path = Path(folder) / ('glue-up' + ending)
        export(program, path)
        assert start in path.read_bytes()[:200]


def check_preview():
    with desk.Desk(COUNTER) as program:
        program.key('ctrl+shift+p')
        desk.wait('the pages', lambda: desk.find_windows('Pages'))
        desk.wait('a page', lambda: any(node.name.startswith('Page 1 of')
                                        for node in desk.walk(program.app)))
        program.shoot('pages')
        program.key('Escape')
        desk.wait('the end of it', lambda: not desk.find_windows('Pages'))


def check_print():
    """Through the print dialog, to the printer that writes a file."""
    with desk.Desk(COUNTER) as program:
        program.key('ctrl+p')
        window = desk.wait('the dialog', lambda: desk.find_windows('Print'))[0]
        desk.wait('a printer', lambda: any('Print to File' in node.name
                                           for node in desk.walk(program.app)))
        desk.xdotool('mousemove', '--window', window, 90, 108, 'click', 1)
        printing = desk.wait('the button', lambda: [
            node for node in desk.walk(program.app) if node.getRoleName() == 'push button' and
            node.name.replace('_', '').startswith('Print') and
            node.getState().contains(desk.pyatspi.STATE_SENSITIVE)])
        program.shoot('print')
        printing[-1].queryAction().doAction(0)
        path = desk.wait('the file', find_output)
        assert count_pages(path) >= 1
        assert 'Kneading counter' in run('pdftotext', path, '-')


def find_output():
    for path in Path.home().glob('*.pdf'):
        if LAST['.pdf'] in path.read_bytes()[-20:]:
            return path
    return None


tap.run([
    ('/gui/paper/pdf', check_pdf),
    ('/gui/paper/workings', check_workings),
    ('/gui/paper/svg', lambda: check_picture('.svg', b'<svg')),
    ('/gui/paper/png', lambda: check_picture('.png', b'\x89PNG')),
    ('/gui/paper/preview', check_preview),
    ('/gui/paper/print', check_print),
])
