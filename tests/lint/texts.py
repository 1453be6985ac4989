# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""What the texts for people say about the project is there: files, links, commands, options."""

import re
import shlex

import project
import tap
import tools

LINK = re.compile(r'\]\(([^)\s]+)\)')
PATH = re.compile(r'`((?:src|data|ui|tests|po|docs|\.ci)(?:/[\w.*-]+)+/?)`')
BLOCK = re.compile(r'^```(?:sh)?\n(.*?)^```', re.MULTILINE | re.DOTALL)
OPTION = re.compile(r'--[a-z][a-z-]*')

PROGRAM = project.BUILD / 'src' / 'app' / 'broadstave'


def list_texts():
    return sorted(project.ROOT.glob('*.md')) + project.list_files('*.md', folders=['docs'])


def exists(path):
    return any(project.ROOT.glob(path.rstrip('/')))


def check_paths(text):
    content = text.read_text(encoding='utf-8')
    complaints = [f'`{path}` is not there' for path in PATH.findall(content) if not exists(path)]
    for link in LINK.findall(content):
        target = link.partition('#')[0]
        if target and '://' not in target and not (text.parent / target).exists():
            complaints.append(f'the link to {link} leads nowhere')
    project.fail_if(complaints)


def list_commands(text):
    for block in BLOCK.findall(text.read_text(encoding='utf-8')):
        for line in block.splitlines():
            words = shlex.split(line, comments=True)
            if words:
                yield words


def check_commands(text):
    """A script that a command starts is there; an option of the program is one that it knows."""
    known = set()
    complaints = []
    for words in list_commands(text):
        if words[0] in ('sh', 'bash') and not (project.ROOT / words[1]).exists():
            complaints.append(f'{shlex.join(words)}: no {words[1]}')
        if 'broadstave' in words:
            known = known or set(OPTION.findall(tools.run([PROGRAM, '--help'])))
            options = [word for word in words if OPTION.fullmatch(word)]
            complaints += [f'{shlex.join(words)}: no {word}' for word in options
                           if word not in known]
    project.fail_if(complaints)


def check_first_commands():
    """The reader's first two commands are the ones that set everything up."""
    readme = list(list_commands(project.ROOT / 'README.md'))
    assert readme[:2] == [['sh', 'data/setup.sh', 'run'], ['sh', 'data/setup.sh', 'test']]


cases = [('/texts/first-commands', check_first_commands)]
for text in list_texts():
    cases.append((f'/texts/paths/{project.name_of(text)}', lambda text=text: check_paths(text)))
    cases.append((f'/texts/commands/{project.name_of(text)}',
                  lambda text=text: check_commands(text)))
tap.run(cases)
