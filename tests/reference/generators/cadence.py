#!/usr/bin/python3
"""Reference values for how often to screen: closed forms of windows with a constant sensitivity, the best interval, false alarms,
whole options, the exponential sojourn, repeated tests and pools.

Run from the repository root with Debian's python3 and python3-mpmath:

    /usr/bin/python3 tests/reference/generators/cadence.py

Nothing here uses the closed forms that the library uses. Regular screens: every screen of every phase is enumerated, and the mean over
the phase, piecewise linear between breakpoints, is taken at the middle of each piece in exact rational arithmetic. Screens at random:
the chance of being isolated by an age is integrated over the infectious ages. The best interval: golden section over a sum over screens.
The sojourn: integrals over the time of onset. Repeated tests: person-pools emptied test by test. Pools: every size tried.
"""
import csv
import itertools
import math
import random
from fractions import Fraction as F

import mpmath as mp

mp.mp.dps = 40
random.seed(20261125)


def tool(how):
    return f"mpmath {mp.__version__} at {mp.mp.dps} digits and exact fractions: {how} (generators/cadence.py)"


def out(name, header, rows):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header.split())
        writer.writerows(rows)


def num(value):
    if isinstance(value, F):
        value = mp.mpf(value.numerator) / value.denominator
    return mp.nstr(mp.mpf(value), 17)


def enumerated(every, s, a, b, i0, i1, delay, age):
    """Chance found, screens up to the first positive, isolated by age, infectious days removed, by phases."""
    every, s, a, b, i0, i1, delay, age = (F(x) for x in (every, s, a, b, i0, i1, delay, age))
    marks = {F(0), every}
    for point in (b, i0 - delay, i1 - delay, age - delay):
        if point > a:
            marks.add((point - a) % every)
    marks = sorted(marks)
    total = [F(0)] * 4
    for low, high in zip(marks, marks[1:]):
        phase = (low + high) / 2
        weight = (high - low) / every
        missed, screens, isolated, removed = F(1), F(0), F(0), F(0)
        at = a + phase
        while at < b:
            screens += missed
            first = missed * s
            removed += first * max(F(0), i1 - max(i0, at + delay))
            if at + delay < age:
                isolated += first
            missed *= 1 - s
            at += every
        for k, value in enumerate((1 - missed, screens, isolated, removed)):
            total[k] += weight * value
    return total


def at_random(every, s, a, b, i0, i1, delay, age):
    every, s, a, b, i0, i1, delay, age = (mp.mpf(F(x).numerator) / F(x).denominator for x in (every, s, a, b, i0, i1, delay, age))

    def isolated(x):
        length = min(x - delay, b) - a
        return 1 - mp.exp(-s * length / every) if length > 0 else mp.mpf(0)
    points = sorted({i0, i1, *[p for p in (a + delay, b + delay) if i0 < p < i1]})
    removed = mp.fsum(mp.quad(isolated, [lo, hi]) for lo, hi in zip(points, points[1:])) if i1 > i0 else mp.mpf(0)
    found = 1 - mp.exp(-s * (b - a) / every)
    screens = mp.quad(lambda t: mp.exp(-s * t / every) / every, [0, b - a]) if b > a else mp.mpf(0)
    return found, screens, isolated(age), removed


CASES = [("7", "0.8", "0", "3", "13", "3", "10"), ("3.5", "0.65", "0", "4", "11", "3", "10"), ("2", "0.6", "1", "3", "10", "2", "8"),
         ("14", "1", "0", "0", "10", "0", "10"), ("0.05", "0.3", "0.25", "0", "6", "1", "9"), ("400", "0.55", "0", "2", "9", "2", "9"),
         ("7", "0", "0", "3", "13", "3", "10"), ("7", "0.7", "30", "3", "13", "3", "10"), ("7", "0.7", "2", "3", "3", "3", "10"),
         ("7", "0.7", "2", "3", "13", "5", "5"), ("1", "1e-9", "0", "0", "10", "0", "10"), ("0.1", "1e-7", "0", "0", "10", "0", "12"),
         ("1", "1", "1", "0", "10", "0", "10"), ("5", "0.999999", "0", "0", "10", "0", "10"), ("7", "0.9", "0", "12", "20", "1", "8"),
         ("2.5", "0.4", "0", "0", "10", "12", "15"), ("10", "1", "0", "0", "10", "0", "10")]
