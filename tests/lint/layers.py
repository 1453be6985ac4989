# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""A layer includes itself and those below it, and only the libraries that it may know."""

import re

import project
import tap

INCLUDE = re.compile(r'^#include ([<"])([^>"]+)[>"]')

C_LIBRARY = ('assert.h', 'float.h', 'inttypes.h', 'limits.h', 'locale.h', 'math.h', 'stdarg.h',
             'stdbool.h', 'stddef.h', 'stdint.h', 'stdio.h', 'stdlib.h', 'string.h')

# What each layer may include: own folders, then beginnings of library headers.
LAYERS = {
    'core': (('core/',), ('glib.h', 'glib/', 'glpk.h')),
    'words': (('core/', 'words/'), ('glib.h', 'glib/')),
    'plan': (('core/', 'words/', 'plan/'),
             ('glib.h', 'glib/', 'glib-object.h', 'gio/', 'json-glib/', 'errno.h', 'fcntl.h',
              'unistd.h', 'sys/')),
    'draw': (('core/', 'words/', 'draw/'), ('glib.h', 'glib/', 'cairo', 'pango/')),
    'app': (('core/', 'words/', 'plan/', 'draw/', 'app/'),
            ('glib.h', 'glib/', 'glib-object.h', 'gio/', 'cairo', 'pango/', 'gtk/', 'gdk/', 'graphene.h',
             'sys/resource.h')),
}


def check_layer(layer):
    own, libraries = LAYERS[layer]
    complaints = []
    for path in project.list_files('*.[ch]', folders=[f'src/{layer}']):
        for number, line in enumerate(path.read_text(encoding='utf-8').splitlines(), 1):
            include = INCLUDE.match(line)
            if not include:
                continue
            if include[1] == '"':
                allowed = include[2] == 'config.h' or include[2].startswith(own)
            else:
                allowed = include[2] in C_LIBRARY or include[2].startswith(libraries)
            if not allowed:
                complaints.append(f'{project.name_of(path)}:{number}: {layer} may not include '
                                  f'{include[2]}')
    project.fail_if(complaints)


def check_all_layers_known():
    folders = {path.name for path in (project.ROOT / 'src').iterdir() if path.is_dir()}
    assert folders == set(LAYERS), f'layers in src: {folders}, known here: {set(LAYERS)}'


cases = [('/layers/known', check_all_layers_known)]
cases += [(f'/layers/{layer}', lambda layer=layer: check_layer(layer)) for layer in LAYERS]
tap.run(cases)
