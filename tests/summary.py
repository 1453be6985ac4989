# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Sums up test runs: summary.py BUILD_FOLDER...

Reads the log that `meson test` leaves in each build folder and counts test cases, not programs. A
case that ran in several builds counts once: it passed when it passed wherever it ran, and failed
when it failed in any of them. A program that broke outside of its cases (crash, time limit, a plan
that does not match) adds a failed case of its own.

Prints every failure with the last lines before it and every skip with its reason; the last line is
`N passed, N failed, N skipped`. The exit status is 1 when a case failed, when nothing ran, or when
something was skipped that should have run here.
"""

import json
import os
import re
import sys
from pathlib import Path

CASE = re.compile(r'(not )?ok\b *(\d+)? *-? *([^#]*)(?:# *(\w+)\S* *(.*))?$')
PLAN = re.compile(r'1\.\.(\d+)(?: *# *skip\S* *(.*))?$', re.IGNORECASE)

# Reasons that excuse a skip: on any machine, and on a machine that is not CI.
EXCUSED = ('BROADSTAVE_BENCHMARKS is not set',)
EXCUSED_OUTSIDE_CI = ('needs clang-format 14', 'needs clang-tidy 14')

DETAIL_LINES = 15


def read_cases(test):
    """Yields (case, outcome, detail) of one program's log entry; the outcome is passed, failed or
    skipped, the detail the reason of a skip or the lines that came before a failure."""
    planned = None
    seen = 0
    failed = 0
    recent = []
    for line in (test.get('stdout') or '').splitlines():
        case = CASE.match(line)
        plan = PLAN.match(line)
        if case:
            seen += 1
            name = case[3].strip() or f'case {seen}'
            directive = (case[4] or '').lower()
            if case[1]:
                failed += 1
                yield name, 'failed', recent[-DETAIL_LINES:]
            elif directive == 'skip':
                yield name, 'skipped', [case[5].strip() or 'no reason given']
            else:
                yield name, 'passed', []
            recent = []
        elif plan:
            planned = int(plan[1])
            if planned == 0:
                yield 'all cases', 'skipped', [plan[2] or 'no reason given']
        elif not line.startswith(('# Start of', '# End of', '# random seed', 'TAP version')):
            recent.append(line.removeprefix('# '))

    if test['result'] == 'SKIP' and planned is None and seen == 0:
        yield 'the program', 'skipped', ['no reason given']
        return
    broke = test['result'] in ('TIMEOUT', 'INTERRUPT', 'ERROR')
    if seen == 0 and planned is None:
        # Not a TAP program: its exit status is its one case.
        broke = False
        if test['result'] == 'OK':
            yield 'exit status', 'passed', []
        else:
            failed += 1
            yield 'exit status', 'failed', tail_of(test)
    if (broke and not (failed and test['returncode'] == 1)) or (planned and seen != planned):
        how = f"{test['result'].lower()}, exit status {test['returncode']}, {seen} of {planned} cases"
        yield 'the program as a whole', 'failed', [how] + tail_of(test)


def tail_of(test):
    lines = (test.get('stdout') or '').splitlines() + (test.get('stderr') or '').splitlines()
    return lines[-2 * DETAIL_LINES:]


def read_build(folder):
    """Yields (program, case, outcome, detail) of the run in a build folder."""
    log = Path(folder) / 'meson-logs' / 'testlog.json'
    if not log.exists():
        yield 'meson test', folder, 'failed', ['it left no log: did the build fail?']
        return
    with log.open(encoding='utf-8') as lines:
        for line in lines:
            test = json.loads(line)
            program = test['name'].split(' / ')[-1]
            for case, outcome, detail in read_cases(test):
                yield program, case, outcome, detail


def merge(folders):
    """The worst outcome of each case over all builds: {(program, case): (outcome, detail, folder)}."""
    rank = {'skipped': 0, 'passed': 1, 'failed': 2}
    merged = {}
    for folder in folders:
        times = {}
        for program, case, outcome, detail in read_build(folder):
            # A name that a program uses twice is still two cases.
            times[program, case] = times.get((program, case), 0) + 1
            if times[program, case] > 1:
                case = f'{case} ({times[program, case]})'
            known = merged.get((program, case))
            if known is None or rank[outcome] > rank[known[0]]:
                merged[program, case] = (outcome, detail, folder)
    return merged


def is_excused(reason):
    excuses = EXCUSED if os.environ.get('CI') else EXCUSED + EXCUSED_OUTSIDE_CI
    return any(excuse in reason for excuse in excuses)


def print_programs(merged):
    programs = {}
    for (program, _), (outcome, _, _) in merged.items():
        counts = programs.setdefault(program, {'passed': 0, 'failed': 0, 'skipped': 0})
        counts[outcome] += 1
    width = max(map(len, programs), default=0)
    for program, counts in sorted(programs.items()):
        parts = [f'{number} {outcome}' for outcome, number in counts.items() if number]
        print(f'  {program:{width}}  {", ".join(parts)}')


def main(folders):
    merged = merge(folders)
    print(f'\nTest cases by program, each counted once over {", ".join(folders)}:')
    print_programs(merged)

    counts = {'passed': 0, 'failed': 0, 'skipped': 0}
    unexcused = 0
    for (program, case), (outcome, detail, folder) in sorted(merged.items()):
        counts[outcome] += 1
        if outcome == 'failed':
            print(f'\nFAILED {program}: {case} (in {folder})')
            for line in detail:
                print(f'    {line}')
        elif outcome == 'skipped':
            excused = is_excused(detail[0])
            unexcused += not excused
            print(f'\nSKIPPED {program}: {case}: {detail[0]}' +
                  ('' if excused else '\n    This should have run here, so the run fails.'))

    print(f'\n{counts["passed"]} passed, {counts["failed"]} failed, {counts["skipped"]} skipped',
          flush=True)
    return 1 if counts['failed'] or unexcused or not counts['passed'] else 0


if __name__ == '__main__':
    sys.exit(main(sys.argv[1:]))
