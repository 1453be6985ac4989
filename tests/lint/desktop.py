# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The desktop's own tools accept what we install, and the version is the same everywhere."""

import re
from xml.etree import ElementTree

import project
import tap
import tools

ID = 'io.github.broadstave.Broadstave'
BUILT = project.BUILD / 'data'
DATA = project.ROOT / 'data'


def check_version():
    build = (project.ROOT / 'meson.build').read_text(encoding='utf-8')
    version = re.search(r"^ *version: '([^']+)'", build, re.MULTILINE)[1]
    news = (project.ROOT / 'docs' / 'NEWS.md').read_text(encoding='utf-8')
    newest = re.search(r'^## (\S+)', news, re.MULTILINE)[1]
    release = ElementTree.parse(DATA / f'{ID}.metainfo.xml.in').find('releases/release')
    assert newest == version, f'docs/NEWS.md begins with {newest}, meson.build says {version}'
    assert release.get('version') == version, \
        f'the metainfo begins with {release.get("version")}, meson.build says {version}'


def check_file_type():
    """The type that the desktop entry opens is the one that the MIME file describes."""
    space = '{http://www.freedesktop.org/standards/shared-mime-info}'
    types = ElementTree.parse(DATA / f'{ID}.mime.xml').findall(f'{space}mime-type')
    assert [kind.find(f'{space}glob').get('pattern') for kind in types] == ['*.broadstave']
    entry = (BUILT / f'{ID}.desktop').read_text(encoding='utf-8')
    assert f'MimeType={types[0].get("type")};\n' in entry, 'the desktop entry opens another type'


def check_icons():
    icons = project.list_files('*.svg', folders=['data/icons'])
    assert icons, 'no icon in data/icons'
    for icon in icons:
        root = ElementTree.parse(icon).getroot()
        box = root.get('viewBox').split()
        assert box[:2] == ['0', '0'] and box[2] == box[3], f'{project.name_of(icon)} is not square'


cases = [
    ('/desktop/entry', lambda: tools.run(['desktop-file-validate', BUILT / f'{ID}.desktop'])),
    ('/desktop/metainfo',
     lambda: tools.run(['appstreamcli', 'validate', '--no-net', BUILT / f'{ID}.metainfo.xml'])),
    ('/desktop/file-type', check_file_type),
    ('/desktop/icons', check_icons),
    ('/desktop/version', check_version),
]
if project.list_files('*.gschema.xml', folders=['data']):
    cases.append(('/desktop/settings', lambda: tools.run(
        ['glib-compile-schemas', '--strict', '--dry-run', DATA])))
tap.run(cases)