for _ in range(60):
    a = round(random.uniform(0, 6), 2)
    b = round(a + random.choice([0.5, 3, 8, 20]) * random.random(), 2)
    i0 = round(random.uniform(0, 8), 2)
    i1 = round(i0 + 10 * random.random(), 2)
    CASES.append((str(round(10 ** random.uniform(-0.7, 1.7), 3)), str(round(random.random(), 4)), str(round(random.choice([0, 1, 3]) * random.random(), 2)),
                  str(a), str(b), str(i0), str(i1)))

rows = []
for timing, work in (("Regular", enumerated), ("AtRandom", at_random)):
    for k, (every, s, delay, a, b, i0, i1) in enumerate(CASES):
        age = str(round((float(a) + float(b)) / 2 + float(delay), 2))
        found, screens, isolated, removed = work(every, s, a, b, i0, i1, delay, age)
        length = F(i1) - F(i0)
        rows.append([f"{timing}-{k}", timing, every, s, delay, a, b, i0, i1, age, num(found), num(screens), num(isolated), num(removed),
                     "undefined" if length == 0 else num(mp.mpf(num(removed)) / (mp.mpf(length.numerator) / length.denominator)), "", "absolute:1e-11", "independent",
                     tool("every screen of every phase" if timing == "Regular" else "integration over ages")])
# Small sensitivities and long windows are asked to keep their digits.
for every, s, days in itertools.product(("0.5", "0.08"), ("1e-12", "1e-6", "0.002"), ("3", "9.7")):
    found, screens, isolated, removed = enumerated(every, s, "0", days, "0", days, "0", "1")
    rows.append([f"small-{every}-{s}-{days}", "Regular", every, s, "0", "0", days, "0", days, "1", num(found), num(screens), num(isolated), num(removed), "", "",
                 "relative:1e-11", "independent", tool("every screen of every phase")])
out("screening-yields", "id timing every sensitivity delay detectable_from detectable_to infectious_from infectious_to age detected screens isolated removed fraction wait "
    "tolerance kind source", rows)


def gain(every, s, window):
    """Days that follow the first positive screen within the window: a sum over screens of ramps."""
    total, missed, j = mp.mpf(0), mp.mpf(1), 0
    while j * every < window:
        early, late = window - j * every, max(window - (j + 1) * every, mp.mpf(0))
        total += s * missed * (early ** 2 - late ** 2) / (2 * every)
        missed *= 1 - s
        j += 1
    return total


def best(net, low, high):
    golden = (mp.sqrt(5) - 1) / 2
    x1, x2 = high - golden * (high - low), low + golden * (high - low)
    f1, f2 = net(x1), net(x2)
    while high - low > mp.mpf(10) ** -16 * high:
        if f1 > f2:
            high, x2, f2 = x2, x1, f1
            x1 = high - golden * (high - low)
            f1 = net(x1)
        else:
            low, x1, f1 = x1, x2, f2
            x2 = low + golden * (high - low)
            f2 = net(x2)
    return (low + high) / 2


rows = []
for window, s, times, cost, value in itertools.product(("3", "7"), ("0.2", "0.6", "0.95", "1"), ("1.05", "2", "12", "80"), ("12",), ("4000",)):
    breakeven = 2 * mp.mpf(cost) / (mp.mpf(s) * mp.mpf(value) * mp.mpf(window) ** 2)
    incidence = mp.nstr(breakeven * mp.mpf(times), 8)
    lam, v, c, w, se = (mp.mpf(float(x)) for x in (incidence, value, cost, window, s))

    def net(t):
        return lam * v * gain(t, se, w) - c / t
    t = best(net, w / 400, w * 3)
    rows.append([f"best-{window}-{s}-{times}", incidence, value, cost, window, s, num(t), num(net(t)), "", "", "relative:1e-10", "independent",
                 tool("golden section over a sum over screens")])
for k in range(30):
    window, s = round(random.uniform(1, 12), 2), round(random.uniform(0.05, 1), 3)
    cost, value = round(10 ** random.uniform(-1, 2), 2), round(10 ** random.uniform(0, 3), 2)
    breakeven = 2 * cost / (s * value * window ** 2)
    incidence = f"{min(1.0, breakeven * random.choice([0.3, 0.9, 1.3, 3, 20])):.6g}"
    lam, v, c, w, se = (mp.mpf(float(x)) for x in (incidence, value, cost, window, s))

    def net(t):
        return lam * v * gain(t, se, w) - c / t
    grid = max(net(w * mp.mpf(k) / 50) for k in range(1, 200))
    if grid > 0:
        t = best(net, w / 400, w * 3)
        answer = [num(t), num(net(t))]
    else:
        answer = ["undefined", "undefined"]
    rows.append([f"drawn-{k}", incidence, value, cost, window, s, *answer, "", "", "relative:1e-10", "independent", tool("golden section over a sum over screens")])
