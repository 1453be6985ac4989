# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every C file is laid out as .clang-format says. Versions of the formatter differ in small things,
so one of them decides."""

import project
import tap
import tools

formatter = tools.find('clang-format', 14)


def check(path):
    wanted = tools.run([formatter or tools.refuse('clang-format', 14), path])
    actual = path.read_text(encoding='utf-8')
    assert actual == wanted, f'to lay it out: clang-format-14 -i {project.name_of(path)}'


tap.run((f'/format/{project.name_of(path)}', lambda path=path: check(path))
        for path in project.list_files('*.[ch]'))
