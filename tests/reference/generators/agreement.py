#!/usr/bin/python3
"""Reference values for agreement: kappa with its standard errors, shares of agreement.

Run from the repository root with Debian's python3, python3-mpmath, python3-scipy and python3-statsmodels:

    /usr/bin/python3 tests/reference/generators/agreement.py

It writes tests/reference/agreement-generated.csv. The standard errors are the delta method with a numerical gradient of kappa over the
cells, at 40 digits; wherever statsmodels gives a figure it is asserted to agree to 1e-9. The library has the closed form of Fleiss, Cohen and
Everitt.
"""
import csv
import random
import warnings

import mpmath as mp
import numpy as np
import scipy
import statsmodels
from statsmodels.stats.inter_rater import cohens_kappa

mp.mp.dps = 40
TOOL = f"mpmath {mp.__version__} at 40 digits, delta method by numerical gradient (generators/agreement.py)"
BOTH = f"{TOOL}; statsmodels {statsmodels.__version__.split('+')[0]} cohens_kappa agrees to 1e-9"
SHARES = f"mpmath {mp.__version__} at 40 digits (generators/agreement.py)"


def text(value):
    if value is None:
        return "undefined"
    return str(value) if value in (0, 1, -1) else mp.nstr(mp.mpf(value), 17, strip_zeros=True)


def normal(confidence):
    return mp.sqrt(2) * mp.erfinv(mp.mpf(float(confidence)))


def weight(kind, k, i, j):
    distance = mp.mpf(abs(i - j)) / (k - 1)
    return {"none": mp.mpf(int(i == j)), "linear": 1 - distance, "quadratic": 1 - distance ** 2}[kind]


def kappa(cells, k, kind):
    rows = [mp.fsum(cells[i * k + j] for j in range(k)) for i in range(k)]
    columns = [mp.fsum(cells[i * k + j] for i in range(k)) for j in range(k)]
    total = mp.fsum(cells)
    observed = mp.fsum(weight(kind, k, i, j) * cells[i * k + j] for i in range(k) for j in range(k)) / total
    chance = mp.fsum(weight(kind, k, i, j) * rows[i] * columns[j] for i in range(k) for j in range(k)) / total ** 2
    return None if chance == 1 else (observed - chance) / (1 - chance)


def error(cells, k, kind, n):
    """sqrt((sum p g^2 - (sum p g)^2) / n) with g the gradient of kappa, extended to any positive cells."""
    step = mp.mpf(10) ** -13
    gradient = []
    for index in range(k * k):
        if cells[index] == 0:  # the weight of this cell in the sums is 0
            gradient.append(mp.mpf(0))
            continue
        moved = [list(cells), list(cells)]
        moved[0][index] += step
        moved[1][index] -= step
        gradient.append((kappa(moved[0], k, kind) - kappa(moved[1], k, kind)) / (2 * step))
    mean = mp.fsum(p * g for p, g in zip(cells, gradient))
    return mp.sqrt(abs(mp.fsum(p * (g - mean) ** 2 for p, g in zip(cells, gradient))) / n)


def wilson(x, n, z):
    h = mp.mpf(x)
    root = z * mp.sqrt(z * z + 4 * h * (1 - h / n))
    lower = mp.mpf(0) if x == 0 else (2 * h + z * z - root) / (2 * (n + z * z))
    upper = mp.mpf(1) if x == n else (2 * h + z * z + root) / (2 * (n + z * z))
    return h / n, lower, upper


