#!/usr/bin/python3
"""Partial verification: reference limits, and a study of how often they cover.

    /usr/bin/python3 tests/reference/generators/verification.py           writes partial-verification-generated.csv
    /usr/bin/python3 tests/reference/generators/verification.py study     prints coverage (two minutes)

Written from the formulas, on the logarithms of the three factors of the odds; shares nothing with the library.
"""
import csv
import sys
import numpy as np
import scipy
from scipy import stats

Z = stats.norm.ppf(0.975)
TOOL = f"scipy {scipy.__version__}: variances recovered from Wilson limits on the log odds (generators/verification.py)"


def wilson(x, n):
    x, n = np.asarray(x, float), np.asarray(n, float)
    p = x / n
    middle = (p + Z * Z / (2 * n)) / (1 + Z * Z / n)
    half = Z * np.sqrt(p * (1 - p) / n + Z * Z / (4 * n * n)) / (1 + Z * Z / n)
    return np.where(x == 0, 0, middle - half), np.where(x == n, 1, middle + half)


def limits(x1, m1, n1, x0, m0, n0):
    """Share x1/m1*n1 / (x1/m1*n1 + x0/m0*n0) and its limits."""
    with np.errstate(all="ignore"):
        (l1, u1), (l0, u0), (lt, ut) = wilson(x1, m1), wilson(x0, m0), wilson(n1, n1 + n0)
        p1 = np.where(x1 == 0, 0.5 / (m1 + 1), x1 / m1)
        p0 = np.where(x0 == 0, 0.5 / (m0 + 1), x0 / m0)
        odds = n1 / n0
        centre = np.log(p1 * odds / p0)
        lower = centre - np.sqrt(np.log(p1 / l1) ** 2 + np.log(u0 / p0) ** 2 + np.log(odds / (lt / (1 - lt))) ** 2)
        upper = centre + np.sqrt(np.log(u1 / p1) ** 2 + np.log(p0 / l0) ** 2 + np.log(ut / (1 - ut) / odds) ** 2)
        lower = np.where(x1 == 0, -np.inf, lower)
        upper = np.where(x0 == 0, np.inf, upper)
        value = (x1 / m1 * n1) / (x1 / m1 * n1 + x0 / m0 * n0)
    return value, 1 / (1 + np.exp(-lower)), 1 / (1 + np.exp(-upper))


def table():
    cases = [  # positives, negatives, confirmed, refuted, missed, agreed
        (429, 221, 231, 32, 27, 54), (264, 59736, 122, 102, 2, 998), (264, 59736, 122, 102, 0, 1000), (540, 59460, 357, 102, 3, 997),
        (2, 7187, 2, 0, 6, 704), (300, 20000, 0, 40, 5, 995), (40, 9960, 30, 0, 4, 296), (120, 880, 60, 60, 20, 180), (5, 95, 3, 1, 1, 49),
    ]
    with open("tests/reference/partial-verification-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow("id positives negatives confirmed refuted missed agreed measure value lower upper wald_lower wald_upper interval_lower interval_upper tolerance kind source".split())
        for case in cases:
            n1, n0, c, r, x, g = case
            for measure, arguments in (("sensitivity", (c, c + r, n1, x, x + g, n0)), ("specificity", (g, x + g, n0, r, c + r, n1))):
                value, lower, upper = (f"{float(v):.16g}" for v in limits(*(np.float64(a) for a in arguments)))
                out.writerow([measure + "-" + "-".join(map(str, case)), *case, measure, value, "", "", "", "", lower, upper, "relative:1e-11", "independent", TOOL])


def study(programs=20_000, runs=60_000):
    random = np.random.default_rng(7)
    print("audits missed-expected sensitivity coverage below above")
    for audits in (1000, 300):
        for expected in (0.2, 0.5, 0.8, 1.2, 1.6, 2, 2.5, 3, 3.5, 4, 5, 6, 8, 10, 14, 20, 30):
            for sensitivity in (0.3, 0.6, 0.9):
                prevalence = expected / audits / (1 - sensitivity)
                if prevalence > 0.3:
                    continue
                cases = random.binomial(runs, prevalence, programs)
                found = random.binomial(cases, sensitivity)
                false = random.binomial(runs - cases, 0.002)
                n1, n0 = found + false, runs - found - false
                m1 = np.maximum(1, random.binomial(n1, 0.85))
                confirmed = random.hypergeometric(found, false, m1)
                missed = random.hypergeometric(cases - found, runs - cases - false, audits)
                _, lower, upper = limits(confirmed, m1, n1, missed, np.full(programs, audits), n0)
                print(audits, expected, sensitivity, *(f"{v:.4f}" for v in (((lower <= sensitivity) & (sensitivity <= upper)).mean(),
                      (sensitivity < lower).mean(), (sensitivity > upper).mean())))


study() if "study" in sys.argv else table()
