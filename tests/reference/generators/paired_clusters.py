#!/usr/bin/python3
"""Difference of a proportion between two parts in which the same clusters stand.

    /usr/bin/python3 tests/reference/generators/paired_clusters.py     writes paired-clusters-generated.csv

The library sums influences of clusters; here every single trial is a row of a linear regression of its outcome on the part, and the standard error is
the cluster-robust sandwich of statsmodels without its small-sample factor, times k/(k - 1).
"""
import csv
import numpy as np
import scipy
import statsmodels
import statsmodels.api as sm
from scipy import stats

VERSION = f"statsmodels {statsmodels.__version__.split('+')[0]}, scipy {scipy.__version__}"
rng = np.random.default_rng(20261126)


def case(name, n1, x1, n2, x2, confidence):
    outcome, part, cluster = [], [], []
    for i, (a, b, c, d) in enumerate(zip(n1, x1, n2, x2)):
        for n, x, p in ((a, b, 0), (c, d, 1)):
            outcome += [1] * x + [0] * (n - x)
            part += [p] * n
            cluster += [i] * n
    outcome, part, cluster = np.array(outcome, float), np.array(part, float), np.array(cluster)
    fit = sm.OLS(outcome, sm.add_constant(part, has_constant="add")).fit(cov_type="cluster", cov_kwds={"groups": cluster, "use_correction": False})
    k = len(np.unique(cluster))
    difference, error = fit.params[1], np.sqrt(max(0, fit.cov_params()[1, 1]) * k / (k - 1))
    quantile = stats.t.ppf((1 + confidence) / 2, k - 1) if k < 30 else stats.norm.ppf((1 + confidence) / 2)
    return [name, *(" ".join(map(str, v)) for v in (n1, x1, n2, x2)), confidence, repr(float(difference)), repr(float(error)),
            repr(float(max(-1, difference - quantile * error))), repr(float(min(1, difference + quantile * error))), "absolute:1e-9", "independent",
            f"{VERSION} (generators/paired_clusters.py)"]


rows = []
for number in range(1, 71):
    k = [2, 3, 5, 6, 12, 29, 30, 45][number % 8]
    n1, n2 = rng.integers(1, 200, k), rng.integers(1, 200, k)
    if number % 5 == 0: n1[0], n2[-1] = 0, 0
    share = rng.beta(0.5, [0.7, 6, 40][number % 3], k)
    n1, n2 = [int(n) for n in n1], [int(n) for n in n2]
    x1 = [int(rng.binomial(n, s)) for n, s in zip(n1, share)]
    x2 = [int(rng.binomial(n, min(1, 1.3 * s))) for n, s in zip(n2, share)]
    rows.append(case(f"drawn-{number}", n1, x1, n2, x2, [0.95, 0.9, 0.99][number % 3]))
rows.append(case("no event", [10, 20, 30], [0, 0, 0], [5, 6, 7], [0, 0, 0], 0.95))
rows.append(case("only events after none", [10, 20, 30], [0, 0, 0], [5, 6, 7], [5, 6, 7], 0.95))
with open("tests/reference/paired-clusters-generated.csv", "w", newline="") as file:
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow("id,first_trials,first_events,second_trials,second_events,confidence,difference,error,lower,upper,tolerance,kind,source".split(","))
    writer.writerows(rows)
