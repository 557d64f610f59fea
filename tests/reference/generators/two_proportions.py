#!/usr/bin/python3
"""Reference values for two proportions: differences, ratios, odds ratios, Fisher's exact test, paired readings.

Run from the repository root with Debian's python3, python3-mpmath and python3-scipy:

    /usr/bin/python3 tests/reference/generators/two_proportions.py

It writes tests/reference/two-proportions-generated.csv, fisher-exact-generated.csv and paired-proportions-generated.csv.
Nothing here is shared with the library. The restricted likelihood of the score intervals is maximised by brute force at 40 digits
(bisection of the slope of the binomial log-likelihood itself; the library has closed forms and a logit scale). Exact odds ratios and
p-values are sums over every possible table with whole-number binomial coefficients (the library walks by ratios of neighbours), and for
tables too large for that, scipy's noncentral hypergeometric and hypergeometric distributions, at a looser tolerance.
"""
import csv
import math
import random
from fractions import Fraction

import mpmath as mp
import scipy
from scipy import stats

mp.mp.dps = 40
TOOL = f"mpmath {mp.__version__} at 40 digits (generators/two_proportions.py)"
SCIPY = f"scipy {scipy.__version__} (generators/two_proportions.py)"


def text(value):
    if value is None:
        return "undefined"
    return str(value) if value in (0, 1, -1) else mp.nstr(mp.mpf(value), 17, strip_zeros=True)


def normal(confidence):
    return mp.sqrt(2) * mp.erfinv(mp.mpf(float(confidence)))


def tail(confidence):
    return (1 - mp.mpf(float(confidence))) / 2


def bisect(function, low, high, digits=30):
    """Where a falling function crosses 0; the bracket's ends need no evaluation."""
    low, high = mp.mpf(low), mp.mpf(high)
    for _ in range(10 * digits):
        middle = (low + high) / 2
        if function(middle) > 0:
            low = middle
        else:
            high = middle
        if high - low <= mp.mpf(10) ** -digits * max(abs(low), abs(high), mp.mpf(10) ** -12):
            break
    return (low + high) / 2


# --- one proportion: Wilson with and without continuity correction, from the score equation ---
def wilson(x, n, z, correction):
    p = mp.mpf(x) / n

    def limit(h):  # roots of (h / n - P)^2 = z^2 P (1 - P) / n
        a, b, c = 1 + z * z / n, -(2 * h / n + z * z / n), (h / n) ** 2
        root = mp.sqrt(b * b - 4 * a * c)
        return (-b - root) / (2 * a), (-b + root) / (2 * a)

    lower = mp.mpf(0) if x == 0 else limit(max(mp.mpf(0), x - correction))[0]
    upper = mp.mpf(1) if x == n else limit(min(mp.mpf(n), x + correction))[1]
    return p, lower, upper


def newcombe(x1, n1, x2, n2, z, correction):
    p1, l1, u1 = wilson(x1, n1, z, correction)
    p2, l2, u2 = wilson(x2, n2, z, correction)
    return p1 - p2 - mp.sqrt((p1 - l1) ** 2 + (u2 - p2) ** 2), p1 - p2 + mp.sqrt((u1 - p1) ** 2 + (p2 - l2) ** 2)


# --- score intervals by brute force ---
def slope(x1, n1, x2, n2, p1, p2, d1, d2):
    """Derivative of the log-likelihood along a path on which p1 and p2 move by d1 and d2."""
    def part(x, n, p, d):
        return d * ((x / p if x else 0) - ((n - x) / (1 - p) if n - x else 0))
    return part(x1, n1, p1, d1) + part(x2, n2, p2, d2)


def restricted_difference(x1, n1, x2, n2, d):
    low, high = max(mp.mpf(0), -d), min(mp.mpf(1), 1 - d)
    p2 = bisect(lambda p: slope(x1, n1, x2, n2, p + d, p, 1, 1), low, high)
    return p2 + d, p2


def restricted_ratio(x1, n1, x2, n2, r):
    p2 = bisect(lambda p: slope(x1, n1, x2, n2, r * p, p, r, 1), 0, min(mp.mpf(1), 1 / r))
    return r * p2, p2