out("best-intervals", "id incidence value cost window sensitivity every net short break_even tolerance kind source", rows)

rows = []
for n, sp in itertools.product((1, 2, 13, 52, 104, 365), ("0", "0.3", "0.9", "0.98", "0.995", "0.997", "0.9995", "0.9999999", "1")):
    p = 1 - mp.mpf(float(sp))
    q = mp.mpf(float(sp))
    some = mp.fsum(mp.binomial(n, k) * p ** k * q ** (n - k) for k in range(1, n + 1))
    rows.append([f"sum-{n}-{sp}", n, "", sp, "", num(some), "relative:1e-12", "independent", tool("binomial sum over one and more")])
for every, sp in itertools.product(("0.1", "1", "2", "3.5", "7", "14", "30", "365", "1000"), ("0", "0.5", "0.98", "0.997", "0.9995", "1")):
    rows.append([f"year-{every}-{sp}", "", every, sp, num(mp.mpf(365) / mp.mpf(float(every)) * (1 - mp.mpf(float(sp)))), "", "relative:1e-12", "independent",
                 tool("screens a year times false-positive rate")])
out("false-alarms", "id screens every specificity per_year any tolerance kind source", rows)

rows = []
for c, s, sp, h, b in itertools.product(("0", "5", "12"), ("0", "0.6", "1"), ("0.98", "0.9995", "1"), ("0", "150"), ("0", "4", "2000")):
    C, S, SP, H, B = (mp.mpf(float(x)) for x in (c, s, sp, h, b))

    def profit(p):
        return p * S * B - C - (1 - p) * (1 - SP) * H
    if C == 0 and (1 - SP) * H == 0 and S * B == 0:
        continue
    if profit(mp.mpf(1)) < 0 or S * B == 0:
        answer = "undefined"
    else:
        low, high = mp.mpf(0), mp.mpf(1)
        for _ in range(120):
            middle = (low + high) / 2
            low, high = (low, middle) if profit(middle) >= 0 else (middle, high)
        answer = num(high) if high > mp.mpf(10) ** -25 else "0"
    rows.append([f"prevalence-{c}-{s}-{sp}-{h}-{b}", c, s, sp, h, b, answer, "relative:1e-11", "independent", tool("halving on the expected gain of a screen")])
out("break-even-prevalence", "id cost sensitivity specificity false_positive benefit prevalence tolerance kind source", rows)

rows = []
for k in range(60):
    every, s, delay, a, b, i0, i1 = CASES[-1 - k]
    sp = random.choice(["0.98", "0.995", "0.9995", "0.99997", "1"])
    lam = random.choice(["0", "0.00001", "0.0005", "0.02"])
    people = random.choice([1, 40, 1000, 1000000])
    found, _, _, removed = enumerated(every, s, a, b, i0, i1, delay, "0")
    screens = F(365) / F(every)
    false = screens * (1 - F(sp))
    true = 365 * F(lam) * found
    any_false = 1 - mp.power(mp.mpf(float(sp)), mp.mpf(screens.numerator) / screens.denominator)
    ppv = num(true / (true + false)) if true + false > 0 else "undefined"
    rows.append([f"option-{k}", every, s, sp, delay, a, b, i0, i1, lam, people, num(found), num(removed) if removed else "", num(screens), num(false), num(any_false), num(people * true),
                 num(people * false), ppv, "", "", "relative:1e-9", "independent", tool("every screen of every phase")])
out("cadence-options", "id every sensitivity specificity delay detectable_from detectable_to infectious_from infectious_to incidence people detected removed screens false_each "
    "any_false true_year false_year predictive removed_year fraction tolerance kind source", rows)

