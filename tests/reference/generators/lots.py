#!/usr/bin/python3
"""Reference values of the stratified exact test and of the ratio of one lot to the others, at 50 digits.

Run from the repository root with Debian's python3 and python3-mpmath:

    /usr/bin/python3 tests/reference/generators/lots.py

It writes tests/reference/stratified-exact-generated.csv and lot-ratios-generated.csv. With whole trials the weights are whole numbers of any
length (binomial coefficients, polynomials multiplied exactly); with shares they are 50-digit numbers. Limits are roots found by halving at 50
digits. Nothing is shared with the library, which multiplies double-precision probabilities made from ratios of neighbouring terms.
"""
import csv
import random
from math import comb

import mpmath as mp

mp.mp.dps = 50
TOOL = f"mpmath {mp.__version__} at 50 digits (generators/lots.py)"


def text(value):
    return mp.nstr(mp.mpf(value), 17, strip_zeros=True) if value not in (0, 1) else str(value)


def multiply(a, b):
    out = [0] * (len(a) + len(b) - 1)
    for i, x in enumerate(a):
        if x:
            for j, y in enumerate(b):
                out[i + j] += x * y
    return out


def polynomial(model, strata):
    """Weights of 0, 1, ... events on the lot over the informative strata, observed there, and the strata used."""
    poly, observed, used, events = [1], 0, 0, 0
    for s in strata:
        if model == "hypergeometric":
            x, n, k, big = s
            own = [comb(n, i) * comb(big - n, k - i) if k - i >= 0 else 0 for i in range(k + 1)]
        else:
            x, share, k = s
            p = mp.mpf(share)
            own = [comb(k, i) * p ** i * (1 - p) ** (k - i) for i in range(k + 1)]
        if sum(1 for w in own if w != 0) < 2:
            continue
        poly, observed, used, events = multiply(poly, own), observed + x, used + 1, events + k
    return poly, observed, used, events


def moments(poly, r):
    total = mp.mpf(0)
    first = mp.mpf(0)
    second = mp.mpf(0)
    power = mp.mpf(1)
    for k, w in enumerate(poly):
        t = w * power
        total += t
        first += k * t
        second += k * k * t
        power *= r
    return first / total, second / total - (first / total) ** 2


def tail(poly, r, observed, up):
    total = mp.mpf(0)
    part = mp.mpf(0)
    power = mp.mpf(1)
    for k, w in enumerate(poly):
        t = w * power
        total += t
        if (k >= observed) if up else (k <= observed):
            part += t
        power *= r
    return part / total


def root(rising, low=-200, high=200):
    low, high = mp.mpf(low), mp.mpf(high)
    for _ in range(90):
        middle = (low + high) / 2
        if rising(middle) > 0:
            high = middle
        else:
            low = middle
    return (low + high) / 2


def inverse_normal_tail(q):
    return root(lambda z: q - mp.erfc(z / mp.sqrt(2)) / 2, -1, 60)


def join(values):
    return " ".join(str(v) for v in values)


def fields(model, strata):
    if model == "hypergeometric":
        return [join(s[0] for s in strata), join(s[1] for s in strata), join(s[2] for s in strata), join(s[3] for s in strata)]
    return [join(s[0] for s in strata), join(s[1] for s in strata), join(s[2] for s in strata), ""]


random.seed(20261125)


def shares(rate, size, strata, lift):
    out = []
    for _ in range(strata):
        share = random.choice([0.02, 0.1, 0.3, 0.5, 0.9]) * random.random()
        k = sum(random.random() < rate for _ in range(size))
        q = lift * share / (1 - share + lift * share)
        share = float(f"{share:.6g}")
        out.append((sum(random.random() < q for _ in range(k)), share, k))
    return out


def whole(rate, size, strata, lift):
    out = []
    for _ in range(strata):
        big = random.randint(1, size)
        n = int(big * random.choice([0.02, 0.1, 0.3, 0.5, 0.9]) * random.random() + random.random())
        n = min(n, big)
        mine = sum(random.random() < min(1, rate * lift) for _ in range(n))
        others = sum(random.random() < rate for _ in range(big - n))
        out.append((mine, n, mine + others, big))
    return out


CASES = []
for rate in (0.001, 0.02, 0.3):
    for size, strata in ((12, 1), (40, 5), (200, 12), (500, 40)):
        for lift in (0.2, 1, 4, 25):
            CASES.append(("hypergeometric", whole(rate, size, strata, min(lift, 0.95 / rate))))