def score_difference_upper(x1, n1, x2, n2, z, factor):
    d = mp.mpf(x1) / n1 - mp.mpf(x2) / n2
    if d == 1:
        return mp.mpf(1)

    def inside(delta):
        p1, p2 = restricted_difference(x1, n1, x2, n2, delta)
        return z * z * factor * (p1 * (1 - p1) / n1 + p2 * (1 - p2) / n2) - (d - delta) ** 2
    return bisect(inside, d, 1, 22)


def score_ratio_lower(x1, n1, x2, n2, z, factor):
    if x1 == 0:
        return mp.mpf(0)

    def inside(u):  # rising ratios: the statistic falls
        r = mp.exp(u)
        p1, p2 = restricted_ratio(x1, n1, x2, n2, r)
        return (mp.mpf(x1) / n1 - r * x2 / n2) / mp.sqrt(factor * (p1 * (1 - p1) / n1 + r * r * p2 * (1 - p2) / n2)) - z
    high = mp.log(mp.mpf(x1) / n1 * n2 / x2) if x2 else mp.mpf(60)
    return mp.exp(bisect(inside, high - 100, high, 22))


# --- exact: every table ---
def weights(x1, n1, x2, n2):
    events = x1 + x2
    return {k: math.comb(n1, k) * math.comb(n2, events - k) for k in range(max(0, events - n2), min(n1, events) + 1)}


def conditional(x1, n1, x2, n2, confidence):
    table = weights(x1, n1, x2, n2)
    lowest, highest = min(table), max(table)
    if lowest == highest:
        return None, 0, None

    def chance(u, keep):
        terms = {k: w * mp.exp(u * (k - x1)) for k, w in table.items()}
        return mp.fsum(v for k, v in terms.items() if keep(k)) / mp.fsum(terms.values())

    def mean(u):
        terms = {k: w * mp.exp(u * (k - x1)) for k, w in table.items()}
        return mp.fsum(v * k for k, v in terms.items()) / mp.fsum(terms.values())

    t = tail(confidence)
    value = 0 if x1 == lowest else None if x1 == highest else mp.exp(bisect(lambda u: x1 - mean(u), -60, 60, 20))
    lower = 0 if x1 == lowest else mp.exp(bisect(lambda u: t - chance(u, lambda k: k >= x1), -60, 60, 20))
    upper = None if x1 == highest else mp.exp(bisect(lambda u: chance(u, lambda k: k <= x1) - t, -60, 60, 20))
    return value, lower, upper


def fisher(x1, n1, x2, n2):
    table = weights(x1, n1, x2, n2)
    total = sum(table.values())
    seen = table[x1]
    share = lambda keep: mp.mpf(sum(w for k, w in table.items() if keep(k, w))) / total
    return {
        "two_sided": share(lambda k, w: w <= seen),
        "mid_p": (share(lambda k, w: w <= seen) + share(lambda k, w: w < seen)) / 2,
        "greater": share(lambda k, w: k >= x1), "less": share(lambda k, w: k <= x1),
        "greater_mid_p": (share(lambda k, w: k >= x1) + share(lambda k, w: k > x1)) / 2,
        "less_mid_p": (share(lambda k, w: k <= x1) + share(lambda k, w: k < x1)) / 2,
    }


def cases():
    rng = random.Random(20260105)
    fixed = [
        (56, 70, 48, 80), (9, 10, 3, 10), (6, 7, 2, 7), (5, 56, 0, 29), (0, 10, 0, 20), (0, 10, 0, 10), (10, 10, 0, 20), (10, 10, 0, 10),
        (0, 20, 10, 10), (10, 10, 20, 20), (10, 10, 9, 10), (1, 10, 0, 10), (0, 1, 0, 1), (1, 1, 0, 1), (0, 1, 1, 1), (1, 1, 1, 1), (1, 2, 1, 3),
        (36, 40, 16, 80), (7, 34, 1, 34), (1, 10, 1, 100), (1, 1000, 0, 3), (3, 3, 1, 1000), (999, 1000, 990, 1000), (50, 100, 50, 100),
        (5, 100, 10, 200), (2, 300, 40, 5000), (0, 5, 7, 2000), (12, 12, 180, 200), (30, 400, 0, 6), (25, 50, 1, 50),
    ]
    for _ in range(24):
        n1, n2 = (int(math.exp(rng.uniform(0, math.log(900)))) for _ in range(2))
        share = rng.random() ** 2
        fixed.append((min(n1, round(n1 * share * rng.uniform(0.3, 2))), n1, min(n2, round(n2 * share)), n2))
    large = [
        (189, 11034, 104, 11037), (1, 10000000, 3, 10000000), (150, 10000000, 90, 8000000), (1322, 903408, 1500, 880000), (14633, 9999999, 14000, 10000000),
        (5000000, 10000000, 4990000, 10000000), (9999990, 10000000, 9999970, 10000000), (0, 10000000, 5, 1000000), (3, 1000, 2000, 10000000),
    ]
    return list(dict.fromkeys(fixed)), large


