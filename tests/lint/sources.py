# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""What every file of the project keeps to."""

import re

import project
import tap

TOP = {'README.md', 'DEVELOPERS.md', 'LICENSE', 'meson.build', *project.FOLDERS}
MAX_LINES = 700
LEFT_OVER = re.compile(r'\b(TO' 'DO|FIX' 'ME|X' 'XX)\b')
# A path that climbs out of the project or stands on somebody's machine; written in two, as above.
ELSEWHERE = re.compile(r'(?:^|[\s\'"(=])(?:/ho' r'me/|/ro' r'ot/|/wo' r'rk/|\.\./sha' r'red)')

SPDX = ('SPDX-FileCopyrightText: The Broadstave developers',
        'SPDX-License-Identifier: GPL-3.0-or-later')


def list_sources():
    return project.list_files('*.c', '*.h', '*.py', '*.sh', '*.css')


def list_texts():
    return project.list_files('*.c', '*.h', '*.py', '*.sh', '*.css', '*.ui', '*.xml', '*.in',
                              '*.build', '*.md', '*.json', '*.svg', '*.po') + \
        sorted(project.ROOT.glob('*.md')) + [project.ROOT / 'meson.build']


def check_top_level():
    found = {path.name for path in project.ROOT.iterdir()
             if not path.name.startswith(('.', 'build'))}
    assert found <= TOP, f'at the top level, besides hidden files: {sorted(found - TOP)}'
    assert TOP <= found, f'missing at the top level: {sorted(TOP - found)}'


def check_licence():
    complaints = []
    for path in list_sources():
        lines = path.read_text(encoding='utf-8').splitlines()
        if lines and lines[0].startswith('#!'):
            lines = lines[1:]
        head = '\n'.join(lines[:2])
        if not all(line in head for line in SPDX):
            complaints.append(f'{project.name_of(path)}: the first two lines name no licence')
    project.fail_if(complaints)


def check_length():
    complaints = []
    for path in project.list_files('*.c', '*.h', folders=['src', 'tests']):
        length = len(path.read_text(encoding='utf-8').splitlines())
        if length > MAX_LINES:
            complaints.append(f'{project.name_of(path)}: {length} lines; split it below {MAX_LINES}')
    project.fail_if(complaints)


def check_lines(pattern, what):
    complaints = []
    for path in list_texts():
        for number, line in enumerate(path.read_text(encoding='utf-8').splitlines(), 1):
            if pattern.search(line):
                complaints.append(f'{project.name_of(path)}:{number}: {what}: {line.strip()}')
    project.fail_if(complaints)


def check_line_ends():
    complaints = []
    for path in list_texts():
        text = path.read_text(encoding='utf-8')
        if '\r' in text:
            complaints.append(f'{project.name_of(path)}: has carriage returns')
        if text and not text.endswith('\n'):
            complaints.append(f'{project.name_of(path)}: does not end with a line end')
        if '\t' in text:
            complaints.append(f'{project.name_of(path)}: has tabs')
        if path.suffix != '.po' and re.search(r'[ \t]+$', text, re.MULTILINE):
            complaints.append(f'{project.name_of(path)}: has spaces at a line end')
    project.fail_if(complaints)


def check_header_guards():
    project.fail_if([f'{project.name_of(path)}: no #pragma once'
                     for path in project.list_files('*.h')
                     if '#pragma once' not in path.read_text(encoding='utf-8')])


tap.run([
    ('/sources/top-level', check_top_level),
    ('/sources/licence', check_licence),
    ('/sources/length', check_length),
    ('/sources/nothing-left-over', lambda: check_lines(LEFT_OVER, 'unfinished')),
    ('/sources/nothing-from-elsewhere', lambda: check_lines(ELSEWHERE, 'a path outside')),
    ('/sources/line-ends', check_line_ends),
    ('/sources/header-guards', check_header_guards),
])
