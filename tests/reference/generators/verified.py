#!/usr/bin/python3
"""Partial verification in full: five figures, standard errors, covariances, strata, people; and one-sided limits.

    /usr/bin/python3 tests/reference/generators/verified.py     writes verified-accuracy-generated.csv, one-sided-accuracy-generated.csv

Runs independent: the multinomial of screen result and stratum and the binomials of verification, with complex-step derivatives of the
figures in their parameters (multivariate delta method). People: complex-step derivatives in the totals of the cells, then the squares
added up person by person. Neither is how the library does it.
"""
import csv
import numpy as np
import scipy
from scipy import stats

Z = stats.norm.ppf(0.975)
VERSION = f"scipy {scipy.__version__}"
MEASURES = ["sensitivity", "specificity", "prevalence", "positive", "negative"]


def figures(n1, a, n0, b):
    """n1 positives with confirmed share a; arrays of negatives n0 and missed shares b."""
    i1, f1, i0, t0 = a * n1, (1 - a) * n1, (n0 * b).sum(), (n0 * (1 - b)).sum()
    with np.errstate(all="ignore"):
        return np.array([i1 / (i1 + i0), t0 / (t0 + f1), (i1 + i0) / (n1 + n0.sum()), i1 / n1, t0 / n0.sum()])


def independent(n1, c, r, n0, x, g):
    """Values and covariance matrix by the delta method in (shares of result and stratum, a, b_h)."""
    n0, x, g = (np.asarray(v, float) for v in (n0, x, g))
    h, total = len(n0), n1 + n0.sum()
    m1, m0 = c + r, x + g
    theta = np.concatenate([[n1 / total], n0 / total, [c / m1], x / m0])
    cov = np.zeros((len(theta),) * 2)
    shares = theta[: h + 1]
    cov[: h + 1, : h + 1] = (np.diag(shares) - np.outer(shares, shares)) / total
    cov[h + 1, h + 1] = theta[h + 1] * (1 - theta[h + 1]) / m1
    for k in range(h):
        cov[h + 2 + k, h + 2 + k] = theta[h + 2 + k] * (1 - theta[h + 2 + k]) / m0[k]
    at = lambda t: figures(t[0] * total, t[h + 1], t[1 : h + 1] * total, t[h + 2 :])
    return at(theta), jacobian(at, theta, cov)


def jacobian(at, theta, cov):
    step = 1e-30
    rows = []
    for k in range(len(theta)):
        moved = theta.astype(complex)
        moved[k] += 1j * step
        rows.append(at(moved).imag / step)
    j = np.array(rows).T
    return j @ cov @ j.T


def by_people(people):
    """Values and covariance over people; people is a matrix of counts, one row each, cells in the library's order."""
    people = np.asarray(people, float)
    totals = people.sum(axis=0)

    def at(t):
        v = t[3:].reshape(-1, 3)
        return figures(t[0] + t[1] + t[2], t[0] / (t[0] + t[1]), v.sum(axis=1), v[:, 0] / (v[:, 0] + v[:, 1]))

    spread = people - people.mean(axis=0)
    cov = len(people) / (len(people) - 1) * sum(np.outer(s, s) for s in spread)
    return at(totals), jacobian(at, totals, cov)


def fields(values, cov, missed):
    out = []
    for k, v in enumerate(values):
        edge = not 1e-12 < v < 1 - 1e-12 or (MEASURES[k] == "prevalence" and missed == 0)
        if not np.isfinite(v):
            out += ["", "", "", "", "", ""]
            continue
        if edge:
            out += [f"{v:.16g}", "undefined", "", "", "", ""]
            continue
        s = np.sqrt(cov[k, k])
        lo = np.log(v / (1 - v)) - Z * s / (v * (1 - v))
        hi = np.log(v / (1 - v)) + Z * s / (v * (1 - v))
        out += [f"{w:.16g}" for w in (v, s, max(0, v - Z * s), min(1, v + Z * s), 1 / (1 + np.exp(-lo)), 1 / (1 + np.exp(-hi)))]
    for i in range(5):
        for j in range(i + 1, 5):
            both = all(0 < values[k] < 1 and not (k == 2 and missed == 0) for k in (i, j))
            # Independent where the formula gives exactly 0: then only rounding would be compared.
            out.append(f"{cov[i, j]:.16g}" if both and abs(cov[i, j]) > 1e-12 * np.sqrt(cov[i, i] * cov[j, j]) else "")
    return out


HEAD = ["id", "positives", "confirmed", "refuted", "negatives", "missed", "agreed", "people", "products"]
for m in MEASURES:
    HEAD += [m, f"{m}_error", f"{m}_wald_lower", f"{m}_wald_upper", f"{m}_logit_lower", f"{m}_logit_upper"]
HEAD += [f"cov_{MEASURES[i]}_{MEASURES[j]}" for i in range(5) for j in range(i + 1, 5)] + ["tolerance", "kind", "source"]


