# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""clang-tidy finds nothing in any C file, with the checks of .clang-tidy. A case a file; as many at a
time as there are processors."""

import concurrent.futures
import json
import os

import project
import tap
import tools

checker = tools.find('clang-tidy', 14)


def list_compiled():
    """The project's own files that the build compiles: generated ones stand in the build folder."""
    commands = json.loads((project.BUILD / 'compile_commands.json').read_text(encoding='utf-8'))
    compiled = {(project.BUILD / command['file']).resolve() for command in commands}
    return [path for path in project.list_files('*.c') if path.resolve() in compiled]


def check(path):
    # Warnings of the compiler are the build's to make errors of.
    tools.run([checker or tools.refuse('clang-tidy', 14), '-p', project.BUILD, '--quiet',
               '--extra-arg=-w', path])


# All start now; each case waits for its own.
pool = concurrent.futures.ThreadPoolExecutor(max_workers=os.cpu_count())
tap.run([(f'/tidy/{project.name_of(path)}', pool.submit(check, path).result)
         for path in list_compiled()])
