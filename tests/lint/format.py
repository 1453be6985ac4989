# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every C file is laid out as .clang-format says. Versions of the formatter differ in small things,
so one of them decides."""

import functools
import subprocess

import project
import tap
import tools

formatter = tools.find('clang-format', 14)
paths = project.list_files('*.[ch]')


@functools.cache
def find_untidy():
    """All files in one go, for starting the formatter takes longer than reading a file."""
    done = subprocess.run([formatter or tools.refuse('clang-format', 14), '--dry-run', *paths],
                          stdin=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True, check=True)
    return {line.split(':')[0] for line in done.stderr.splitlines()
            if line.endswith('[-Wclang-format-violations]')}


def check(path):
    assert str(path) not in find_untidy(), f'to lay it out: clang-format-14 -i {project.name_of(path)}'


tap.run((f'/format/{project.name_of(path)}', lambda path=path: check(path)) for path in paths)
