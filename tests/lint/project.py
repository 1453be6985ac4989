# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The files of the source tree, for the checks of this folder."""

import os
from pathlib import Path

ROOT = Path(os.environ['BROADSTAVE_SOURCE'])
BUILD = Path(os.environ['BROADSTAVE_BUILD'])

# Folders at the top that hold the project; build folders stand beside them.
FOLDERS = ('src', 'data', 'ui', 'tests', 'po', 'docs')


def list_files(*patterns, folders=FOLDERS):
    """Files of the project's folders that match one of the patterns, as sorted paths."""
    found = set()
    for folder in folders:
        for pattern in patterns:
            found.update((ROOT / folder).rglob(pattern))
    return sorted(path for path in found if path.is_file() and '__pycache__' not in path.parts)


def name_of(path):
    return path.relative_to(ROOT).as_posix()


def fail_if(complaints):
    """Fails a case with all complaints, one a line."""
    assert not complaints, '\n'.join(complaints)
