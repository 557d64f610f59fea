#!/usr/bin/python3
"""Score limits of a partly verified screen on effective numbers of runs, from the people one by one.

    /usr/bin/python3 tests/reference/generators/robust.py     writes person-robust-accuracy-generated.csv and site-robust-accuracy-generated.csv

The library works on sums of products; here every person's own influence is computed (a jackknife-like derivative: complex steps in the
totals), its squares are added up, and each limit is found by root finding on the score statistic instead of by the quadratic's formula.
"""
import csv
import numpy as np
import scipy
from scipy import optimize, stats

VERSION = f"scipy {scipy.__version__}"
MEASURES = ["sensitivity", "specificity", "prevalence", "positive", "negative"]


def parts(t):
    v = t[3:].reshape(-1, 3)
    n0 = v.sum(axis=1)
    return t[0] / (t[0] + t[1]), (n0 * v[:, 0] / (v[:, 0] + v[:, 1])).sum() / n0.sum(), t[:3].sum() / t.sum()


def shares(t, fixed):
    """Confirmed and missed share with the strata's weights held fixed, and the share of positives."""
    v = t[3:].reshape(-1, 3)
    return np.array([t[0] / (t[0] + t[1]), (fixed * v[:, 0] / (v[:, 0] + v[:, 1])).sum(), t[:3].sum() / t.sum()])


def figures(t):
    a, b, w = parts(t)
    return np.array([a * w / (a * w + b * (1 - w)), (1 - b) * (1 - w) / ((1 - b) * (1 - w) + (1 - a) * w), a * w + b * (1 - w), a, 1 - b])


def over_people(function, people):
    """Variance of each figure: squares of every person's influence, times G/(G - 1)."""
    total = people.sum(axis=0)
    slopes = []
    for k in range(len(total)):
        moved = total.astype(complex)
        moved[k] += 1e-30j
        slopes.append(function(moved).imag / 1e-30)
    slopes = np.array(slopes)
    own = people @ slopes
    return (own**2).sum(axis=0) * len(people) / (len(people) - 1)


def wilson(p, m, z):
    score = lambda q: (p - q) * np.sqrt(m) - s * z * np.sqrt(q * (1 - q))
    out = []
    for s in (1, -1):
        if (s > 0 and p <= 0) or (s < 0 and p >= 1):
            out.append(0.0 if s > 0 else 1.0)
        else:
            low, high = (1e-300, min(p, 1 - 1e-13)) if s > 0 else (max(p, 1e-13), 1 - 1e-16)
            out.append(optimize.brentq(score, low, high, xtol=1e-300, rtol=8.9e-16, maxiter=1000))
    return out


def limits_of(people, confidence, sites=None):
    """Value, limits and variance of each figure; with sites (one row each) the shares take the larger of two variances, the quantile is the sites'."""
    people = np.asarray(people, float)
    g, t = len(people) if sites is None else len(sites), people.sum(axis=0)
    v = t[3:].reshape(-1, 3)
    fixed = v.sum(axis=1) / v.sum()
    values, whole = figures(t), over_people(figures, people if sites is None else sites)
    z = stats.t.ppf((1 + confidence) / 2, g - 1) if g < 30 else stats.norm.ppf((1 + confidence) / 2)
    p, var = shares(t, fixed), over_people(lambda x: shares(x, fixed), people)
    own = var if sites is None else over_people(lambda x: shares(x, fixed), sites)
    deciding = [*whole[:4], own[1]]
    var = np.maximum(var, own)
    columns = [[0, 1], [i for i in range(3, len(t)) if i % 3 != 2], list(range(len(t)))]
    limits = []
    for k in range(3):
        own = people[:, columns[k]].sum(axis=1)
        m = p[k] * (1 - p[k]) / var[k] if 1e-12 < p[k] < 1 - 1e-12 and var[k] > 0 else own.sum() ** 2 / (own**2).sum()
        limits.append((p[k], var[k], m, *wilson(p[k], m, z)))
    out = []
    for k, name in enumerate(MEASURES):
        (a, va, ma, al, au), (b, vb, mb, bl, bu), (w, vw, mw, wl, wu) = limits
        if name == "positive":
            low, high = al, au
        elif name == "negative":
            low, high = 1 - bu, 1 - bl
        elif name == "prevalence":
            total = w * w * va + (1 - w) ** 2 * vb + (a - b) ** 2 * vw
            k2 = np.sqrt(max(1, whole[k] / total)) if b > 0 else 1.0
            d, u = (w - wl, wu - w) if a >= b else (wu - w, w - wl)
            low = values[k] - k2 * np.sqrt((w * (a - al)) ** 2 + ((1 - w) * (b - bl)) ** 2 + ((a - b) * d) ** 2)
            high = values[k] + k2 * np.sqrt((w * (au - a)) ** 2 + ((1 - w) * (bu - b)) ** 2 + ((a - b) * u) ** 2)
        else:
            if name == "specificity":
                a, b, w, al, au, bl, bu, wl, wu, ma, mb = 1 - b, 1 - a, 1 - w, 1 - bu, 1 - bl, 1 - au, 1 - al, 1 - wu, 1 - wl, mb, ma
                va, vb = vb, va
            logit = lambda q: np.log(q / (1 - q))
            k2 = 1.0
            if a > 0 and b > 1e-12:
                own = values[k] * (1 - values[k])
                k2 = np.sqrt(max(1, whole[k] / own**2 / (va / a**2 + vb / b**2 + vw / (w * (1 - w)) ** 2)))
            side = lambda q, l, u, m: (np.log(q), np.log(q / l), np.log(u / q)) if q > 1e-12 else (np.log(0.5 / (m + 1)), 0.0, np.log(u * (m + 1) / 0.5))
            right, wrong = side(a, al, au, ma), side(b, bl, bu, mb)
            centre = right[0] - wrong[0] + logit(w)
            low = 1 / (1 + np.exp(-(centre - k2 * np.sqrt(right[1] ** 2 + wrong[2] ** 2 + (logit(w) - logit(wl)) ** 2)))) if a > 1e-12 else 0.0
            high = 1 / (1 + np.exp(-(centre + k2 * np.sqrt(right[2] ** 2 + wrong[1] ** 2 + (logit(wu) - logit(w)) ** 2)))) if b > 1e-12 else 1.0
        low, high = min(max(low, 0), values[k]), max(min(high, 1), values[k])
        out.append((values[k], low, high, deciding[k]))
    return out


