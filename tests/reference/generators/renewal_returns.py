#!/usr/bin/python3
"""Reference values for the renewal equation where immunity ends: people walk through a row of boxes, one box a day, and step out of the last.

Run from the repository root with Debian's python3 and python3-mpmath:

    /usr/bin/python3 tests/reference/generators/renewal_returns.py

Nothing here uses the library's sums: who is immune is held box by box (two rows, where the days of immunity are no whole number), and each case
carries its own days of infectiousness with it. The steady rows are in closed form, and run long enough to get there.
"""
import csv
import random

import mpmath as mp

mp.mp.dps = 30
random.seed(20261127)
PROFILES = [[1], [0, 0, 1], [0, 1, 3, 4, 3, 2, 1], [5, 4, 3, 2, 1, 0.5, 0.25, 0.1], [0, 0, 2, 6, 9, 9, 7, 5, 4, 3, 2, 1, 1, 0.5]]


def num(value):
    return mp.nstr(mp.mpf(value), 17)


def walk(people, imports, r, profile, days, earlier, immunity):
    shares = [mp.mpf(x) / sum(map(mp.mpf, profile)) for x in profile]
    most = min(mp.mpf(r), mp.mpf(people) - 1)
    free = mp.mpf(people)
    whole, part = int(immunity), mp.mpf(immunity) - int(immunity)
    rows = [[mp.mpf(0)] * whole, [mp.mpf(0)] * (whole + 1)]
    # Cases by age in days; those of before the first day are not among the immune.
    ages = [mp.mpf(earlier)] * len(shares)
    inside, imported, last = mp.mpf(0), mp.mpf(0), mp.mpf(0)
    for _ in range(days):
        for boxes in rows:
            free += boxes.pop()
            boxes.insert(0, mp.mpf(0))
        force = most * sum(s * a for s, a in zip(shares, ages))
        rate = force + mp.mpf(imports)
        new = free * (1 - mp.exp(-rate / people))
        free -= new
        rows[0][0] += new * (1 - part)
        rows[1][0] += new * part
        ages = [new] + ages[:-1]
        if rate > 0:
            inside += new * force / rate
            imported += new * mp.mpf(imports) / rate
        last = new
    return imported, inside, last


rows = []
how = f"mpmath {mp.__version__} at {mp.mp.dps} digits: immune people box by box (generators/renewal_returns.py)"
cases = [(500, 3, 2, 2, 91, 0, 1), (500, 3, 2, 2, 91, 0, 91), (500, 3, 2, 2, 91, 0, 90.5), (500, 3, 2, 2, 1, 0, 1), (1, 0.3, 3, 2, 91, 0, 1.25), (500, 0, 2, 2, 91, 0, 20), (900, 0.5, 1.5, 4, 365, 0.6, 180), (900, 0.5, 1.5, 4, 730, 0.6, 180), (500, 3, 2, 2, 0, 0, 7)]
while len(cases) < 64:
    cases.append((random.choice([2, 7, 40, 300, 5000, 1000000]), random.choice([0, 0.001, 0.05, 0.7, 4, 50]), random.choice([0, 0.3, 0.8, 1, 1.3, 2.5, 8]), random.randrange(len(PROFILES)),
                  random.choice([7, 30, 91, 180, 365]), random.choice([0, 0.1, 2]), random.choice([1, 2, 10, 45.5, 90, 120.25, 179.75, 365])))
for i, (people, imports, r, profile, days, earlier, immunity) in enumerate(cases):
    imported, inside, last = walk(people, imports, r, PROFILES[profile], days, earlier, immunity)
    rows.append([f"drawn-{i}", people, imports, r, " ".join(map(str, PROFILES[profile])), days, earlier, immunity, num(imported), num(inside), num(last), "absolute:1e-9" if people < 1e6 else "relative:1e-9", "independent", how])
with open("tests/reference/renewal-returns-generated.csv", "w", newline="\n", encoding="utf-8") as file:
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow("id people imports reproduction profile days earlier immunity imported inside last tolerance kind source".split())
    writer.writerows(rows)
