# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""data/plan.schema.json, docs/plan-format.md and the reader say the same, and the schema, read by an
independent validator (python3-jsonschema), takes what the program writes and refuses what it refuses.

Arguments: the programs plan-rewrite and plan-fields."""

import copy
import json
import os
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import jsonschema

import tap

ROOT = Path(os.environ['BROADSTAVE_SOURCE'])
REWRITE, FIELDS = sys.argv[1:3]

schema = json.loads((ROOT / 'data/plan.schema.json').read_text(encoding='utf-8'))
validator = jsonschema.Draft202012Validator(schema)
manual = (ROOT / 'docs/plan-format.md').read_text(encoding='utf-8')
examples = sorted((ROOT / 'data/examples').glob('*.broadstave'))


def run(*command):
    return subprocess.run(command, capture_output=True, encoding='utf-8', check=False)


def rewrite(path):
    """What the program would save after it opened the file; None when it refuses it."""
    result = run(REWRITE, path)
    assert result.returncode in (0, 1), f'{REWRITE}: exit status {result.returncode}'
    return json.loads(result.stdout) if result.returncode == 0 else None


def rewrite_plan(plan):
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / 'plan.broadstave'
        path.write_text(json.dumps(plan), encoding='utf-8')
        return rewrite(path)


def load(path):
    return json.loads(path.read_text(encoding='utf-8'))


def check_schema():
    jsonschema.Draft202012Validator.check_schema(schema)


def check_example(path):
    plan = load(path)
    validator.validate(plan)
    written = rewrite(path)
    validator.validate(written)
    assert written == plan


def resolve(part):
    if '$ref' in part:
        return schema['$defs'][part['$ref'].rpartition('/')[2]]
    return part


def compare_field(where, field, part):
    kind = field['kind']
    if kind == 'choice':
        assert part['enum'] == field['choices'], f'{where}: other choices'
    elif kind == 'object':
        compare_fields(where, field['fields'], resolve(part), set())
    elif kind == 'array':
        assert part['type'] == 'array' and part['maxItems'] == field['max_length'], where
        compare_fields(where, field['fields'], resolve(part['items']), set())
    else:
        assert part['type'] == kind, f'{where}: {part["type"]}, not {kind}'
        assert part.get('minimum') == field.get('least'), f'{where}: another minimum'
        assert part.get('maximum') == field.get('most'), f'{where}: another maximum'
        if kind == 'string':
            assert ('minLength' in part) == field['required'], f'{where}: empty or not'


def compare_fields(where, fields, part, besides):
    assert list(fields) == [key for key in part['properties'] if key not in besides], \
        f'{where}: other keys, or in another order'
    required = [key for key, field in fields.items() if field['required']]
    assert required == [key for key in part.get('required', []) if key not in besides], \
        f'{where}: other keys are needed'
    for key, field in fields.items():
        compare_field(f'{where}.{key}', field, part['properties'][key])


def check_fields():
    fields = json.loads(run(FIELDS).stdout)
    compare_fields('plan', fields, schema, {'format', 'version'})


def list_fields(fields):
    for key, field in fields.items():
        yield key, field
        yield from list_fields(field.get('fields', {}))


def check_manual():
    """Every key has its row in the manual, with its range, and the manual has no other keys."""
    rows = {}
    for line in manual.splitlines():
        if found := re.match(r'\| `(\w+)`(?: \(needed\))? \|(.*)', line):
            rows.setdefault(found[1], []).append(found[2])
    fields = list(list_fields(json.loads(run(FIELDS).stdout)))
    for key, field in fields:
        assert key in rows, f'{key} is not in the manual'
        wanted = f'{field["least"]:.10g} to {field["most"]:.10g}' if 'least' in field else ''
        assert any(wanted in row for row in rows[key]), f'{key}: the manual does not say {wanted}'
    assert set(rows) <= {key for key, _ in fields}, 'the manual has other keys'


def change(plan, path, value):
    """A copy of a plan with one value changed, or taken out when the value is None."""
    plan = copy.deepcopy(plan)
    *above, last = path
    at = plan
    for key in above:
        at = at[key]
    if value is None:
        del at[last]
    else:
        at[last] = value
    return plan


BROKEN = {
    'no-format': (('format',), None),
    'other-format': (('format',), 'shopping-list'),
    'no-version': (('version',), None),
    'later-version': (('version',), 2),
    'no-slab': (('slab',), None),
    'no-length': (('slab', 'length_mm'), None),
    'length-as-text': (('slab', 'length_mm'), '1500'),
    'negative-width': (('slab', 'width_mm'), -600),
    'huge-thickness': (('slab', 'thickness_mm'), 6000),
    'other-layup': (('slab', 'layup'), 'on-end'),
    'flag-as-number': (('slab', 'shows_ends'), 1),
    'other-bond': (('woods', 0, 'bond_class'), 'hopeless'),
    'price-below-nothing': (('woods', 0, 'price_minor_per_m3'), -1),
    'humidity': (('slab', 'dry_season', 'humidity_pct'), 135),
    'half-a-person': (('shop', 'people'), 1.5),
    'clamp-without-reach': (('shop', 'clamps', 0, 'reach_mm'), None),
    'adhesive-without-times': (('adhesive', 'open_s'), None),
    'wood-without-name': (('woods', 0, 'name'), None),
    'empty-id': (('boards', 0, 'id'), ''),
    'lamination-as-text': (('laminations', 0), 'a1'),
    'laminations-as-object': (('laminations',), {}),
    'run-out': (('laminations', 0, 'run_out_top'), 2),
    'run-out-of-a-board': (('boards', 0, 'run_out_back'), -2),
    'lightness': (('laminations', 0, 'lightness'), 101),
    'other-face': (('laminations', 3, 'defects', 0, 'face'), 'front'),
    'other-orientation': (('order', 0, 'orientation'), 'upside-down'),
    'start': (('order', 0, 'start_mm'), -1),
    'clamp-of-no-force': (('placed_clamps',), [{'kind': 'long-bar', 'x_mm': 300}]),
    'clamp-of-no-kind': (('placed_clamps',), [{'x_mm': 300, 'force_N': 3000}]),
    'pack-of-one': (('packs',), [{'first': 0, 'count': 1}]),
    'other-wish': (('wishes', 'looks'), 'very much'),
    'rack-as-number': (('wishes', 'uses_rack'), 1),
    'other-pin': (('pins',), [{'kind': 'end', 'lamination': 'a1'}]),
    'pin-of-nobody': (('pins',), [{'kind': 'top-up'}]),
    'pin-before-the-front': (('pins',), [{'kind': 'place', 'lamination': 'a1', 'place': -1}]),
    'currency': (('currency',), 'dollar'),
}


def check_broken(path, value):
    """What breaks the schema the program refuses too."""
    plan = change(load(ROOT / 'data/examples/bakery-counter.broadstave'), path, value)
    assert not validator.is_valid(plan), 'the schema takes it'
    assert rewrite_plan(plan) is None, 'the program takes it'


def check_lumber():
    """What comes before the glue-up is read and written alike."""
    plan = load(ROOT / 'data/examples/bakery-counter.broadstave')
    plan = {key: plan[key] for key in plan if key not in {'laminations', 'order', 'packs'}} | {
        'boards': [{'id': 'plank', 'length_mm': 2440, 'width_mm': 190, 'thickness_mm': 52,
                    'price_minor': 4200, 'bow_mm': -3, 'pith_z_mm': -40,
                    'run_out_top': 1, 'run_out_underside': -1, 'run_out_front': 0, 'run_out_back': -1,
                    'defects': [{'kind': 'knot', 'face': 'top', 'x_from_mm': 900, 'x_to_mm': 940,
                                 'across_from_mm': 20, 'across_to_mm': 55, 'severity': 1}],
                    'photo_top': 'photos/plank.jpg'}],
        'offers': [{'id': 'rough-52', 'yard': 'Yard', 'wood': 'american-beech', 'thickness_mm': 52,
                    'width_from_mm': 150, 'width_to_mm': 230, 'may_pick': True,
                    'price_unit': 'cubic-metre', 'price_minor': 195000,
                    'lengths': [{'length_mm': 2400, 'supply': 12},
                                {'length_mm': 3000, 'supply': -1}]}],
        'parts': [{'id': 'leg', 'name': 'Leg', 'count': 4, 'length_mm': 820, 'width_mm': 90,
                   'thickness_mm': 90, 'clear_faces': 1, 'clear_edges': 0, 'is_on_show': True}],
        'cuts': [{'board': 'plank', 'piece': 'leg', 'x_mm': 25, 'y_mm': 0, 'length_mm': 830,
                  'width_mm': 96, 'is_pinned': True, 'is_cut': False}],
    }
    validator.validate(plan)
    assert rewrite_plan(plan) == plan
    for path, value in (
            (('cuts', 0, 'board'), 'nowhere'), (('cuts', 0, 'piece'), 'nothing'),
            (('offers', 0, 'width_to_mm'), 100), (('offers', 0, 'wood'), 'ebony'),
            (('boards', 0, 'defects', 0, 'across_to_mm'), 191)):
        assert rewrite_plan(change(plan, path, value)) is None, path
    assert rewrite_plan(change(plan, ('cuts',), plan['cuts'] * 5)) is None, 'a fifth leg of four'


cases = [
    ('/schema/schema', check_schema),
    ('/schema/same-as-reader', check_fields),
    ('/schema/same-as-manual', check_manual),
    ('/schema/lumber', check_lumber),
]
cases += [(f'/schema/example/{path.stem}', lambda path=path: check_example(path))
          for path in examples]
cases += [(f'/schema/broken/{name}', lambda row=row: check_broken(*row))
          for name, row in BROKEN.items()]
tap.run(cases)