def write(name, header, rows):
    with open(f"tests/reference/{name}.csv", "w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(header)
        out.writerows(rows)


def contrasts():
    rows = []
    small, large = cases()
    for index, counts in enumerate(small + large):
        x1, n1, x2, n2 = counts
        confidence = ("0.95", "0.95", "0.9", "0.99", "0.5", "0.999")[index % 6]
        z = normal(confidence)
        factor = mp.mpf(n1 + n2) / (n1 + n2 - 1)
        p1, p2 = mp.mpf(x1) / n1, mp.mpf(x2) / n2
        ratio = p1 / p2 if x2 else None
        odds_edge = (x1 + x2) in (0, n1 + n2)
        odds = None if odds_edge or x2 == 0 or x1 == n1 else p1 * (1 - p2) / ((1 - p1) * p2)

        def row(measure, method, value, lower, upper, tolerance="relative:1e-9", source=TOOL):
            # A limit of a difference near 0 is a difference of proportions: its rounding is theirs.
            if measure == "difference":
                tolerance = "absolute:" + mp.nstr(max(p1, p2, mp.mpf(1) / max(n1, n2)) * mp.mpf("1e-11"), 2, min_fixed=0, max_fixed=0)
            rows.append(["-".join(map(str, (measure, method, *counts, confidence))), measure, method, *counts, confidence,
                         text(value), text(lower), text(upper), tolerance, "independent", source])

        row("difference", "newcombe", p1 - p2, *newcombe(*counts, z, mp.mpf(0)))
        row("difference", "newcombe-continuity", p1 - p2, *newcombe(*counts, z, mp.mpf("0.5")))
        row("difference", "miettinen-nurminen", p1 - p2,
            -score_difference_upper(x2, n2, x1, n1, z, factor), score_difference_upper(*counts, z, factor))
        if x1 == 0 or x2 == 0 or (x1 == n1 and x2 == n2):
            row("ratio", "katz", ratio, None, None)
        else:
            half = z * mp.sqrt(mp.mpf(1) / x1 - mp.mpf(1) / n1 + mp.mpf(1) / x2 - mp.mpf(1) / n2)
            row("ratio", "katz", ratio, ratio * mp.exp(-half), ratio * mp.exp(half))
        for method, scale in (("koopman", mp.mpf(1)), ("miettinen-nurminen", factor)):
            row("ratio", method, ratio, score_ratio_lower(*counts, z, scale), 1 / score_ratio_lower(x2, n2, x1, n1, z, scale) if x2 else None)
        if 0 in (x1, n1 - x1, x2, n2 - x2):
            row("odds-ratio", "woolf", odds, None, None)
        else:
            half = z * mp.sqrt(mp.mpf(1) / x1 + mp.mpf(1) / (n1 - x1) + mp.mpf(1) / x2 + mp.mpf(1) / (n2 - x2))
            row("odds-ratio", "woolf", odds, odds * mp.exp(-half), odds * mp.exp(half))
        if min(x1 + x2, n1 + n2 - x1 - x2, n1, n2) <= 3000:
            row("odds-ratio", "conditional-exact", *conditional(*counts, confidence))
    return rows


def fishers():
    rows = []
    small, large = cases()
    header = ["two_sided", "mid_p", "greater", "less", "greater_mid_p", "less_mid_p"]
    for counts in small + [c for c in large if min(c[0] + c[2], c[1], c[3]) <= 3000]:
        values = fisher(*counts)
        rows.append(["fisher-" + "-".join(map(str, counts)), *counts, *(text(values[name]) for name in header), "relative:1e-10", "independent", TOOL])
    return header, rows


# --- pairs ---
def paired_interval(a, b, c, d, confidence):
    """Newcombe's method 10 for pairs, worked with fractions as far as they go."""
    n = a + b + c + d
    z = normal(confidence)
    p1, l1, u1 = wilson(a + b, n, z, mp.mpf(0))
    p2, l2, u2 = wilson(a + c, n, z, mp.mpf(0))
    product = (a + b) * (c + d) * (a + c) * (b + d)
    if product == 0:
        phi = mp.mpf(0)
    else:
        determinant = Fraction(a * d - b * c)
        corrected = determinant - Fraction(n, 2) if determinant > Fraction(n, 2) else Fraction(0) if determinant >= 0 else determinant
        phi = mp.mpf(corrected.numerator) / corrected.denominator / mp.sqrt(product)
    squared = lambda one, two: mp.sqrt(one * one - 2 * phi * one * two + two * two)
    difference = mp.mpf(b - c) / n
    return difference, difference - squared(p1 - l1, u2 - p2), difference + squared(u1 - p1, p2 - l2)


def mcnemar(b, c):
    n, low = b + c, min(b, c)
    total = mp.mpf(2) ** n
    below = mp.mpf(sum(math.comb(n, k) for k in range(low + 1))) / total
    point = mp.mpf(math.comb(n, low)) / total
    exact = min(mp.mpf(1), 2 * below)
    mid = 1 - point / 2 if b == c and n else mp.mpf(1) if n == 0 else exact - point
    greater = mp.mpf(sum(math.comb(n, k) for k in range(b, n + 1))) / total
    less = mp.mpf(sum(math.comb(n, k) for k in range(b + 1))) / total
    return exact, mid, greater, less


def pairs():
    rng = random.Random(20260106)
    tables = [
        (1, 1, 7, 12), (59, 6, 16, 80), (794, 150, 86, 570), (0, 0, 0, 10), (10, 0, 0, 0), (0, 5, 0, 5), (0, 0, 5, 5), (5, 5, 0, 0), (0, 10, 0, 0), (0, 0, 10, 0),
        (0, 5, 5, 0), (20, 0, 0, 20), (1, 0, 0, 1), (54, 1, 0, 45), (0, 1, 1, 0), (40, 9, 6, 45), (36, 12, 2, 0), (10, 10, 10, 10), (3, 40, 38, 3),
        (40, 1, 19, 512), (7000000, 2000, 1900, 2996100), (5, 30, 60, 9999905), (2, 900, 1100, 100000), (53, 0, 1, 0), (0, 9, 2, 0),
    ]
    for _ in range(35):
        n = int(math.exp(rng.uniform(1, 7)))
        cuts = sorted(rng.random() ** 1.5 for _ in range(3))
        edge = [0, *(round(n * cut) for cut in cuts), n]
        tables.append(tuple(edge[i + 1] - edge[i] for i in range(4)))
    rows = []
    for index, table in enumerate(dict.fromkeys(tables)):
        if sum(table) == 0:
            continue
        confidence = ("0.95", "0.95", "0.9", "0.99")[index % 4]
        value, lower, upper = paired_interval(*table, confidence)
        exact, mid, greater, less = mcnemar(table[1], table[2])
        rows.append(["pair-" + "-".join(map(str, table)) + "-" + confidence, *table, confidence, text(value), text(lower), text(upper),
                     "absolute:1e-13", "independent", TOOL])
        rows.append(["mcnemar-" + "-".join(map(str, table)), *table, "", "", "", "", "relative:1e-10", "independent", TOOL,
                     text(exact), text(mid), text(greater), text(less)])
    return rows


if __name__ == "__main__":
    write("two-proportions-generated",
          "id,measure,method,first_successes,first_trials,second_successes,second_trials,confidence,value,lower,upper,tolerance,kind,source".split(","), contrasts())
    names, fisher_rows = fishers()
    write("fisher-exact-generated",
          ["id", "first_successes", "first_trials", "second_successes", "second_trials", *names, "tolerance", "kind", "source"], fisher_rows)
    columns = "id,both,first_only,second_only,neither,confidence,value,lower,upper,exact,mid_p,greater,less,tolerance,kind,source".split(",")
    write("paired-proportions-generated", columns,
          [row[:9] + ([""] * 4 if len(row) == 12 else row[12:]) + row[9:12] for row in pairs()])
