#!/usr/bin/python3
"""Independent values for sequential alarms: evidence, cumulative sums, sequential test.

Written from the definitions, not from the C#: products with 60 digits (mpmath), average run lengths from dense linear systems (numpy, scipy),
the sequential test by a plain recursion over the number of events. Writes tests/reference/*-generated.csv.
Run with Debian's python3: /usr/bin/python3 tests/reference/generators/sequential.py [part ...]
"""
import math
import os
import sys

import mpmath as mp
import numpy as np
import scipy
import scipy.integrate
import scipy.linalg
import scipy.stats

mp.mp.dps = 60
HERE = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..")
MP = f"mpmath {mp.__version__} (generators/sequential.py)"
SP = f"scipy {scipy.__version__} (generators/sequential.py)"


def write(name, header, rows):
    with open(os.path.join(HERE, name + "-generated.csv"), "w", newline="\n", encoding="utf-8") as file:
        file.write(header + ",tolerance,kind,source\n")
        for row in rows:
            file.write(",".join("" if x is None else x if isinstance(x, str) else repr(x) for x in row) + "\n")


def number(x):
    return repr(float(x))


# --- evidence valid at any time -------------------------------------------------------------------------------------------------------------

def evidence_after_each(events):
    """The average over theta of the products of likelihood ratios, by the definition, after each event."""
    products = [mp.mpf(1)] * 6
    out = []
    for p, hit in events:
        p = mp.mpf(p)
        if 0 < p < 1:
            for i in range(6):
                theta = mp.mpf(2) ** (i + 1)
                q = theta * p / (1 - p + theta * p)
                products[i] *= q / p if hit else (1 - q) / (1 - p)
        out.append(mp.fsum(products) / 6)
    return out


def evidence():
    rng = np.random.default_rng(20261125)
    rows = []
    for case in range(70):
        n = int(rng.integers(1, 60)) if case < 60 else 400
        scale = rng.choice([1e-6, 1e-3, 0.05, 0.3, 0.7, 0.999])
        ps = [float(min(1.0, scale * rng.uniform(0.3, 1.0))) for _ in range(n)]
        if case % 7 == 0:
            ps[0] = 0.0 if case % 2 else 1.0
        odds = rng.choice([1.0, 3.0, 20.0])
        hits = []
        for p in ps:
            q = p if p in (0.0, 1.0) else odds * p / (1 - p + odds * p)
            hits.append(int(rng.uniform() < q))
        lots = int(rng.choice([1, 3, 60]))
        level = float(rng.choice([0.01, 0.05]))
        path = evidence_after_each(zip(ps, hits))
        informative = [i for i, p in enumerate(ps) if 0 < p < 1]
        alarm = next((i for i in informative if path[i] >= lots / mp.mpf(level)), None)
        rows.append((f"case-{case}", " ".join(map(repr, ps)), " ".join(map(str, hits)), str(lots), number(level),
                     number(mp.log(path[-1])), number(max(mp.mpf(0), mp.log(max(path)))),
                     "none" if alarm is None else str(alarm), "absolute:1e-10", "independent", MP))
    write("anytime-evidence", "id,probabilities,on_lot,lots,level,log_evidence,log_maximum,alarm", rows)


def discoveries():
    rng = np.random.default_rng(7)
    rows = []
    for case in range(60):
        k = int(rng.integers(1, 25))
        logs = [float(x) for x in rng.normal(rng.choice([-1.0, 1.0, 3.0]), rng.choice([0.5, 2.0, 5.0]), k)]
        if case % 6 == 0 and k > 2:
            logs[1] = logs[0]
        level = float(rng.choice([0.01, 0.05, 0.2]))
        e = [mp.e ** mp.mpf(x) for x in logs]
        ordered = sorted(e, reverse=True)
        largest = max([j for j in range(1, k + 1) if j * ordered[j - 1] / k >= 1 / mp.mpf(level)], default=0)
        chosen = [int(largest > 0 and x >= ordered[largest - 1]) for x in e]
        adjusted = [min([mp.mpf(1)] + [k / (j * ordered[j - 1]) for j in range(1, k + 1) if ordered[j - 1] <= x]) for x in e]
        rows.append((f"case-{case}", " ".join(map(repr, logs)), number(level), " ".join(map(str, chosen)), " ".join(number(x) for x in adjusted),
                     "relative:1e-11", "independent", MP))
    write("evidence-discoveries", "id,log_evidence,level,selected,adjusted", rows)


PARTS = {"evidence": evidence, "discoveries": discoveries}

if __name__ == "__main__":
    for part in sys.argv[1:] or PARTS:
        PARTS[part]()
