#!/usr/bin/python3
"""Reference values of the beta-binomial fit and of what it makes of single lots, at 30 digits.

Run from the repository root with Debian's python3, python3-mpmath, python3-numpy and python3-scipy:

    /usr/bin/python3 tests/reference/generators/beta_binomial.py

It writes tests/reference/beta-binomial-generated.csv and lot-posteriors-generated.csv. The likelihood is written with logarithms of the beta
function; its top is sought by scipy from several starts and then solved for with mpmath's Newton steps on digamma functions (the library: sums of
reciprocals, a lattice of spreads). Tails and limits of single lots are scipy's beta distribution.
"""
import csv
import random

import mpmath as mp
import numpy as np
import scipy
from scipy import optimize, special, stats

mp.mp.dps = 30
random.seed(20261127)
np.random.seed(20261127)
TOOL = f"mpmath {mp.__version__} at 30 digits from scipy {scipy.__version__} (generators/beta_binomial.py)"


def text(value):
    return mp.nstr(mp.mpf(value), 17, strip_zeros=True) if value not in (0, 1) else str(value)


def fit(y, n):
    y, n = np.array(y, float), np.array(n, float)

    def loss(t):
        m, s = 1 / (1 + np.exp(-t[0])), np.exp(-t[1])
        return -np.sum(special.betaln(y + m * s, n - y + (1 - m) * s) - special.betaln(m * s, (1 - m) * s))

    pooled = y.sum() / n.sum()
    best = min((optimize.minimize(loss, [np.log(pooled / (1 - pooled)), s], method="Nelder-Mead", options={"xatol": 1e-9, "fatol": 1e-11, "maxiter": 4000})
                for s in (-9, -5, -2, 0, 2)), key=lambda r: r.fun)
    if best.x[1] < -16:
        return None
    a = mp.mpf(1 / (1 + np.exp(-best.x[0]))) * mp.exp(-mp.mpf(best.x[1]))
    b = mp.exp(-mp.mpf(best.x[1])) - a
    pairs = [(int(i), int(j)) for i, j in zip(y, n)]

    def gradient(la, lb):
        a, b = mp.exp(la), mp.exp(lb)
        return [a * sum(mp.digamma(a + i) - mp.digamma(a) - mp.digamma(a + b + j) + mp.digamma(a + b) for i, j in pairs),
                b * sum(mp.digamma(b + j - i) - mp.digamma(b) - mp.digamma(a + b + j) + mp.digamma(a + b) for i, j in pairs)]

    solution = mp.findroot(gradient, (mp.log(a), mp.log(b)), tol=1e-36, maxsteps=40)
    a, b = mp.exp(solution[0]), mp.exp(solution[1])
    log = sum(mp.loggamma(j + 1) - mp.loggamma(i + 1) - mp.loggamma(j - i + 1) + mp.log(mp.beta(a + i, b + j - i)) - mp.log(mp.beta(a, b)) for i, j in pairs)
    alike = sum(mp.loggamma(j + 1) - mp.loggamma(i + 1) - mp.loggamma(j - i + 1) for i, j in pairs) + mp.mpf(y.sum()) * mp.log(mp.mpf(y.sum()) / mp.mpf(n.sum())) \
        + mp.mpf((n - y).sum()) * mp.log(mp.mpf((n - y).sum()) / mp.mpf(n.sum()))
    assert log > alike
    return a, b, log


rows, posteriors = [], []
while len(rows) < 55:
    lots = random.choice([2, 5, 8, 20, 60])
    mean, s = random.choice([0.0005, 0.002, 0.02, 0.2, 0.6]), random.choice([2, 15, 150, 1500])
    size = random.choice([10, 100, 2000, 20000])
    n = [random.randint(1, size) for _ in range(lots)]
    p = np.random.beta(mean * s, (1 - mean) * s, lots)
    y = [int(v) for v in np.random.binomial(n, p)]
    if sum(y) == 0 or sum(y) == sum(n) or all(i in (0, j) for i, j in zip(y, n)):
        continue
    score = sum(i * (i - 1) / (sum(y) / sum(n)) + (j - i) * (j - i - 1) / (1 - sum(y) / sum(n)) - j * (j - 1) for i, j in zip(y, n))
    if score <= 0:
        continue  # at the edge of no spread; the library's own tests hold that case
    found = fit(y, n)
    if found is None:
        continue
    a, b, log = found
    name = f"fit-{len(rows) + 1}"
    rows.append([name, " ".join(map(str, y)), " ".join(map(str, n)), text(a), text(b), text(a / (a + b)), text(1 / (a + b + 1)), text(log), "relative:1e-8", "independent", TOOL])
    factor, i = random.choice([1, 2, 2, 5]), random.randrange(lots)
    limit = mp.mpf(factor) * sum(y) / sum(n)
    A, B = a + y[i], b + n[i] - y[i]
    own = stats.beta(float(A), float(B))
    above = own.sf(float(limit)) if limit < 1 else 0.0
    ends = [repr(float(own.ppf(q))) for q in (0.025, 0.975)] if A > 0.05 else ["", ""]
    posteriors.append([f"posterior-{len(posteriors) + 1}", " ".join(map(str, y)), " ".join(map(str, n)), i, factor, text(A / (A + B)), *ends,
                       repr(float(above)) if above == 0 or above > 1e-12 else "", "relative:1e-7", "independent", TOOL])

for name, head, data in (("beta-binomial", "id events trials alpha beta mean correlation log_likelihood", rows),
                         ("lot-posteriors", "id events trials lot factor mean lower upper above", posteriors)):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(head.split() + ["tolerance", "kind", "source"])
        out.writerows(data)
