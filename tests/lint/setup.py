# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""data/setup.sh decides rightly what to install and what to open. The programs that it starts are
replaced by ones that write down how they were called."""

import os
import shutil
import subprocess
import tempfile
from pathlib import Path

import project
import tap

# What each stand-in does after it has written its name and arguments to the log.
STAND_INS = {
    'dpkg-query': 'for package; do :; done\n'
                  'case " $MISSING " in *" $package "*) exit 1 ;; *) printf installed ;; esac',
    'apt-get': '',
    'id': 'echo 0',
    'ninja': '',
    'meson': 'case "$*" in\n'
             '  setup*) mkdir -p build && : >build/build.ninja ;;\n'
             '  *--export*) exit "$EXPORT_STATUS" ;;\n'
             '  *--report*) echo "{}"; exit "$REPORT_STATUS" ;;\n'
             '  devenv*) exit "$WINDOW_STATUS" ;;\n'
             'esac',
}


def write_stand_ins(folder):
    for name, body in STAND_INS.items():
        script = folder / name
        script.write_text(f'#!/bin/sh\necho "{name} $*" >>"$CALLS"\n{body}\n', encoding='utf-8')
        script.chmod(0o755)


def run_setup(*arguments, **settings):
    """The exit status, what was said, and the calls that were made, in a copy that has nothing but the
    script."""
    with tempfile.TemporaryDirectory() as name:
        root = Path(name)
        (root / 'tools').mkdir()
        (root / 'data').mkdir()
        write_stand_ins(root / 'tools')
        shutil.copy(project.ROOT / 'data' / 'setup.sh', root / 'data')
        calls = root / 'calls'
        calls.touch()
        environment = {'PATH': f'{root}/tools:{os.environ["PATH"]}', 'CALLS': str(calls),
                       'MISSING': '', 'WINDOW_STATUS': '0', 'EXPORT_STATUS': '0',
                       'REPORT_STATUS': '0', **settings}
        done = subprocess.run(['sh', 'data/setup.sh', *arguments], cwd=root, env=environment,
                              stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                              stderr=subprocess.STDOUT, text=True, check=False)
        made = calls.read_text(encoding='utf-8').splitlines()
        return done.returncode, done.stdout, [call for call in made
                                              if not call.startswith(('dpkg-query', 'id'))]


def uses(calls, text):
    return any(text in call for call in calls)


def check_all_installed():
    _, said, calls = run_setup('run')
    assert not uses(calls, 'apt-get'), f'asked for packages that are there: {calls}'
    assert 'All packages are installed.' in said


def check_some_missing():
    _, said, calls = run_setup('run', MISSING='meson gettext')
    install = [call for call in calls if 'install' in call]
    assert len(install) == 1 and install[0].endswith(' install meson gettext'), calls
    assert '--no-install-recommends' in install[0], install
    assert '  meson gettext\n' in said, f'does not say what it installs: {said}'


def expect_window(**settings):
    status, _, calls = run_setup('run', **settings)
    assert status == 0
    assert uses(calls, 'data/examples/'), f'opens no plan: {calls}'
    assert not uses(calls, '--export'), f'writes files although there is a window: {calls}'


def expect_files(**settings):
    status, said, calls = run_setup('run', **settings)
    assert status == 0, said
    assert uses(calls, '--export') and uses(calls, '--report'), calls
    assert 'display' in said, f'does not say why there is no window: {said}'
    assert '/build/demo/diagram.pdf\n' in said and '/build/demo/report.json\n' in said, said


def expect_failure(*arguments, **settings):
    status, said, _ = run_setup(*arguments, **settings)
    assert status == 2, f'status {status}: {said}'


tap.run([
    ('/setup/all-installed', check_all_installed),
    ('/setup/some-missing', check_some_missing),
    ('/setup/window', lambda: expect_window(DISPLAY=':1')),
    ('/setup/window/wayland', lambda: expect_window(WAYLAND_DISPLAY='wayland-0')),
    ('/setup/no-display', expect_files),
    ('/setup/no-display/plan-with-stops', lambda: expect_files(EXPORT_STATUS='1',
                                                               REPORT_STATUS='1')),
    ('/setup/display-refused', lambda: expect_files(DISPLAY=':1', WINDOW_STATUS='1')),
    ('/setup/crash', lambda: expect_failure('run', DISPLAY=':1', WINDOW_STATUS='139')),
    ('/setup/no-diagram', lambda: expect_failure('run', EXPORT_STATUS='2')),
    ('/setup/no-report', lambda: expect_failure('run', REPORT_STATUS='2')),
    ('/setup/nothing-said', expect_failure),
    ('/setup/nonsense-said', lambda: expect_failure('runn')),
])
