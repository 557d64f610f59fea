"""An attacker on a report with hidden small counts, apart from the program: SciPy's HiGHS over what the tables say.

    /usr/bin/python3 attack.py 11 full released            one release, with the full report to know the truth
    /usr/bin/python3 attack.py 11 full1 first full2 second two releases of the same program

Each hidden count from 1 to one less than the threshold, and each such difference between two releases, must be able to reach the threshold.
Run by hand (python3-scipy 1.10.1); exits 1 where a count cannot.
"""
import collections
import csv
import sys

import numpy as np
from scipy.optimize import linprog
from scipy.sparse import lil_matrix

RELATIONS = [
    ('runs', ('tests', 'unus')), ('tests', ('neg', 'pos')), ('unus', ('inc', 'inv')),
    ('pos', ('pk', 'po')), ('pk', ('pc', 'pr')), ('po', ('pu', 'pd', 'pv')),
    ('inc', ('ik', 'io')), ('ik', ('ic', 'ir')), ('io', ('iu', 'id', 'iv')),
    ('aud', ('ak', 'au')), ('ak', ('am', 'aa')), ('neg', ('aud', 'una')),
]
MEASURES = ('runs', 'tests', 'neg', 'pos', 'unus', 'inc', 'inv', 'pk', 'po', 'pc', 'pr', 'pu', 'pd', 'pv', 'ik', 'io', 'ic', 'ir', 'iu', 'id', 'iv', 'aud', 'ak', 'am', 'aa', 'au')
GROWING = ('runs', 'tests', 'neg', 'pos', 'unus', 'inc', 'inv')


def rows(folder, table):
    with open(f'{folder}/tables/{table}.csv', encoding='utf-8', newline='') as file:
        return list(csv.DictReader(file))


def counts(folder):
    """Counts by part of the program and measure; None where hidden. Parts that are too fine for a release are left out of a full report."""
    known = {}

    def put(unit, row, columns):
        for column, measure in columns.items():
            if row[column] == '': continue
            value = None if row[column] == 'hidden' else int(row[column])
            if known.get((unit, measure), value) != value: raise SystemExit(f'two tables differ in {unit} {measure}')
            known[unit, measure] = value

    def parts(table):
        for row in rows(folder, table):
            start = row.get('period_start', '')
            if row['by'] == 'program' or (not start and row['by'] in ('site', 'lot', 'specimen', 'collection')):
                yield (row['by'], row['level'], start), row

    for unit, row in parts('positivity'): put(unit, row, {'tests': 'tests', 'positives': 'pos'})
    for unit, row in parts('invalid-runs'):
        put(unit, row, {'runs': 'runs', 'inconclusive': 'inc', 'invalid': 'inv'})
        if row['estimate'] not in ('hidden', '') and known[unit, 'runs']: known[unit, 'unus'] = round(float(row['estimate']) * known[unit, 'runs'])
    judged = {'runs': 'runs', 'inconclusive': 'inc', 'invalid': 'inv', 'tests': 'tests', 'positives': 'pos', 'confirmed': 'pc', 'refuted': 'pr'}
    for table, by in (('lots', 'lot'), ('sites', 'site')):
        for row in rows(folder, table): put((by, row[by], ''), row, judged)
    for unit, row in parts('follow-up'):
        kind = row['outcome'][0]
        put(unit, row, {'due': 'pos' if kind == 'p' else 'inc', 'confirmed': kind + 'c', 'refuted': kind + 'r', 'unresolved': kind + 'u', 'pending': kind + 'd', 'unverified': kind + 'v'})
    for unit, row in parts('refuted'): put(unit, row, {'tests': 'tests', 'refuted': 'pr', 'without_conclusion': 'po'})
    for unit, row in parts('audits'): put(unit, row, {'audited': 'aud', 'missed': 'am', 'agreed': 'aa', 'unresolved': 'au'})
    return known


def system(released, tag, names, equations, bounds, truth):
    units = sorted({unit for unit, _ in released})
    index = lambda unit, measure: names.setdefault((tag, unit, measure), len(names))
    for unit in units:
        for total, parts in RELATIONS:
            if (unit[2] or unit[0] in ('specimen', 'collection')) and total not in ('runs', 'tests', 'unus'): continue
            needs = {'aud': 'aud', 'ak': 'aud', 'neg': 'aud', 'po': 'pu', 'inc': 'iu', 'ik': 'iu', 'io': 'iu', 'pos': 'pc', 'pk': 'pc'}.get(total)
            if needs and (unit, needs) not in released: continue
            equations.append([(index(unit, total), 1)] + [(index(unit, part), -1) for part in parts])
    program = ('program', '', '')
    breakdowns = collections.defaultdict(list)
    for unit in units:
        if unit != program: breakdowns[unit[0], bool(unit[2])].append(unit)
    for members in breakdowns.values():
        for measure in MEASURES:
            found = [unit for unit in members if (tag, unit, measure) in names]
            if (tag, program, measure) not in names or not found: continue
            whole, parts = truth.get((program, measure)), [truth.get((unit, measure)) for unit in found]
            if whole is not None and None not in parts and sum(parts) != whole: continue
            equations.append([(index(program, measure), 1)] + [(index(unit, measure), -1) for unit in found])
    for (unit, measure), value in released.items():
        if value is not None: bounds[index(unit, measure)] = (value, value)


def attack(threshold, pairs, most):
    names, equations, bounds, targets = {}, [], {}, []
    truths, releases = [], []
    for tag, (full, released) in enumerate(pairs):
        truth, seen = counts(full), counts(released)
        truths.append(truth); releases.append(seen)
        for key, value in seen.items():
            if value is not None and value != truth.get(key): raise SystemExit(f'{key} is {value}, not {truth.get(key)}')
            if value is not None and 0 < value < threshold: print('shown', key, value)
        system(seen, tag, names, equations, bounds, truth)
        targets += [((tag, *key), 0) for key, value in seen.items() if value is None and 0 < (truth.get(key) or 0) < threshold and (tag, *key) in names]
    if len(pairs) == 2:
        for tag, unit, measure in [key for key in names if key[0] == 0]:
            if (1, unit, measure) not in names: continue
            added = names.setdefault(('added', unit, measure), len(names))
            equations.append([(names[1, unit, measure], 1), (names[0, unit, measure], -1), (added, -1)])
            bounds[added] = (0 if measure in GROWING else None, None)
            before, now = truths[0].get((unit, measure)), truths[1].get((unit, measure))
            if before is not None and now is not None and 0 < now - before < threshold: targets.append((('added', unit, measure), 0))
    matrix = lil_matrix((len(equations), len(names)))
    for row, members in enumerate(equations):
        for column, sign in members: matrix[row, column] += sign
    matrix = matrix.tocsr()
    limits = [bounds.get(column, (0, None)) for column in range(len(names))]
    step, leaks = max(1, len(targets) // most), 0
    for key, _ in targets[::step]:
        objective = np.zeros(len(names)); objective[names[key]] = -1
        result = linprog(objective, A_eq=matrix, b_eq=np.zeros(len(equations)), bounds=limits, method='highs')
        if result.status == 3: continue
        if result.status != 0: raise SystemExit(f'{key}: {result.message}')
        if -result.fun < threshold - 1e-6:
            leaks += 1
            print('leak', key, 'at most', -result.fun)
    print(f'{len(names)} counts, {sum(v is None for r in releases for v in r.values())} hidden, {len(targets[::step])} small ones tried, {leaks} leaks')
    return leaks


arguments = sys.argv[1:]
sys.exit(1 if attack(int(arguments[0]), list(zip(arguments[1::2], arguments[2::2])), 300) else 0)
