# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The summary counts cases as it says: each once, the worst of all builds, and nothing lost."""

import contextlib
import io
import json
import os
import tempfile
from pathlib import Path

import summary
import tap


def write_log(folder, *tests):
    logs = Path(folder) / 'meson-logs'
    logs.mkdir(parents=True)
    lines = [json.dumps({'name': f'broadstave:core / core/{name}', 'stdout': stdout, 'stderr': '',
                         'result': result, 'returncode': code})
             for name, result, code, stdout in tests]
    (logs / 'testlog.json').write_text('\n'.join(lines), encoding='utf-8')


def sum_up(*builds, ci=False):
    """The last line and the exit status for builds that are each a list of programs."""
    with tempfile.TemporaryDirectory() as root:
        folders = []
        for number, tests in enumerate(builds):
            folders.append(f'{root}/{number}')
            write_log(folders[-1], *tests)
        printed = io.StringIO()
        known = os.environ.pop('CI', None)
        if ci:
            os.environ['CI'] = 'true'
        try:
            with contextlib.redirect_stdout(printed):
                status = summary.main(folders)
        finally:
            os.environ.pop('CI', None)
            if known is not None:
                os.environ['CI'] = known
        return printed.getvalue().splitlines()[-1], status


def expect(wanted, *builds, ci=False):
    found = sum_up(*builds, ci=ci)
    assert found == wanted, f'wanted {wanted}, found {found}'


def passing(*names):
    return '\n'.join([f'1..{len(names)}'] +
                     [f'ok {number} {name}' for number, name in enumerate(names, 1)])


GOOD = ('a', 'OK', 0, passing('/a/one', '/a/two'))
BAD = ('a', 'FAIL', 1, '1..2\nok 1 /a/one\nnot ok 2 /a/two')
UNSET = '1..1\nok 1 /b/open # SKIP BROADSTAVE_BENCHMARKS is not set'
OLD = '1..0 # SKIP needs clang-format 14'

ROWS = {
    'cases-not-programs': (('2 passed, 0 failed, 0 skipped', 0), [GOOD]),
    'once-over-builds': (('2 passed, 0 failed, 0 skipped', 0), [GOOD], [GOOD]),
    'worst-of-builds': (('1 passed, 1 failed, 0 skipped', 1), [GOOD], [BAD]),
    'same-name-twice': (('2 passed, 0 failed, 0 skipped', 0),
                        [('a', 'OK', 0, passing('/a/one', '/a/one'))]),
    'crash': (('1 passed, 1 failed, 0 skipped', 1),
              [('a', 'ERROR', -11, '1..2\nok 1 /a/one')]),
    'crash-after-all-cases': (('2 passed, 1 failed, 0 skipped', 1),
                              [('a', 'ERROR', -11, passing('/a/one', '/a/two'))]),
    'leak-after-all-cases': (('2 passed, 1 failed, 0 skipped', 1),
                             [('a', 'ERROR', 23, passing('/a/one', '/a/two'))]),
    'no-output-at-all': (('0 passed, 1 failed, 0 skipped', 1), [('a', 'ERROR', 127, '')]),
    'time-limit': (('1 passed, 1 failed, 0 skipped', 1),
                   [('a', 'TIMEOUT', -15, '1..2\nok 1 /a/one')]),
    'failure-with-status': (('1 passed, 1 failed, 0 skipped', 1),
                            [('a', 'ERROR', 1, '1..2\nok 1 /a/one\nnot ok 2 /a/two')]),
    'excused-skip': (('2 passed, 0 failed, 1 skipped', 0), [GOOD, ('b', 'SKIP', 0, UNSET)]),
    'skip-made-good': (('3 passed, 0 failed, 0 skipped', 0), [GOOD, ('b', 'SKIP', 0, UNSET)],
                       [('b', 'OK', 0, passing('/b/open'))]),
    'strange-skip': (('2 passed, 0 failed, 1 skipped', 1),
                     [GOOD, ('b', 'SKIP', 0, '1..1\nok 1 /b/open # SKIP no display')]),
    'other-formatter': (('2 passed, 0 failed, 1 skipped', 0), [GOOD, ('b', 'SKIP', 0, OLD)]),
    'nothing-ran': (('0 passed, 0 failed, 0 skipped', 1), []),
}

cases = [(f'/counting/{name}', lambda wanted=wanted, builds=builds: expect(wanted, *builds))
         for name, (wanted, *builds) in ROWS.items()]
cases.append(('/counting/other-formatter-in-ci', lambda: expect(
    ('2 passed, 0 failed, 1 skipped', 1), [GOOD, ('b', 'SKIP', 0, OLD)], ci=True)))
tap.run(cases)
