#!/usr/bin/python3
"""Reference values for corrected prevalence and predictive values that carry uncertainty.

Run from the repository root with Debian's python3, python3-scipy and python3-mpmath:

    /usr/bin/python3 tests/reference/generators/prevalence.py

It writes prevalence-posteriors-generated.csv, lang-reiczigel-generated.csv, exact-prevalence-generated.csv and
matched-distributions-generated.csv in tests/reference.

Nothing is shared with the library. The posterior of prevalence, sensitivity and specificity is the finite mixture of
beta distributions over j true positives among the positives and k false negatives among the negatives (the library
uses quadrature over logits); where one accuracy is exact its beta integral is a plain power. Lang and Reiczigel's
formula is worked at 40 digits. Exact intervals come from scipy's beta quantiles, Blaker's from a scan of its
acceptability over p in steps, refined by bisection (the library goes from jump to jump).
"""
import csv
import random

import mpmath as mp
import numpy as np
import scipy
from scipy import optimize, special, stats

mp.mp.dps = 40
SCIPY = f"scipy {scipy.__version__}"
random.seed(20261125)


def out(name, header, rows):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header.split())
        writer.writerows(rows)


def num(value):
    return "undefined" if value is None else repr(float(value))


def matched(value, lower, upper, confidence=0.95):
    """Mode at the value, equal-tailed interval as wide as the stated one."""
    if value == 1:
        return float(np.log((1 - confidence) / 2) / np.log(lower)) + 1, 1.0
    if value == 0:
        return 1.0, float(np.log((1 - confidence) / 2) / np.log1p(-upper)) + 1
    tail = (1 - confidence) / 2

    def excess(log_n):
        n = np.exp(log_n)
        a, b = value * n + 1, (1 - value) * n + 1
        return stats.beta.ppf(1 - tail, a, b) - stats.beta.ppf(tail, a, b) - (upper - lower)
    n = np.exp(optimize.brentq(excess, -10, 25, xtol=1e-14, rtol=1e-15))
    return value * n + 1, (1 - value) * n + 1


def read(text):
    """('exact', value) | ('beta', successes, failures), and the plain value."""
    if "[" in text:
        value, lower, upper = (float(part) for part in text.rstrip("]").replace("[", ",").split(","))
        a, b = matched(value, lower, upper)
        return ("beta", a - 1, b - 1), value
    if "/" in text:
        s, n = (int(part) for part in text.split("/"))
        return ("beta", s, n - s), s / n
    return ("exact", float(text)), float(text)


# --- posterior ---
class Mixture:
    """Weights over components Beta(a_i, b_i)."""

    def __init__(self, weights, a, b):
        order = np.argsort(-weights)
        keep = order[: np.searchsorted(np.cumsum(weights[order]), 1 - 1e-12) + 1]
        self.w, self.a, self.b = weights[keep], a[keep], b[keep]
        self.w = self.w / self.w.sum()
        self.mean = float(np.sum(self.w * self.a / (self.a + self.b)))
        m = self.a / (self.a + self.b)
        v = m * (1 - m) / (self.a + self.b + 1)
        self.sd = float(np.sqrt(np.sum(self.w * (v + (m - self.mean) ** 2))))

    def cdf(self, p):
        return float(np.sum(self.w * special.betainc(self.a, self.b, p)))

    def pdf(self, p):
        return float(np.sum(self.w * np.exp((self.a - 1) * np.log(p) + (self.b - 1) * np.log1p(-p) - special.betaln(self.a, self.b))))

    def quantile(self, q):
        f = lambda u: self.cdf(special.expit(u)) - q
        if f(36) <= 0:
            # Above the double next to 1.
            return 1.0
        return float(special.expit(optimize.brentq(f, -700, 36, xtol=1e-13, rtol=1e-14)))

    def shortest(self, confidence):
        left = 1 - confidence
        difference = lambda s: self.pdf(self.quantile(s)) - self.pdf(self.quantile(s + confidence))
        low, high = left * 1e-7, left * (1 - 1e-7)
        if self.quantile(high + confidence) == 1:
            # All the mass lies against 1, where the density is highest.
            return self.quantile(left), 1.0
        if difference(low) >= 0:
            return 0.0, self.quantile(confidence)
        if difference(high) <= 0:
            return self.quantile(left), 1.0
        s = optimize.brentq(difference, low, high, xtol=left * 1e-9)
        return self.quantile(s), self.quantile(s + confidence)


