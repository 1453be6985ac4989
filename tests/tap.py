# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Runs named cases and prints TAP, as the test programs in C do.

A case is a function without arguments. It fails by raising (an assert will do) and is skipped by
raising Skip with the reason.
"""

import sys
import traceback


class Skip(Exception):
    """This case cannot run here; the message says why."""


def run(cases):
    """Runs (name, function) pairs and ends the program: 0 when none failed, else 1."""
    cases = list(cases)
    failed = 0
    print(f'1..{len(cases)}')
    for number, (name, function) in enumerate(cases, 1):
        try:
            function()
            print(f'ok {number} {name}', flush=True)
        except Skip as skip:
            print(f'ok {number} {name} # SKIP {skip}', flush=True)
        except AssertionError as error:
            failed += 1
            print_failure(number, name, str(error) or traceback.format_exc())
        except Exception:
            failed += 1
            print_failure(number, name, traceback.format_exc())
    sys.exit(1 if failed else 0)


def print_failure(number, name, message):
    for line in message.rstrip().splitlines():
        print(f'# {line}')
    print(f'not ok {number} {name}', flush=True)