mp.mp.dps = 25
rows = []
for s, m, d in itertools.product(("0", "0.01", "0.5", "0.82", "1"), ("0.4", "1.71", "20"), ("0.02", "0.5", "1", "3", "40")):
    S, M, D = (mp.mpf(float(x)) for x in (s, m, d))
    j, t = mp.mpf("0.003"), mp.mpf(float(d) / 4)
    # Prevalence without screening: integral of what still is detectable over times of onset.
    first = S * mp.quad(lambda u: j * mp.exp(-u / M), [0, M, 10 * M, 120 * M])

    def evident(time):
        after = mp.quad(lambda u: j * mp.exp(-(time - u) / M) / M, mp.linspace(0, time, 5))
        before = mp.quad(lambda u: j * mp.exp(-(time + u) / M) / M, [0, M, 10 * M, 120 * M])
        return after + (1 - S) * before
    # Both parts are exponentials in time; the share over the gap comes from integrating what becomes evident.
    share = mp.quad(evident, [0, D / 8, D]) / (j * D)
    # Onset at u before the next screen; found at screen k if still detectable and missed until then.
    weight, term = mp.mpf(0), S
    while term > mp.mpf(10) ** -30:
        weight += term
        term *= (1 - S) * mp.exp(-D / M)
    program = weight * mp.quad(lambda u: mp.exp(-u / M), mp.linspace(0, D, 6)) / D
    rows.append([f"sojourn-{s}-{m}-{d}", s, m, "0.003", d, num(t), num(first), num(evident(t)), num(share), num(program), "absolute:1e-12", "independent",
                 tool("integrals over the time of onset")])
out("exponential-sojourn", "id sensitivity mean incidence gap time first interval_incidence interval_share program tolerance kind source", rows)

rows = []
for shape, m in itertools.product(("0.5", "1", "2", "9", "60"), ("0.3", "1.71", "2", "8", "100", "1000", "0.001", "5", "1.5", "12")):
    K, M = mp.mpf(float(shape)), mp.mpf(float(m))
    scale = M / K
    # Met by a screen: the sojourn with density weighted by its length, the screen anywhere in it.
    ends = [0, M / 4, M, 3 * M, 12 * M, 60 * M, 300 * M]
    density = lambda x: x ** (K - 1) * mp.exp(-x / scale) / (mp.gamma(K) * scale ** K)
    top = mp.quad(lambda x: density(x) * x * x / 2, ends)
    rows.append([f"lead-{shape}-{m}", m, num(K * scale ** 2), num(top / mp.quad(lambda x: density(x) * x, ends)), "relative:1e-10", "independent",
                 tool("gamma sojourns weighted by their length, integrated")])
out("lead-times", "id mean variance lead tolerance kind source", rows)

rows = []
for k in range(24):
    people = random.choice([100, 10000, 1000000])
    cases = round(people * random.choice([0, 0.0007, 0.01, 0.2]), 3)
    prone = round((people - cases) * random.choice([0, 0.05, 1]), 2)
    s, phi = random.choice(["0", "0.3", "0.9167", "1"]), random.choice(["0", "0.0005", "0.37", "1"])
    c1, c2, work = random.choice([0, 4, 25]), random.choice([0, 1, 25]), random.choice([0, 100])
    sick, prey, cost = mp.mpf(float(str(cases))), mp.mpf(float(str(prone))), mp.mpf(0)
    found, wrong = mp.mpf(0), mp.mpf(0)
    for n in range(1, 9):
        new, alarms = sick * mp.mpf(float(s)), prey * mp.mpf(float(phi))
        sick, prey, found, wrong = sick - new, prey - alarms, found + new, wrong + alarms
        step = people * mp.mpf(c1 if n == 1 else c2) + work * (new + alarms)
        cost += step
        if n in (1, 2, 3, 8):
            rows.append([f"pool-{k}-{n}", n, people, cases, s, prone, phi, c1, c2, work, num(found), num(wrong), num(cost),
                         num(cost / found) if found > 0 else "undefined", num(step / new) if new > 0 else "undefined", "relative:1e-10", "independent",
                         tool("pools emptied test by test")])
out("repeated-tests", "id tests people cases sensitivity prone false_positive first further work_up found false_found cost average marginal tolerance kind source", rows)

rows = []
for p in [0.306639, 0.30664, 0.30, 0.25, 0.2, 0.15, 0.1, 0.07, 0.05, 0.02, 0.01, 0.003, 0.001, 0.0003, 0.0001, 0.00001, 0.000001, 0.5, 1, 0.31, 0.32] + \
        [round(10 ** random.uniform(-5, -0.4), 6) for _ in range(40)]:
    q = 1 - mp.mpf(p)
    top = int(3 / math.sqrt(p)) + 5
    costs = {n: mp.mpf(1) / n + 1 - q ** n for n in range(2, top)}
    n = min(costs, key=lambda size: (costs[size], size))
    good = costs[n] < 1
    rows.append([f"pool-size-{p!r}", repr(float(p)), n if good else "undefined", n, num(costs[n]), "relative:1e-12", "independent", tool("every size tried")])
seen = set()
rows = [row for row in rows if not (row[0] in seen or seen.add(row[0]))]
out("pooled-testing", "id prevalence best size cost tolerance kind source", rows)