def merge(index, weights):
    """Sums weights of equal (integer) component indices."""
    low = index.min()
    return np.arange(low, index.max() + 1), np.bincount((index - low).ravel(), weights.ravel())


def posterior(x, n, se, sp, prior):
    (ap, bp), (as_, bs), (ac, bc) = prior
    j = np.arange(x + 1)[:, None]
    k = np.arange(n - x + 1)[None, :]
    if x > 400 or n - x > 4000:
        # Only false negatives that could matter: 1e-18 of the largest weight lies far inside (checked below).
        k = np.arange(min(n - x, 6000) + 1)[None, :]
    y = n - x

    def log_choose(m, i):
        return special.gammaln(m + 1) - special.gammaln(i + 1) - special.gammaln(m - i + 1)
    log_w = log_choose(x, j) + log_choose(y, k) + special.betaln(ap + j + k, bp + n - j - k)

    def term(kind, successes, failures, a0, b0):
        if kind[0] == "exact":
            v = kind[1]
            return special.xlogy(successes, v) + special.xlog1py(failures, -v), None
        a, b = a0 + kind[1] + successes, b0 + kind[2] + failures
        return special.betaln(a, b), (a0 + kind[1], b0 + kind[2])
    se_term, se_base = term(se, j + 0 * k, k + 0 * j, as_, bs)
    sp_term, sp_base = term(sp, y - k + 0 * j, x - j + 0 * k, ac, bc)
    log_w = log_w + se_term + sp_term
    w = np.exp(log_w - log_w.max())
    edge = w[:, -1].max() if k.shape[1] < y + 1 else 0
    assert edge < 1e-17, edge
    w /= w.sum()
    m, wm = merge(j + k, w)
    result = {"prevalence": Mixture(wm, ap + m.astype(float), bp + n - m.astype(float))}
    flat_j, flat_k = np.broadcast_arrays(j, k)
    if se_base:
        result["sensitivity"] = Mixture(w.ravel(), se_base[0] + flat_j.ravel().astype(float), se_base[1] + flat_k.ravel())
    if sp_base:
        result["specificity"] = Mixture(w.ravel(), sp_base[0] + (y - flat_k).ravel().astype(float), sp_base[1] + (x - flat_j).ravel())
    return result


