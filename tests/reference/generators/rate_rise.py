"""Evidence for a rise of a rate, by the definition: densities of event times with the rate integrated out (mpmath, 50 digits).

The density of times T1 < ... < Tn under rate r up to the j-th event and theta r after it, with the rate integrated over dr / r, is
theta^(n-j) Gamma(n) / (Tj + theta (Tn - Tj))^n; without a change theta = 1. python3 rate_rise.py > ../rate-rises-generated.csv
"""
import random

import mpmath as mp

mp.mp.dps = 50
random.seed(7)


def integrated(theta, n, j, a, t):
    """The integral of r^n theta^(n-j) exp(-r (a + theta (t - a))) over dr / r, by its closed form in logarithms."""
    return mp.mpf(theta) ** (n - j) * mp.gamma(n) / (a + theta * (t - a)) ** n


def evidence(before, now):
    n = len(before)
    if n < 2:
        return mp.mpf(0)
    now = mp.mpf(now)
    total = mp.mpf(1) / n
    for j in range(1, n):
        a = mp.mpf(before[j - 1])
        ratios = [integrated(th, n, j, a, now) / integrated(1, n, j, a, now) for th in (4, 8, 16, 32, 64)]
        total += sum(ratios) / 5 / (j * (j + 1))
    return mp.log(total)


print("id,before,now,log_evidence,tolerance,kind,source")
for case in range(55):
    n = random.choice([2, 3, 5, 10, 25, 60])
    change = random.randrange(1, n + 1)
    faster = random.choice([1, 5, 30])
    before, at = [], 0.0
    for i in range(n):
        at += random.expovariate(1.0 / (5000 if i < change else 5000 / faster))
        before.append(float(round(at)))
    now = before[-1] + random.choice([1.0, 100.0, 20000.0])
    join = " ".join(repr(v) for v in before)
    print(f"case-{case},{join},{now!r},{mp.nstr(evidence(before, now), 16)},absolute:1e-10,independent,mpmath {mp.__version__} (generators/rate_rise.py)")