for rate in (0.01, 0.1):
    for size, strata in ((20, 1), (60, 8), (30, 60), (200, 15)):
        for lift in (0.1, 1, 3, 20, 1000):
            CASES.append(("binomial", shares(rate, size, strata, lift)))
CASES += [
    ("hypergeometric", [(0, 0, 3, 10), (2, 5, 2, 5)]),  # nothing to compare
    ("hypergeometric", []),
    ("hypergeometric", [(3, 4, 4, 8)]),  # Fisher's tea
    ("hypergeometric", [(2, 12, 12, 30)]),  # convictions
    ("hypergeometric", [(300, 900, 300, 902), (100, 400, 100, 3000)]),  # a far tail
    ("hypergeometric", [(462, 30000, 462, 602272)]),  # a tail below any number
    ("hypergeometric", [(0, 30000, 462, 60000), (0, 10, 2, 30)]),
    ("hypergeometric", [(9, 100, 39, 1000)]),
    ("hypergeometric", [(1, 10000000, 2, 903408000)]),
    ("binomial", [(2, 0.5, 2)]), ("binomial", [(0, 1e-9, 400), (3, 1e-6, 50)]), ("binomial", [(0, 0.0, 4), (5, 1.0, 5), (1, 0.25, 3)]),
]

with open("tests/reference/stratified-exact-generated.csv", "w", newline="") as file:
    out = csv.writer(file, lineterminator="\n")
    out.writerow("id model lot_events lot_trials events trials observed strata_used events_used expected variance upper lower two_sided log_upper log_lower tolerance kind source".split())
    for i, (model, strata) in enumerate(CASES):
        poly, observed, used, events = polynomial(model, strata)
        mean, variance = moments(poly, mp.mpf(1))
        total = mp.mpf(sum(poly))
        up, low = tail(poly, mp.mpf(1), observed, True), tail(poly, mp.mpf(1), observed, False)
        both = mp.mpf(sum(w for w in poly if w <= poly[observed] * (1 + mp.mpf(10) ** -7))) / total
        tiny = mp.mpf(10) ** -230
        show = lambda v: text(v) if v > tiny else ""
        out.writerow([f"{model}-{i + 1}", model, *fields(model, strata), observed, used, events, text(mean), text(variance),
                      show(up), show(low), show(both), text(mp.log(up)) if up < 0.9 else "", text(mp.log(low)) if low < 0.9 else "", "relative:1e-9", "independent", TOOL])

with open("tests/reference/lot-ratios-generated.csv", "w", newline="") as file:
    out = csv.writer(file, lineterminator="\n")
    out.writerow("id model lot_events lot_trials events trials confidence overdispersion ratio lower upper to_expected to_expected_lower to_expected_upper tolerance kind source".split())
    for i, (model, strata) in enumerate(CASES):
        poly, observed, used, events = polynomial(model, strata)
        confidence = ["0.95", "0.99", "0.8"][i % 3]
        factor = ["1", "1", "1.7", "6"][i % 4]
        head = [f"ratio-{model}-{i + 1}", model, *fields(model, strata), confidence, factor]
        if used == 0:
            out.writerow(head + ["undefined"] * 6 + ["relative:1e-9", "independent", TOOL])
            continue
        support = [k for k, w in enumerate(poly) if w != 0]
        expected = moments(poly, mp.mpf(1))[0]
        q = (1 - mp.mpf(float(confidence))) / 2
        if factor != "1":
            q = mp.erfc(inverse_normal_tail(q) * mp.sqrt(mp.mpf(float(factor))) / mp.sqrt(2)) / 2
        log_low = None if observed == support[0] else root(lambda t: tail(poly, mp.exp(t), observed, True) - q)
        log_high = None if observed == support[-1] else root(lambda t: q - tail(poly, mp.exp(t), observed, False))
        ratio = 0 if observed == support[0] else "undefined" if observed == support[-1] else mp.exp(root(lambda t: moments(poly, mp.exp(t))[0] - observed))
        end = lambda log, edge: (moments(poly, mp.exp(log))[0] if log is not None else mp.mpf(edge)) / expected
        out.writerow(head + [ratio if ratio == "undefined" else text(ratio), "0" if log_low is None else text(mp.exp(log_low)),
                             "undefined" if log_high is None else text(mp.exp(log_high)), text(observed / expected), text(end(log_low, support[0])), text(end(log_high, support[-1])),
                             "relative:1e-9", "independent", TOOL])
