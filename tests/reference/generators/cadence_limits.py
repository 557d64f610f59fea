#!/usr/bin/python3
"""Reference values for limits of ways of screening from uncertain sensitivity, specificity and incidence.

Run from the repository root with Debian's python3, python3-numpy and python3-scipy:

    /usr/bin/python3 tests/reference/generators/cadence_limits.py

Nothing here uses strata or closed forms: a million plain random draws of each beta distribution (numpy); what a sensitivity finds is the mean over
400 phases of every screen taken one by one, between 201 sensitivities by a cubic spline (scipy).
"""
import csv
import random

import numpy as np
import scipy
from scipy.interpolate import CubicSpline

random.seed(20261126)
generator = np.random.default_rng(20261126)
DRAWS = 1_000_000
GRID = np.linspace(0, 1, 201)
SOURCE = (f"numpy {np.__version__} and scipy {scipy.__version__}: a million plain draws of the beta distributions, screens taken one by one over 400 phases "
          "(generators/cadence_limits.py); tolerance: chance in both, of a million draws there and 20,000 in strata here")


def curves(every, a, b, i0, i1, delay):
    found, removed = np.zeros(len(GRID)), np.zeros(len(GRID))
    phases = 400
    for phase in range(phases):
        t, missed = a + (phase + 0.5) / phases * every, np.ones(len(GRID))
        while t < b:
            first = missed * GRID
            found += first / phases
            removed += first * max(0.0, i1 - max(i0, t + delay)) / phases
            missed = missed - first
            t += every
    return CubicSpline(GRID, found), CubicSpline(GRID, removed)


rows = []
for case in range(60):
    every = random.choice([1, 2, 3.5, 5, 7, 10, 14, 30])
    a = random.choice([0, 1, 2, 3, 4])
    b = a + random.choice([4, 7, 10, 14])
    i0 = random.choice([0, 2, 3])
    i1 = i0 + random.choice([5, 7, 9])
    delay = random.choice([0, 0.5, 1, 2])
    sn = random.choice([20, 97, 204, 1000])
    sx = random.randint(round(0.3 * sn), round(0.95 * sn))
    pn = random.choice([900, 2400, 30000])
    px = pn - random.randint(1, 12)
    ln = random.choice([9000, 24000, 150000])
    lx = random.randint(3, 60)
    people = random.choice([40, 400, 5000])
    s = generator.beta(sx + 0.5, sn - sx + 0.5, DRAWS)
    p = generator.beta(px + 0.5, pn - px + 0.5, DRAWS)
    l = generator.beta(lx + 0.5, ln - lx + 0.5, DRAWS)
    find, take = curves(every, a, b, i0, i1, delay)
    detected, removed = find(s), take(s)
    alarms = 365 / every * (1 - p)
    true, false = people * 365 * l * detected, people * alarms
    predictive = 365 * l * detected / (365 * l * detected + alarms)
    ends = []
    for figure in (detected, removed, alarms, true, false, predictive):
        # A figure that is the same in every draw has no limits.
        ends += [f"{value:.6g}" for value in np.quantile(figure, [0.025, 0.975])] if figure.max() > figure.min() else ["", ""]
    rows.append([f"limits-{case + 1}", every, sx, sn, px, pn, lx, ln, delay, a, b, i0, i1, people, *ends, "relative:0.015", "independent", SOURCE])

with open("tests/reference/cadence-limits.csv", "w", newline="\n", encoding="utf-8") as file:
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow(("id every sensitivity_x sensitivity_n specificity_x specificity_n incidence_x incidence_n delay detectable_from detectable_to infectious_from "
                     "infectious_to people detected_lower detected_upper removed_lower removed_upper false_each_lower false_each_upper true_lower true_upper "
                     "false_lower false_upper predictive_lower predictive_upper tolerance kind source").split())
    writer.writerows(rows)
