#!/usr/bin/python3
"""Bounds with no assumption on the unverified: a linear program for each end; Imbens-Manski intervals; specificity from positivity.

    /usr/bin/python3 tests/reference/generators/bounds.py    writes accuracy-bounds-generated.csv, imbens-manski-generated.csv,
                                                             specificity-proofs-generated.csv

A figure is a ratio of linear forms in the unknown numbers of infected runs of each cell; its least and greatest value is a linear program
after Charnes and Cooper (1962): x = y / s with the denominator 1. The library uses closed forms.
"""
import csv
import numpy as np
import scipy
from scipy import optimize, stats

VERSION = f"scipy {scipy.__version__}"
MEASURES = ["sensitivity", "specificity", "prevalence", "positive", "negative"]
NONE = np.zeros(7)


def unit(k):
    v = NONE.copy()
    v[k] = 1
    return v


# x: infected and confirmed, infected and refuted, infected and unverified, for positives (0-2) and for negatives (3-5); 6 stands for the constant 1.
def forms(cells):
    n1, n0 = sum(cells[:3]), sum(cells[3:])
    i1, i0, one = unit(0) + unit(1) + unit(2), unit(3) + unit(4) + unit(5), unit(6)
    return {"sensitivity": (i1, i1 + i0), "specificity": (n0 * one - i0, (n0 + n1) * one - i0 - i1), "prevalence": (i1 + i0, (n1 + n0) * one),
            "positive": (i1, n1 * one), "negative": (n0 * one - i0, n0 * one)}


def constraints(cells, se, sp):
    rows = []  # each row . (x, 1) <= 0
    for k in range(6):
        rows += [unit(k) - cells[k] * unit(6), -unit(k)]
    for at in (0, 3):
        c, r = cells[at], cells[at + 1]
        infected = unit(at) + unit(at + 1)
        free = (c + r) * unit(6) - infected
        free_negative = r * unit(6) - unit(at + 1)
        rows += [se[0] * infected - unit(at), unit(at) - se[1] * infected, sp[0] * free - free_negative, free_negative - sp[1] * free]
    return np.array(rows)


def extreme(cells, se, sp, measure, sign, equality=None):
    scale = sum(cells)
    cells = [c / scale for c in cells]
    top, bottom = forms(cells)[measure]
    a_eq, b_eq = [bottom], [1.0]
    if equality is not None:
        i1, i0 = unit(0) + unit(1) + unit(2), unit(3) + unit(4) + unit(5)
        a_eq, b_eq = a_eq + [(1 - equality) * i1 - equality * i0], b_eq + [0.0]
    found = optimize.linprog(sign * top, A_ub=constraints(cells, se, sp), b_ub=np.zeros(20), A_eq=np.array(a_eq), b_eq=b_eq, bounds=[(0, None)] * 7, method="highs",
                             options=dict(primal_feasibility_tolerance=1e-10, dual_feasibility_tolerance=1e-10))
    return sign * found.fun if found.status == 0 else None


def ends(p, se, sp):
    """The bounds as smooth functions of the six shares, for derivatives only."""
    def side(c, r, u):
        def v(s, t):
            raw = (c - (1 - t) * (c + r)) / (s + t - 1)
            return raw if 0 <= raw.real <= (c + r).real else (0 if raw.real < 0 else c + r)
        return v(se[1], sp[0]), v(se[0], sp[1]) + u
    l1, u1 = side(*p[:3])
    l0, u0 = side(*p[3:])
    n1, n0 = sum(p[:3]), sum(p[3:])
    return np.array([l1 / (l1 + u0), u1 / (u1 + l0), (n0 - u0) / (n0 - u0 + n1 - l1), (n0 - l0) / (n0 - l0 + n1 - u1),
                     (l1 + l0) / (n1 + n0), (u1 + u0) / (n1 + n0), l1 / n1, u1 / n1, 1 - u0 / n0, 1 - l0 / n0])


def errors(cells, se, sp):
    n = sum(cells)
    p = np.array(cells) / n
    step = 1e-30
    j = np.array([ends(p + 1j * step * np.eye(6)[k], se, sp).imag / step for k in range(6)]).T
    return np.sqrt(np.maximum(0, np.diag(j @ (np.diag(p) - np.outer(p, p)) @ j.T) / n))


def critical(width, error, confidence):
    if error == 0:
        return stats.norm.ppf(confidence)
    return optimize.brentq(lambda c: stats.norm.cdf(c + width / error) - stats.norm.cdf(-c) - confidence, -10, 10, xtol=1e-14, rtol=1e-14)