def row(people, confidence):
    return [f"{x:.16g}" for figure in limits_of(people, confidence) for x in figure[:3]]


def site_row(people, sites, confidence):
    """The sites' limits, never inside the people's, where there are five sites or more and their variance is the larger one; else the people's."""
    out = []
    for one, many in zip(limits_of(people, confidence), limits_of(people, confidence, sites)):
        decide = len(sites) >= 5 and many[3] > one[3] and 1e-12 < one[0] < 1 - 1e-12
        low, high = (min(one[1], many[1]), max(one[2], many[2])) if decide else one[1:3]
        out += [f"{one[0]:.16g}", f"{low:.16g}", f"{high:.16g}", "sites" if decide else "persons"]
    return out


def people_cases():
    random = np.random.default_rng(77)
    made = 0
    while made < 64:
        h, n = int(random.integers(1, 4)), int(random.integers(5, 200))
        rates = np.concatenate([[0.5, 0.4, 0.4], np.tile([random.uniform(0, 0.12), 1.5, 20], h) * np.repeat(random.uniform(0.2, 2, h), 3)])
        people = random.poisson(rates * random.gamma(1, 1, (n, 1)))
        people = people[people.sum(axis=1) > 0]
        t = people.sum(axis=0)
        v = t[3:].reshape(-1, 3)
        if len(people) < 2 or t[0] == 0 or (v[:, 1] == 0).any():
            continue
        made += 1
        yield people


def site_cases():
    """People at sites that differ in who is infected and how well the screen does: by much, a little or not at all."""
    random = np.random.default_rng(78)
    made = 0
    while made < 64:
        h, n, g = int(random.integers(1, 4)), int(random.integers(40, 300)), int(random.integers(2, 36))
        apart = (0.05, 1.0, 3.0)[made % 3]
        site = random.integers(0, g, n)
        rates = np.concatenate([[0.5, 0.4, 0.4], np.tile([random.uniform(0.02, 0.12), 1.5, 20], h)])
        factors = random.gamma(1 / apart, apart, (g, len(rates)))
        people = random.poisson(rates * factors[site] * random.gamma(2, 0.5, (n, 1)))
        sites = np.array([people[site == one].sum(axis=0) for one in range(g)])
        people, sites = people[people.sum(axis=1) > 0], sites[sites.sum(axis=1) > 0]
        t = people.sum(axis=0)
        v = t[3:].reshape(-1, 3)
        if len(sites) < 2 or t[0] == 0 or t[1] == 0 or (v[:, 1] == 0).any() or v[:, 0].sum() == 0:
            continue
        made += 1
        yield people, sites


def text(values):
    return " ".join(str(int(x)) for x in values)


with open("tests/reference/person-robust-accuracy-generated.csv", "w", newline="\n", encoding="utf-8") as file:
    out = csv.writer(file, lineterminator="\n")
    out.writerow(["id", "positives", "confirmed", "refuted", "negatives", "missed", "agreed", "people", "products", "confidence",
                  *[m + end for m in MEASURES for end in ("", "_lower", "_upper")], "tolerance", "kind", "source"])
    for number, people in enumerate(people_cases(), 1):
        confidence = (0.95, 0.9, 0.99)[number % 3]
        t = people.sum(axis=0)
        v = t[3:].reshape(-1, 3)
        out.writerow([f"{number:02}", t[:3].sum(), t[0], t[1], text(v.sum(axis=1)), text(v[:, 0]), text(v[:, 1]), len(people), text((people.T @ people).ravel()),
                      confidence, *row(people, confidence), "relative:1e-8", "independent",
                      f"{VERSION}: influences of each person by complex steps, score limits by root finding, whose roots near 1 keep fewer digits: hence 1e-8 (generators/robust.py)"])

with open("tests/reference/site-robust-accuracy-generated.csv", "w", newline="\n", encoding="utf-8") as file:
    out = csv.writer(file, lineterminator="\n")
    out.writerow(["id", "positives", "confirmed", "refuted", "negatives", "missed", "agreed", "people", "products", "sites", "site_products", "confidence",
                  *[m + end for m in MEASURES for end in ("", "_lower", "_upper", "_clusters")], "tolerance", "kind", "source"])
    for number, (people, sites) in enumerate(site_cases(), 1):
        confidence = (0.95, 0.9, 0.99)[number % 3]
        t = people.sum(axis=0)
        v = t[3:].reshape(-1, 3)
        out.writerow([f"{number:02}", t[:3].sum(), t[0], t[1], text(v.sum(axis=1)), text(v[:, 0]), text(v[:, 1]), len(people), text((people.T @ people).ravel()),
                      len(sites), text((sites.T @ sites).ravel()), confidence, *site_row(people, sites, confidence), "relative:1e-7", "independent",
                      f"{VERSION}: influences of each person and of each site by complex steps, score limits by root finding, whose roots near 1 keep fewer digits, and a limit near 0 is what a subtraction leaves: hence 1e-7 (generators/robust.py)"])
