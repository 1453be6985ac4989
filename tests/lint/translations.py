# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every file with strings is listed, and every language has all of them."""

import re
import tempfile
from pathlib import Path

import project
import tap
import tools

MARKED = re.compile(r'\b(?:N?_|N?C_|ngettext) ?\(\s*"|\bg_d(?:c|n|p)gettext2? ?\(')
KEYWORDS = ('_', 'N_', 'C_:1c,2', 'NC_:1c,2', 'ngettext:1,2', 'g_dcgettext:2',
            'g_dngettext:2,3', 'g_dpgettext2:2c,3')
PO = project.ROOT / 'po'

# A straight apostrophe; not the signs of feet and inches, which follow a figure.
STRAIGHT = re.compile(r"[^\W\d]'[\w ]")

# Signs of a translation that a line could begin with, where a space holds them that does not break.
LOOSE = {'fr': re.compile('( [:;?!»]|« )')}


def read_list(name):
    lines = (PO / name).read_text(encoding='utf-8').splitlines()
    return [line for line in lines if line and not line.startswith('#')]


def has_strings(path):
    text = path.read_text(encoding='utf-8')
    if path.suffix in ('.c', '.h'):
        return MARKED.search(text) is not None
    if path.suffix == '.ui':
        return 'translatable="yes"' in text
    return True


def check_files_listed():
    listed = read_list('POTFILES')
    wanted = [project.name_of(path)
              for path in project.list_files('*.[ch]', '*.ui', folders=['src', 'ui']) +
              project.list_files('*.desktop.in', '*.metainfo.xml.in', '*.gschema.xml',
                                 folders=['data'])
              if has_strings(path)]
    project.fail_if([f'po/POTFILES lacks {name}' for name in set(wanted) - set(listed)] +
                    [f'po/POTFILES names {name}, which has no strings'
                     for name in set(listed) - set(wanted)])
    assert listed == sorted(listed), 'po/POTFILES is not sorted'


def check_languages_listed():
    files = sorted(path.stem for path in PO.glob('*.po'))
    assert read_list('LINGUAS') == files, f'po/LINGUAS is not the sorted list of {files}'


def check_language(language, template):
    """Well formed, nothing fuzzy, nothing missing, and nothing that the sources do not say."""
    catalogue = PO / f'{language}.po'
    tools.run(['msgfmt', '--check', '--output-file', '/dev/null', catalogue])
    fuzzy = tools.run(['msgattrib', '--only-fuzzy', catalogue])
    assert not fuzzy, f'fuzzy:\n{fuzzy}'
    tools.run(['msgcmp', catalogue, template])
    obsolete = tools.run(['msgattrib', '--only-obsolete', catalogue])
    assert not obsolete, f'no longer in the sources:\n{obsolete}'


def check_signs(language):
    """Typographic signs in the sources' strings and in their translations."""
    text = tools.run(['msgcat', '--no-wrap', PO / f'{language}.po'])
    said = re.sub('^#.*\n', '', text, flags=re.MULTILINE)
    untidy = [line for line in said.splitlines() if STRAIGHT.search(line)]
    if language in LOOSE:
        translated = [entry.partition('\nmsgstr')[2] for entry in said.split('\n\n')[1:]]
        untidy += [entry for entry in translated if LOOSE[language].search(entry)]
    project.fail_if(untidy)


with tempfile.TemporaryDirectory() as folder:
    template = Path(folder) / 'broadstave.pot'
    tools.run(['xgettext', '--files-from', PO / 'POTFILES', '--directory', project.ROOT,
               '--output', template, '--from-code', 'UTF-8', '--force-po',
               *[f'--keyword={keyword}' for keyword in KEYWORDS]])
    tap.run([
        ('/translations/files-listed', check_files_listed),
        ('/translations/languages-listed', check_languages_listed),
    ] + [(f'/translations/{language}', lambda language=language: check_language(language, template))
         for language in read_list('LINGUAS')] +
        [(f'/translations/{language}/signs', lambda language=language: check_signs(language))
         for language in read_list('LINGUAS')])