def cases():
    perfect = ((1, 1), (1, 1))
    yield (231, 32, 166, 27, 54, 140), *perfect
    yield (641, 462, 219, 0, 0, 902086), *perfect
    yield (2, 0, 0, 6, 704, 6477), *perfect
    yield (122, 102, 40, 2, 998, 58736), *perfect
    yield (122, 102, 40, 2, 998, 58736), (0.9, 0.98), (0.995, 1)
    yield (231, 32, 166, 27, 54, 140), (0.95, 0.95), (0.99, 0.99)
    yield (231, 32, 166, 27, 54, 140), (0.9, 1), (0.9, 1)
    yield (20, 20, 0, 10, 90, 0), (0.9, 0.9), (0.99, 0.99)
    yield (20, 20, 0, 10, 90, 0), *perfect
    yield (5, 0, 3, 1, 0, 9), *perfect
    random = np.random.default_rng(41)
    for k in range(90):
        cells = [int(v) for v in np.floor(10 ** random.uniform(0, 4, 6))]
        if k % 3 == 0:
            yield tuple(cells), *perfect
            continue
        se = np.sort(random.uniform(0.7, 1, 2)) if k % 3 == 1 else np.repeat(random.uniform(0.7, 1), 2)
        sp = np.sort(random.uniform(0.9, 1, 2)) if k % 3 == 1 else np.repeat(random.uniform(0.9, 1), 2)
        for at in (0, 3):  # counts that the stated accuracy can give
            m = cells[at] + cells[at + 1]
            infected = random.uniform(0.1, 0.9) * m
            cells[at] = int(np.clip(round(se.mean() * infected + (1 - sp.mean()) * (m - infected)), 0, m))
            cells[at + 1] = m - cells[at]
        yield tuple(cells), tuple(np.round(se, 4)), tuple(np.round(sp, 4))


def number(v):
    return "" if v is None else f"{v:.16g}"


def bounds_table():
    with open("tests/reference/accuracy-bounds-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        out = csv.writer(file, lineterminator="\n")
        head = "id confirmed refuted unverified_positives missed agreed unaudited sensitivity_low sensitivity_high specificity_low specificity_high".split()
        for m in MEASURES:
            head += [f"{m}_lower", f"{m}_upper", f"{m}_lower_error", f"{m}_upper_error", f"{m}_ci_lower", f"{m}_ci_upper"]
        out.writerow(head + ["at_sensitivity", "at_specificity_lower", "at_specificity_upper", "tolerance", "kind", "source"])
        written = 0
        for cells, se, sp in cases():
            values = [(extreme(cells, se, sp, m, 1), extreme(cells, se, sp, m, -1)) for m in MEASURES]
            if any(v is None for pair in values for v in pair):
                continue
            written += 1
            s = errors(cells, se, sp)
            row = [f"region-{written:02}", *cells, *se, *sp]
            for k, (low, high) in enumerate(values):
                e_low, e_high = (0 if v < 1e-9 or v > 1 - 1e-9 else e for v, e in ((low, s[2 * k]), (high, s[2 * k + 1])))
                c = critical(high - low, max(e_low, e_high), 0.95)
                inner = low > 1 - 1e-9 or high < 1e-9  # Wilson's limit there: in a unit test
                row += [number(v) for v in (low, high, e_low, e_high)] + (["", ""] if inner else [number(max(0, low - c * e_low)), number(min(1, high + c * e_high))])
            middle = round((values[0][0] + values[0][1]) / 2, 6)
            inside = values[0][0] + 1e-6 < middle < values[0][1] - 1e-6
            low, high = (extreme(cells, se, sp, "specificity", sign, middle) for sign in (1, -1)) if inside else (None, None)
            row += [middle if low is not None else "", number(low), number(high)]
            out.writerow(row + ["absolute:2e-9", "independent", f"{VERSION} linprog (HiGHS) on the Charnes-Cooper form; complex-step delta method; brentq (generators/bounds.py)"])
        print(written, "regions")


def critical_table():
    random = np.random.default_rng(42)
    grid = [(w, s, g) for w in (0, 1e-9, 1e-4, 0.01, 0.3, 1) for s in (1e-6, 0.003, 0.1) for g in (0.5, 0.9, 0.95, 0.999)]
    grid += [(float(f"{10 ** random.uniform(-5, 0):.6g}"), float(f"{10 ** random.uniform(-5, 0):.6g}"), round(random.uniform(0.3, 0.9999), 4)) for _ in range(40)]
    with open("tests/reference/imbens-manski-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow("id width error confidence critical tolerance kind source".split())
        for k, (w, s, g) in enumerate(grid, 1):
            out.writerow([f"{k:03}", w, s, g, number(critical(w, s, g)), "absolute:1e-11", "independent", f"{VERSION} brentq on norm.cdf (generators/bounds.py)"])


def proof_table():
    random = np.random.default_rng(43)
    grid = [(1322, 903408, 1), (0, 500, 1), (0, 10_000_000, 1), (1, 10_000_000, 1), (5, 5, 1), (1322, 903408, 48.2), (4, 5, 1), (30, 60000, 2.5)]
    grid += [(int(random.integers(0, n + 1)), n, float(round(1 + random.gamma(0.5, 3), 3))) for n in (int(10 ** random.uniform(0.5, 6)) for _ in range(40))]
    with open("tests/reference/specificity-proofs-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow("id positives tests design_effect confidence specificity positivity_upper tolerance kind source".split())
        for k, (x, n, d) in enumerate(grid, 1):
            for g in (0.95, 0.99):
                upper = 1.0 if x == n else stats.beta.isf(1 - g, x / d + 1, (n - x) / d)
                out.writerow([f"{k:02}-{g}", x, n, d, g, number(1 - x / n), number(upper), "relative:1e-9", "independent", f"{VERSION} beta.isf (generators/bounds.py)"])


bounds_table()
critical_table()
proof_table()