def cases():
    yield 429, 231, 32, [221], [27], [54]
    yield 2, 2, 0, [7187], [6], [704]
    yield 264, 122, 102, [59736], [2], [998]
    yield 264, 122, 102, [59736], [0], [1000]
    yield 300, 0, 40, [20000], [5], [995]
    yield 1000, 500, 500, [9_000_000], [1], [29_999]
    yield 12, 3, 1, [88], [1], [1]
    yield 263, 231, 32, [81], [27], [54]
    yield 300, 200, 60, [9000, 700], [2, 9], [400, 91]
    yield 300, 200, 60, [9000, 700], [0, 9], [400, 91]
    yield 40, 22, 11, [120, 80, 40, 10], [3, 4, 9, 5], [30, 20, 11, 5]
    random = np.random.default_rng(31)
    for _ in range(60):
        h = int(random.integers(1, 5))
        size = 10 ** random.uniform(0.5, 5)
        audited = random.integers(2, 400, h)
        missed = random.binomial(audited, random.beta(0.7, 4))
        unaudited = random.integers(0, int(size) * 50 + 1, h)
        verified = int(random.integers(2, 500))
        confirmed = int(random.binomial(verified, random.beta(2, 2)))
        yield (int(verified + random.integers(0, int(size) + 1)), confirmed, verified - confirmed,
               (audited + unaudited).tolist(), missed.tolist(), (audited - missed).tolist())


def people_cases():
    random = np.random.default_rng(32)
    for _ in range(60):
        h, n = int(random.integers(1, 4)), int(random.integers(5, 120))
        rates = np.concatenate([[0.6, 0.4, 0.5], np.tile([0.3, 1.5, 20], h)]) * random.gamma(1, 1, (n, 1))
        people = random.poisson(rates)
        people = people[people.sum(axis=1) > 0]
        totals = people.sum(axis=0)
        if len(people) < 2 or (totals[0] + totals[1]) == 0 or (totals[3:].reshape(-1, 3)[:, :2].sum(axis=1) == 0).any() or totals[3:].reshape(-1, 3)[:, 0].sum() == 0:
            continue
        yield people


def text(values):
    return " ".join(str(int(v)) for v in values)


with open("tests/reference/verified-accuracy-generated.csv", "w", newline="\n", encoding="utf-8") as file:
    out = csv.writer(file, lineterminator="\n")
    out.writerow(HEAD)
    for number, (n1, c, r, n0, x, g) in enumerate(cases(), 1):
        values, cov = independent(n1, c, r, n0, x, g)
        out.writerow([f"runs-{number:02}", n1, c, r, text(n0), text(x), text(g), "", "", *fields(values, cov, sum(x)), "relative:1e-9", "independent",
                      f"{VERSION}: multinomial delta method by complex-step derivatives (generators/verified.py)"])
    for number, people in enumerate(people_cases(), 1):
        values, cov = by_people(people)
        t = people.sum(axis=0)
        v = t[3:].reshape(-1, 3)
        out.writerow([f"people-{number:02}", t[:3].sum(), t[0], t[1], text(v.sum(axis=1)), text(v[:, 0]), text(v[:, 1]), len(people),
                      text((people.T @ people).ravel()), *fields(values, cov, v[:, 0].sum()), "relative:1e-9", "independent",
                      f"{VERSION}: squares of linearized figures added person by person, complex-step derivatives (generators/verified.py)"])

with open("tests/reference/one-sided-accuracy-generated.csv", "w", newline="\n", encoding="utf-8") as file:
    out = csv.writer(file, lineterminator="\n")
    out.writerow("id positives confirmed refuted negatives missed agreed confidence sensitivity specificity tolerance kind source".split())
    chosen = [(264, 122, 102, [59736], [0], [1000]), (264, 122, 102, [59736], [0], [12]), (30, 0, 0, [900], [0], [0]), (30, 20, 4, [900], [0], [0]),
              (0, 0, 0, [900], [0], [40]), (30, 20, 4, [900, 50], [0, 0], [40, 0]), (5, 5, 0, [95], [0], [95]), *cases()]
    for number, (n1, c, r, n0, x, g) in enumerate(chosen, 1):
        for confidence in (0.95, 0.6):
            tail = (1 - confidence) / (len(n0) + 1)
            low = lambda k, n: 0.0 if k == 0 else stats.beta.ppf(tail, k, n - k + 1)
            high = lambda k, n: 1.0 if k == n else stats.beta.isf(tail, k + 1, n - k)
            i1, f1 = n1 * low(c, c + r), n1 * high(r, c + r)
            i0 = sum(m * high(k, k + l) for m, k, l in zip(n0, x, g))
            t0 = sum(m * low(l, k + l) for m, k, l in zip(n0, x, g))
            out.writerow([f"{number:02}-{confidence}", n1, c, r, text(n0), text(x), text(g), confidence,
                          f"{i1 / (i1 + i0) if i1 + i0 > 0 else 0:.16g}", f"{t0 / (t0 + f1) if t0 + f1 > 0 else 0:.16g}", "relative:1e-8", "independent",
                          f"{VERSION} beta.ppf and beta.isf, each share at a tail of (1 - confidence)/(strata + 1) (generators/verified.py)"])
