#!/usr/bin/python3
"""Reference values for the renewal equation where immunity ends: people walk through a row of boxes, one box a day, and step out of the last.

Run from the repository root with Debian's python3 and python3-mpmath:

    /usr/bin/python3 tests/reference/generators/renewal_returns.py

Nothing here uses the library's sums: who is immune is held box by box (two rows, where the days of immunity are no whole number), and each case
carries its own days of infectiousness with it. Where those of earlier days are immune the boxes begin filled. In the rows `level` imports and reproduction are
what a level that holds itself needs, the root of one day's equation by mpmath's search (no formula for it); what comes of them is in closed form.
"""
import csv
import random

import mpmath as mp

mp.mp.dps = 30
random.seed(20261127)
PROFILES = [[1], [0, 0, 1], [0, 1, 3, 4, 3, 2, 1], [5, 4, 3, 2, 1, 0.5, 0.25, 0.1], [0, 0, 2, 6, 9, 9, 7, 5, 4, 3, 2, 1, 1, 0.5]]


def num(value):
    return mp.nstr(mp.mpf(value), 17)


def walk(people, imports, r, profile, days, earlier, immunity, immune=0):
    shares = [mp.mpf(x) / sum(map(mp.mpf, profile)) for x in profile]
    most = min(mp.mpf(r), mp.mpf(people) - 1)
    free = mp.mpf(people)
    whole, part = int(immunity), mp.mpf(immunity) - int(immunity)
    rows = [[mp.mpf(0)] * whole, [mp.mpf(0)] * (whole + 1)]
    if immune:
        # In each row as many as have been infected on the days of its boxes.
        rows = [[mp.mpf(earlier) * (1 - part)] * whole, [mp.mpf(earlier) * part] * (whole + 1)]
        free -= sum(rows[0]) + sum(rows[1])
    # Cases by age in days.
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
    rows.append([f"drawn-{i}", people, imports, r, " ".join(map(str, PROFILES[profile])), days, earlier, immunity, 0, num(imported), num(inside), num(last), "absolute:1e-9" if people < 1e6 else "relative:1e-9", "independent", how])
random.seed(20261126)
cases = [(900, 0.5, 1.5, 4, 730, 0.6, 180, 1), (900, 0, 0, 0, 365, 0.6, 180, 1), (100, 1, 2, 2, 91, 100, 1, 1), (100, 1, 2, 2, 91, 80, 1.25, 1), (100, 1, 2, 2, 30, 10, 10, 1), (100, 1, 2, 2, 1, 5, 1, 1), (100, 0, 2, 2, 91, 0, 30, 1)]
while len(cases) < 60:
    people, immunity = random.choice([2, 7, 40, 300, 5000, 1000000]), random.choice([1, 2, 10, 45.5, 90, 120.25, 179.75, 365])
    cases.append((people, random.choice([0, 0.001, 0.05, 0.7, 4, 50]), random.choice([0, 0.3, 0.8, 1, 1.3, 2.5, 8]), random.randrange(len(PROFILES)), random.choice([7, 30, 91, 180, 365, 730]),
                  float(num(random.choice([0.001, 0.05, 0.3, 0.6, 0.9]) * people / immunity)), immunity, 1))
for i, (people, imports, r, profile, days, earlier, immunity, immune) in enumerate(cases):
    imported, inside, last = walk(people, imports, r, PROFILES[profile], days, earlier, immunity, immune)
    rows.append([f"immune-{i}", people, imports, r, " ".join(map(str, PROFILES[profile])), days, earlier, immunity, immune, num(imported), num(inside), num(last), "absolute:1e-9" if people < 1e6 and imported + inside < 1e5 else "relative:1e-9", "independent", how])
history = []
for i in range(60):
    people, immunity = random.choice([10, 40, 300, 900, 5000, 1000000]), random.choice([1, 2, 10, 45.5, 90, 120.25, 179.75, 180, 365, 400])
    taken = random.choice([0.0001, 0.01, 0.1, 0.3, 0.5, 0.6]) if i % 3 else random.choice([0.001, 0.7, 0.94, 0.95, 1, 3])
    measured = float(num(taken * people / immunity))
    each = min(mp.mpf(measured), mp.mpf("0.95") * people / immunity)
    able = people - (mp.mpf(immunity) - 1) * each
    rate = mp.findroot(lambda x: able * (1 - mp.exp(-x / people)) - each, each * people / able)
    history.append([f"history-{i}", people, num(measured), immunity, num(each), num(rate / each), "relative:1e-12", "independent", f"mpmath {mp.__version__} at {mp.mp.dps} digits: root of one day's equation (generators/renewal_returns.py)"])
    if i % 3:
        share, days, profile = random.choice([0.1, 0.3, 0.5, 1]), random.choice([7, 91, 365, 730]), PROFILES[i % len(PROFILES)]
        rows.append([f"level-{i}", people, num(share * rate), num((1 - mp.mpf(share)) * rate / each), " ".join(map(str, profile)), days, num(measured), immunity, 1, num(share * each * days), num((1 - mp.mpf(share)) * each * days), num(each),
                     "relative:1e-7", "closed-form", f"mpmath {mp.__version__}: a level that holds itself, each day as the one before (generators/renewal_returns.py)"])
with open("tests/reference/immune-history-generated.csv", "w", newline="\n", encoding="utf-8") as file:
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow("id people earlier immunity each scale tolerance kind source".split())
    writer.writerows(history)
with open("tests/reference/renewal-returns-generated.csv", "w", newline="\n", encoding="utf-8") as file:
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow("id people imports reproduction profile days earlier immunity immune imported inside last tolerance kind source".split())
    writer.writerows(rows)
