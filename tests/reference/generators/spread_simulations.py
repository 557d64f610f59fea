#!/usr/bin/python3
"""Simulated outbreaks and simulated workplaces, person by person.

Run from the repository root with Debian's python3, python3-numpy and python3-scipy:

    /usr/bin/python3 tests/reference/generators/spread_simulations.py

Outbreaks: each case draws a negative binomial number of contacts (scipy) and lets each fall on one of the others at random, twice on the same
one if it so happens; in an unlimited workplace each contact is a new person. No gamma variable, no chance of escape: the library's chain
is built on these. Workplaces: every person not yet infected throws a die every day.
"""
import csv

import numpy as np
import scipy
from scipy import stats

rng = np.random.default_rng(20261127)


def out(name, header, rows):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header.split())
        writer.writerows(rows)


def contacts(r, k, caught, n):
    if r == 0:
        return np.zeros(n, dtype=int)
    drawn = stats.poisson.rvs(r, size=n, random_state=rng) if k is None else stats.nbinom.rvs(k, k / (k + r), size=n, random_state=rng)
    return np.where(rng.random(n) < caught, 0, drawn)


def unlimited(r, k, caught, a, size, runs):
    """Generation by generation, all runs at once; a run that has reached the size is done."""
    total = np.full(runs, a)
    alive = np.full(runs, a)
    while True:
        open_ = (alive > 0) & (total < size)
        if not open_.any():
            return int((total >= size).sum())
        owners = np.repeat(np.flatnonzero(open_), alive[open_])
        alive = np.bincount(owners, weights=contacts(r, k, caught, len(owners)), minlength=runs).astype(int)
        total += alive


def site(r, k, caught, people, a, size, runs):
    pool = iter(())
    reached = 0
    for _ in range(runs):
        infected = set(range(a))
        waiting = list(range(a))
        while waiting and len(infected) < size:
            case = waiting.pop()
            try:
                number = next(pool)
            except StopIteration:
                pool = iter(contacts(r, k, caught, 100_000).tolist())
                number = next(pool)
            if number == 0:
                continue
            for other in rng.integers(0, people - 1, min(number, 100_000)).tolist():
                other += other >= case
                if other not in infected:
                    infected.add(other)
                    waiting.append(other)
        reached += len(infected) >= size
    return reached


rows = []
how = f"scipy {scipy.__version__}, numpy {np.__version__}: contacts drawn one by one (generators/spread_simulations.py)"
cases = [(2.5, 0.1, 0, None, 1, 5), (2.5, 0.1, 0, 40, 1, 5), (1.2, None, 0, None, 1, 10), (1.2, None, 0, 12, 1, 6), (0.6, 0.3, 0, None, 3, 6), (0.6, 0.3, 0, 8, 3, 6), (3, 0.5, 0.4, None, 1, 5),
         (3, 0.5, 0.4, 25, 1, 5), (5, 1, 0, 4, 1, 4), (0.9, 0.02, 0, 100, 1, 5), (1.5, 10, 0.2, 60, 2, 40), (4, 0.16, 0, 15, 1, 12), (0.3, 2, 0, 6, 1, 2), (20, 0.05, 0, 30, 1, 30)]
for i, (r, k, c, people, a, size) in enumerate(cases):
    runs = 1_000_000 if people is None else 60_000
    reached = unlimited(r, k, c, a, size, runs) if people is None else site(r, k, c, people, a, size, runs)
    rows.append([f"simulated-{i}", r, "" if k is None else k, c, "" if people is None else people, a, size, reached, runs, "exact", "independent", how])
out("outbreak-simulations", "id reproduction dispersion caught people introductions size reached runs tolerance kind source", rows)


def workplaces(people, imports, r, profile, days, runs):
    share = np.array(profile) / sum(profile)
    totals = np.zeros(runs)
    free = np.full(runs, people)
    past = np.zeros((runs, len(profile)))
    for _ in range(days):
        force = imports + r * (past @ share)
        new = rng.binomial(free, -np.expm1(-force / people))
        past = np.column_stack([new, past[:, :-1]])
        free = free - new
        totals += new
    return totals


# The mean of a finite workplace lies below the equation for the mean, as outbreaks use up the people they need: by less than `correction` of it.
rows = []
for i, (people, imports, r, profile, days, runs, correction) in enumerate([
        (1_000_000, 2, 0.8, [0, 1, 3, 4, 3, 2, 1], 91, 40_000, 0), (1_000_000, 0.3, 0, [1], 91, 40_000, 0), (1_000_000, 1, 1, [5, 4, 3, 2, 1], 60, 40_000, 0),
        (1_000_000, 5, 1.4, [0, 0, 2, 6, 9, 9, 7, 5, 4, 3, 2, 1], 60, 20_000, 0), (5000, 0.5, 0.7, [0, 1, 3, 4, 3, 2, 1], 91, 40_000, 0.005), (400, 4, 0.5, [0, 1, 3, 4, 3, 2, 1], 91, 40_000, 0.01)]):
    totals = workplaces(people, imports, r, profile, days, runs)
    rows.append([f"workplace-{i}", people, imports, r, " ".join(map(str, profile)), days, repr(totals.mean()), repr(totals.std(ddof=1) / np.sqrt(runs)), correction, "exact", "independent",
                 f"scipy {scipy.__version__}, numpy {np.__version__}: people infected at random day by day (generators/spread_simulations.py); within four standard errors and the stated correction"])
out("renewal-simulations", "id people imports reproduction profile days mean error correction tolerance kind source", rows)
