# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Programs that judge files."""

import re
import shutil
import subprocess

import project
import tap


def run(command):
    """Fails the case with what the program prints, unless it ends well."""
    done = subprocess.run(command, cwd=project.ROOT, stdin=subprocess.DEVNULL,
                          stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=False)
    assert done.returncode == 0, f'{done.stdout}\n{command[0]}: exit status {done.returncode}'
    return done.stdout


def find(name, major):
    """The path of a clang tool of one major version, or None."""
    for candidate in (f'{name}-{major}', name):
        path = shutil.which(candidate)
        if path and re.search(rf'version {major}\.', run([path, '--version'])):
            return path
    return None


def refuse(name, major):
    raise tap.Skip(f'needs {name} {major}')