def tables():
    rng = random.Random(20260107)
    fixed = [
        [[40, 9], [6, 45]], [[80, 10], [5, 5]], [[45, 15], [25, 15]], [[25, 35], [5, 35]], [[22, 2], [4, 11]], [[40, 1], [19, 512]],
        [[1467, 782], [1309, 16232]], [[22, 2, 2, 0], [5, 7, 14, 0], [0, 2, 36, 0], [0, 1, 17, 10]], [[106, 10, 4], [22, 28, 10], [2, 12, 6]],
        [[10, 0], [0, 20]], [[0, 10], [20, 0]], [[10, 0], [0, 0]], [[0, 7], [0, 0]], [[5, 5], [5, 5]], [[1, 1], [0, 0]], [[1, 0], [0, 1]],
        [[9900000, 2000], [1500, 96500]], [[3, 20], [10, 9999967]], [[5, 0, 0], [0, 5, 0], [0, 0, 5]], [[0, 0, 9], [0, 9, 0], [9, 0, 0]],
    ]
    while len(fixed) < 104:
        k = rng.choice((2, 2, 2, 3, 4, 5) if len(fixed) < 62 else (3, 4, 5))
        scale = 10 ** rng.uniform(0.5, 3)
        stay = rng.random() * 4
        fixed.append([[int(scale * rng.random() ** 2 * (1 + stay * k * (i == j))) for j in range(k)] for i in range(k)])
    return fixed


def main():
    rows = []
    for index, table in enumerate(tables()):
        k, n = len(table), sum(map(sum, table))
        if n == 0:
            continue
        confidence = ("0.95", "0.95", "0.9", "0.99")[index % 4]
        z = normal(confidence)
        name = "/".join(" ".join(map(str, row)) for row in table)
        cells = [mp.mpf(count) / n for row in table for count in row]

        def row(measure, weights, value, lower, upper, se=None, se0=None, tolerance="relative:1e-9", source=SHARES):
            shown = lambda x: text(x) if measure == "kappa" else ""
            rows.append([f"{measure}-{weights or 'plain'}-{name.replace('/', ';').replace(' ', '-')}-{confidence}", name, measure, weights, confidence,
                         text(value), shown(se), shown(se0), text(lower), text(upper), tolerance, "independent", source])

        for kind in ("none", "linear", "quadratic") if k > 2 else ("none",):
            value = kappa(cells, k, kind)
            if value is None:
                row("kappa", kind, None, None, None)
                continue
            se = error(cells, k, kind, n)
            first = [mp.fsum(cells[i * k:i * k + k]) for i in range(k)]
            second = [mp.fsum(cells[j::k]) for j in range(k)]
            se0 = error([p * q for p in first for q in second], k, kind, n)
            with warnings.catch_warnings():
                warnings.simplefilter("ignore")
                other = cohens_kappa(np.array(table, dtype=float), wt=None if kind == "none" else kind)
            for one, two in ((value, other.kappa), (se, other.std_kappa), (se0, other.std_kappa0)):
                # a standard error of 0 is in statsmodels the root of a rounding error
                assert abs(one - two) <= 1e-9 or abs(one ** 2 - two ** 2) < 1e-15 or not np.isfinite(two), (table, kind, one, two)
            tiny = lambda x: mp.mpf(0) if abs(x) < mp.mpf(10) ** -18 else x
            row("kappa", kind, tiny(value), max(-1, value - z * se), min(1, value + z * se), tiny(se), tiny(se0), "absolute:1e-11", BOTH)
        agreeing = sum(table[i][i] for i in range(k))
        overall = wilson(agreeing, n, z)
        row("overall", "", *overall)
        row("prevalence-adjusted", "", *((k * share - 1) / (k - 1) for share in overall), tolerance="absolute:1e-13")
        for category in range(k):
            margins = sum(table[category]) + sum(r[category] for r in table)
            if margins == 0:
                row(f"specific-{category}", "", None, None, None)
                continue
            both = table[category][category]
            row(f"specific-{category}", "", *(2 * share / (1 + share) for share in wilson(both, margins - both, z)))
        if k == 2:
            (a, b), (c, d) = table
            for measure, x, of in (("positive", a, a + c), ("negative", d, b + d)):
                row(measure, "", *(wilson(x, of, z) if of else (None, None, None)))
    with open("tests/reference/agreement-generated.csv", "w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow("id,counts,measure,weights,confidence,value,standard_error,standard_error_under_chance,lower,upper,tolerance,kind,source".split(","))
        out.writerows(rows)


main()