def posteriors():
    flat = ("1,1", "1,1", "1,1")
    cases = [
        (50, 3330, "103/122", "399/401", flat, 0.95), (50, 3330, "0.8", "0.995", flat, 0.95), (50, 3330, "103/122", "0.995", flat, 0.95),
        (50, 3330, "0.8", "399/401", flat, 0.95), (50, 3330, "0.84[0.77,0.90]", "399/401", flat, 0.95), (50, 3330, "103/122", "0.995[0.982,0.999]", flat, 0.95),
        (50, 3330, "103/122", "1[0.99,1]", flat, 0.9), (0, 20, "10/10", "20/20", flat, 0.95), (20, 20, "10/10", "20/20", flat, 0.95),
        (0, 1, "1/1", "1/1", flat, 0.95), (1, 1, "1/1", "1/1", flat, 0.95), (1, 2, "2/3", "2/3", flat, 0.95), (5, 10, "0.9", "0.9", flat, 0.95),
        (2, 1000, "160/200", "995/1000", flat, 0.95), (1, 3330, "0.8", "0.99", flat, 0.95), (120, 1000, "160/200", "980/1000", flat, 0.95),
        (700, 1000, "95/100", "190/200", flat, 0.95), (81, 263, "61/97", "2391/2400", flat, 0.95), (960, 1000, "180/200", "95/100", flat, 0.95),
        (1322, 903408, "61/97", "2391/2400", flat, 0.95), (1322, 903408, "61/97", "0.999", flat, 0.95), (1322, 903408, "610/970", "500000/500100", flat, 0.95),
        (10, 100000, "400/500", "9990/10000", flat, 0.95), (90, 100000, "400/500", "9990/10000", flat, 0.99), (300, 100000, "40/50", "99900/100000", flat, 0.95),
        (50, 3330, "103/122", "399/401", ("0.5,0.5", "0.5,0.5", "0.5,0.5"), 0.95), (0, 500, "40/50", "300/300", ("0.5,0.5", "0.5,0.5", "0.5,0.5"), 0.95),
        (50, 3330, "103/122", "399/401", ("2,50", "1,1", "1,1"), 0.95), (50, 3330, "0/0", "0/0", ("1,1", "20,5", "100,1"), 0.95),
        (2, 60, "8/9", "19/20", ("0.1,0.1", "1,1", "0.5,0.5"), 0.95), (0, 30, "8/9", "19/20", ("0.2,3", "0.1,0.1", "0.1,0.1"), 0.95), (3, 9, "1/1", "1/1", ("1,1", "0.3,0.3", "0.3,0.3"), 0.9),
        (300, 1000, "2/2", "2/2", flat, 0.95), (12, 400, "30/40", "390/400", ("2,198", "5,2", "50,1"), 0.8), (300, 1000, "20/30", "25/30", flat, 0.95), (40, 100, "6/10", "6/10", flat, 0.95),
        (10, 100, "9/10", "9/10", flat, 0.5), (10, 100, "9/10", "9/10", flat, 0.999), (33, 100, "1", "1", flat, 0.95), (0, 100, "1", "0.98", flat, 0.95),
        (100, 100, "0.9", "1", flat, 0.95), (3, 50, "97/100", "49/50", ("1,3", "1,1", "1,1"), 0.95),
    ]
    for _ in range(22):
        n = int(10 ** random.uniform(0.3, 3.6))
        x = random.randint(0, n) if random.random() < 0.5 else random.randint(0, max(1, n // 30))
        n1, n0 = int(10 ** random.uniform(0.5, 3)), int(10 ** random.uniform(0.5, 3.5))
        s1, s0 = round(n1 * random.uniform(0.6, 1)), round(n0 * random.uniform(0.8, 1))
        if s1 / n1 + s0 / n0 <= 1.02 or x * (n - x) > 3e6:
            continue
        cases.append((x, n, f"{s1}/{n1}", f"{s0}/{n0}", flat, random.choice([0.8, 0.9, 0.95, 0.99])))
    rows = []
    for x, n, se_text, sp_text, prior, confidence in cases:
        if se_text == "0/0":
            continue
        se, sp = read(se_text)[0], read(sp_text)[0]
        weights = [tuple(float(part) for part in text.split(",")) for text in prior]
        for parameter, mixture in posterior(x, n, se, sp, weights).items():
            tail = (1 - confidence) / 2
            # Mean and deviation are closed forms; quantiles of a mixture of very many components would take minutes.
            ends = ["", "", "", "", ""]
            if len(mixture.w) < 6000:
                ends = [num(mixture.quantile(q)) for q in (0.5, tail, 1 - tail)] + [num(end) for end in mixture.shortest(confidence)]
            rows.append([
                f"{parameter}-{x}-{n}-{se_text}-{sp_text}-{'-'.join(prior)}-{confidence}", parameter, x, n, se_text, sp_text, *prior, confidence,
                num(mixture.mean), num(mixture.sd), *ends, "absolute:1e-7", "independent",
                f"{SCIPY}: finite mixture of beta distributions (generators/prevalence.py)"])
    out("prevalence-posteriors",
        "id parameter successes trials sensitivity specificity prior_prevalence prior_sensitivity prior_specificity confidence mean standard_deviation median "
        "lower upper shortest_lower shortest_upper tolerance kind source", rows)


# --- Lang and Reiczigel ---
CASES = [
    (50, 3330, "103/122", "399/401"), (0, 20, "10/10", "20/20"), (20, 20, "10/10", "20/20"), (1, 1, "1/1", "1/1"), (2, 1000, "160/200", "995/1000"),
    (120, 1000, "160/200", "980/1000"), (700, 1000, "95/100", "190/200"), (81, 263, "61/97", "2391/2400"), (1322, 903408, "61/97", "2391/2400"),
    (5, 50, "30/40", "48/50"), (960, 1000, "180/200", "95/100"), (10, 100000, "400/500", "9990/10000"), (50, 3330, "0.8", "0.995"),
    (50, 3330, "0.8", "399/401"), (50, 3330, "103/122", "0.995"), (50, 3330, "0.84[0.77,0.90]", "399/401"), (50, 3330, "0.84[0.77,0.90]", "0.995[0.982,0.999]"),
    (0, 500, "40/50", "300/300"), (3, 1000000, "45/50", "999/1000"), (40, 100, "7/10", "6/10"), (33, 100, "1", "1"), (0, 100, "1", "0.98"), (100, 100, "0.9", "1"),
    (2400, 40000, "610/970", "1190/1200"), (7, 9, "3/4", "5/6"),
]


def lang_reiczigel():
    rows = []
    for x, n, se_text, sp_text in CASES:
        for confidence in ("0.9", "0.95", "0.99"):
            z = mp.sqrt(2) * mp.erfinv(mp.mpf(float(confidence)))

            def added(kind):
                if kind[0] == "exact":
                    return mp.mpf(kind[1]), mp.mpf(0)
                size = mp.mpf(kind[1]) + mp.mpf(kind[2]) + 2
                value = (mp.mpf(kind[1]) + 1) / size
                return value, value * (1 - value) / size
            (se, vse), (sp, vsp) = added(read(se_text)[0]), added(read(sp_text)[0])
            size = n + z ** 2
            p = (x + z ** 2 / 2) / size
            youden = se + sp - 1
            centre = (p + sp - 1) / youden
            shift = 2 * z ** 2 * (centre * vse - (1 - centre) * vsp)
            error = mp.sqrt(p * (1 - p) / size + vse * centre ** 2 + vsp * (1 - centre) ** 2) / youden
            lower, upper = centre + shift - z * error, centre + shift + z * error
            rows.append([f"{x}-{n}-{se_text}-{sp_text}-{confidence}", x, n, se_text, sp_text, confidence, num(centre), num(shift), num(error), num(lower), num(upper), "", "",
                         "absolute:1e-9" if "[" in se_text + sp_text else "absolute:1e-13", "independent",
                         f"mpmath {mp.__version__} at 40 digits (generators/prevalence.py); the formula from memory"])
    out("lang-reiczigel", "id successes trials sensitivity specificity confidence centre shift standard_error unclipped_lower unclipped_upper lower upper tolerance kind source", rows)


# --- exact intervals, mapped ---
def clopper_pearson(x, n, confidence):
    tail = (1 - confidence) / 2
    return (0.0 if x == 0 else stats.beta.ppf(tail, x, n - x + 1)), (1.0 if x == n else stats.beta.isf(tail, x + 1, n - x))


def blaker(x, n, confidence):
    """Scan of the acceptability: the smaller tail at x plus the largest opposite tail that does not exceed it."""
    def acceptable(p):
        up, down = stats.binom.sf(x - 1, n, p), stats.binom.cdf(x, n, p)
        if up <= down:
            k = stats.binom.ppf(up, n, p)
            while k >= 0 and stats.binom.cdf(k, n, p) > up:
                k -= 1
            return up + (stats.binom.cdf(k, n, p) if k >= 0 else 0)
        k = stats.binom.isf(down, n, p) - 2
        while k <= n and stats.binom.sf(k - 1, n, p) > down:
            k += 1
        return down + (stats.binom.sf(k - 1, n, p) if k <= n else 0)

    level = 1 - confidence
    cp = clopper_pearson(x, n, confidence)

    def end(outer, inner):
        if acceptable(outer) >= level:
            return outer
        grid = np.linspace(outer, inner, 4001)
        index = next(i for i, p in enumerate(grid) if acceptable(p) >= level)
        out_, in_ = grid[index - 1], grid[index]
        for _ in range(60):
            middle = (out_ + in_) / 2
            if acceptable(middle) >= level:
                in_ = middle
            else:
                out_ = middle
        return in_
    return (0.0 if x == 0 else end(cp[0], x / n)), (1.0 if x == n else end(cp[1], x / n))


def exact():
    rows = []
    cases = [(x, n) for n in (1, 2, 5, 10, 29, 100) for x in sorted({0, 1, n // 3, n // 2, n - 1, n}) if 0 <= x <= n]
    cases += [(0, 1000), (3, 1000), (50, 3330), (120, 1000), (960, 1000), (81, 263), (5, 50), (7, 34), (1, 10000), (40, 20000), (1322, 903408)]
    accuracies = [("1", "1"), ("0.8", "0.995"), ("61/97", "2391/2400"), ("0.6", "0.55")]
    for method, function in (("ClopperPearson", clopper_pearson), ("Blaker", blaker)):
        for index, (x, n) in enumerate(cases):
            if method == "Blaker" and n > 100000:
                continue
            for confidence in ("0.95",) if index % 3 else ("0.9", "0.99"):
                ends = function(x, n, float(confidence))
                se_text, sp_text = accuracies[index % len(accuracies)]
                se, sp = read(se_text)[1], read(sp_text)[1]
                lower, upper = (min(1, max(0, (end + sp - 1) / (se + sp - 1))) for end in ends)
                point = min(1, max(0, (x / n + sp - 1) / (se + sp - 1)))
                rows.append([f"{method}-{x}-{n}-{se_text}-{sp_text}-{confidence}", x, n, se_text, sp_text, confidence, method, num(min(lower, point)), num(max(upper, point)),
                             "absolute:1e-11" if method == "ClopperPearson" else "absolute:1e-9", "independent",
                             f"{SCIPY}: beta quantiles or a scan of Blaker's acceptability (generators/prevalence.py)"])
    out("exact-prevalence", "id successes trials sensitivity specificity confidence interval lower upper tolerance kind source", rows)


# --- beta distributions matched to a value with its interval ---
def matches():
    rows = []
    cases = [(0.73, 0.65, 0.80), (0.5, 0.2, 0.8), (0.995, 0.982, 0.999), (0.998, 0.99, 1), (0.004, 0.002, 0.008), (1, 0.994, 1), (0, 0, 0.01), (0.9, 0.1, 1),
             (0.999, 0.99, 1), (0.0001, 0.00005, 0.0002), (0.3, 0.29999, 0.30001), (0.7, 0.69, 0.71)]
    while len(cases) < 60:
        value = random.choice([random.uniform(0.02, 0.98), random.uniform(0.001, 0.02), random.uniform(0.98, 0.999)])
        lower, upper = value - random.uniform(0.05, 1) * min(value, 0.4), value + random.uniform(0.05, 1) * min(1 - value, 0.4)
        cases.append((round(value, 4), round(lower, 5), round(upper, 5)))
    for value, lower, upper in cases:
        for confidence in (0.95,) if len(rows) % 4 else (0.9, 0.99):
            if upper - lower > 0.97 * confidence:
                continue
            a, b = matched(value, lower, upper, confidence)
            rows.append([f"{value}-{lower}-{upper}-{confidence}", value, lower, upper, confidence, num(a), num(b), "relative:1e-7", "independent",
                         f"{SCIPY}: brentq on the width between beta quantiles (generators/prevalence.py)"])
    out("matched-distributions", "id value lower upper confidence alpha beta tolerance kind source", rows)


matches()
lang_reiczigel()
exact()
posteriors()
