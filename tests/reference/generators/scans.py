#!/usr/bin/python3
"""Reference values of scan statistics, of the scan for bursts and of acceptance sampling.

Run from the repository root with Debian's python3, python3-mpmath and python3-scipy:

    /usr/bin/python3 tests/reference/generators/scans.py

It writes scan-probabilities-generated.csv, likelihood-ratio-scores-generated.csv, bursts-generated.csv, acceptance-generated.csv,
outgoing-quality-generated.csv, smallest-plans-generated.csv and flag-curves-generated.csv under tests/reference. Methods differ from the
library's: clusters in continuous time by counting the orders in which events enter and leave (the library: determinants), Naus's Q2 and Q3 as
Poisson mixtures of those counts (the library: his closed forms), rows of trials by going through all of them (the library: a recursion), bursts
by trying every window, the chance of a burst in small programs by every way to place the events.
"""
import csv
import itertools
import random
from functools import lru_cache
from math import comb, factorial

import mpmath as mp
import scipy
from scipy import stats

mp.mp.dps = 40
random.seed(20261126)
TOOL = f"mpmath {mp.__version__} at 40 digits (generators/scans.py)"
SCIPY = f"scipy {scipy.__version__} (generators/scans.py)"


def text(value):
    return mp.nstr(mp.mpf(value), 17, strip_zeros=True) if value not in (0, 1) else str(value)


def table(name, head, rows):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(head.split() + ["tolerance", "kind", "source"])
        out.writerows(rows)


@lru_cache(None)
def orders(counts, k):
    """Orders of all events, by the cell each lies in, in which cell i less its left plus the next one's entered stays below k."""
    if max(counts) >= k:
        return 0

    @lru_cache(None)
    def ways(state):
        if any(counts[i] - state[i] + state[i + 1] >= k for i in range(len(counts) - 1)):
            return 0
        if state == counts:
            return 1
        return sum(ways(state[:i] + (state[i] + 1,) + state[i + 1:]) for i in range(len(counts)) if state[i] < counts[i])

    return ways(tuple([0] * len(counts)))


def arrangements(events, cells, most):
    if cells == 1:
        if events <= most:
            yield (events,)
        return
    for n in range(min(events, most) + 1):
        for rest in arrangements(events - n, cells - 1, most):
            yield (n,) + rest


@lru_cache(None)
def free(k, events, cells):
    return mp.mpf(sum(orders(n, k) for n in arrangements(events, cells, k - 1))) / mp.mpf(cells) ** events


rows = []
for cells, top in ((2, 14), (3, 11), (4, 9), (5, 7), (6, 6)):
    for events in range(2, top + 1, 1 if cells > 3 else 2):
        for k in sorted({2, 3, (events + 3) // 2, events}):
            if k <= events:
                rows.append([f"exact-{k}-{events}-{cells}", "exact", k, events, f"1/{cells}", "", text(1 - free(k, events, cells)), "absolute:1e-11", "independent", TOOL])
for _ in range(60):
    events = random.randint(2, 300)
    w = random.choice([0.003, 0.01, 0.02, 0.0384, 0.1, 0.2, 0.37])
    k = min(events, max(2, int(stats.binom.isf(random.choice([0.2, 0.01, 1e-4, 1e-8]), events, w)) + 1))
    p = mp.mpf(w)
    pmf = lambda j: comb(events, j) * p ** j * (1 - p) ** (events - j)
    value = (k / p - events - 1) * pmf(k) + 2 * sum(pmf(j) for j in range(k, events + 1))
    rows.append([f"approximate-{len(rows)}", "approximate", k, events, repr(w), "", text(min(mp.mpf(1), value)), "relative:1e-9", "independent", TOOL])
for k in (2, 3, 4, 5):
    for rate in (0.01, 0.3, 1.0, 2.5):
        for windows in (2, 3, 10, 52.5):
            m = mp.mpf(rate)
            q = [sum(mp.exp(-m * c) * (m * c) ** n / factorial(n) * free(k, n, c) for n in range(0, c * (k - 1) + 1)) for c in (2, 3)]
            rows.append([f"poisson-{k}-{rate}-{windows}", "poisson", k, "", repr(rate), windows, text(1 - q[0] * (q[1] / q[0]) ** (mp.mpf(windows) - 2)), "absolute:1e-12", "independent", TOOL])
for n in (1, 2, 5, 9, 13, 16):
    seen = {}
    for bits in itertools.product((0, 1), repeat=n):
        runs = [0]
        for b in bits:
            runs.append(runs[-1] + b)
        for window in (1, 2, 3, 5, 8):
            fullest = max(runs[min(n, i + window)] - runs[i] for i in range(n))
            key = (window, fullest, runs[-1])
            seen[key] = seen.get(key, 0) + 1
    for window in (1, 2, 3, 5, 8):
        for k in sorted({1, 2, (window + 1) // 2, window}):
            for rate in (0.003, 0.2, 0.7):
                if random.random() < 0.45:
                    p = mp.mpf(rate)
                    value = sum(c * p ** e * (1 - p) ** (n - e) for (w, f, e), c in seen.items() if w == window and f >= k)
                    rows.append([f"bernoulli-{k}-{window}-{n}-{rate}", "bernoulli", k, n, repr(rate), window, text(value) if value else "0", "relative:1e-11", "independent", TOOL])
table("scan-probabilities", "id method in_window events rate windows chance", rows)


def score(c, n, events, trials):
    if c * trials <= events * n:
        return mp.mpf(0)
    x = lambda a, b: a * mp.log(mp.mpf(a) / b) if a else mp.mpf(0)
    return (x(c, n) + x(n - c, n) + x(events - c, trials - n) + x(trials - n - (events - c), trials - n)
            - x(events, trials) - x(trials - events, trials))


rows = []
for i in range(70):
    trials = random.choice([10, 300, 10 ** 4, 10 ** 6, 10 ** 9])
    events = random.randint(1, max(1, min(trials - 1, random.choice([3, 50, trials // 2]))))
    c = random.randint(0, events)
    n = random.randint(c, trials - (events - c))
    if i % 2:
        n = min(max(c, int(n * random.random() ** 6)), trials - (events - c))
    rows.append([f"score-{i + 1}", c, n, events, trials, text(score(c, n, events, trials)), "relative:1e-9", "independent", TOOL])
table("likelihood-ratio-scores", "id inside trials_inside events trials score", rows)


def views(cells):
    lots, sites = sorted({c[0] for c in cells}), sorted({c[1] for c in cells})
    for lot in lots + [None]:
        for site in sites + [None]:
            yield lot, site


def windows(cells, longest):
    days = sorted({c[2] for c in cells})
    for lot, site in views(cells):
        for a in days:
            for b in days:
                if a <= b < a + longest:
                    yield lot, site, a, b, [i for i, c in enumerate(cells) if lot in (None, c[0]) and site in (None, c[1]) and a <= c[2] <= b]


def strongest(cells, spans, placed):
    events, trials = sum(placed), sum(c[3] for c in cells)
    best, at = mp.mpf(0), None
    for lot, site, a, b, inside in spans:
        c, n = sum(placed[i] for i in inside), sum(cells[i][3] for i in inside)
        s = score(c, n, events, trials)
        if s > best * (1 + mp.mpf(10) ** -12):
            best, at = s, (c, n)
    return best, at


rows = []
mp.mp.dps = 20
for i in range(56):
    tiny = i >= 44
    lots, sites, days = (2, 2, 3) if tiny else (random.randint(1, 4), random.randint(1, 3), random.randint(1, 12))
    cells = [(lot, site, day, random.randint(1, 3 if tiny else 40), 0) for lot in range(lots) for site in range(sites) for day in range(days) if random.random() < (0.7 if tiny else 0.8)]
    if len(cells) < 2:
        cells = [(0, 0, 1, 5, 0), (0, 1, 2, 7, 0)]
    total = sum(c[3] for c in cells)
    wanted = 3 if tiny else random.randint(1, min(15, total - 1))
    slots = [j for j, c in enumerate(cells) for _ in range(c[3])]
    bad = random.randrange(len(cells))
    placed = [0] * len(cells)
    for j in random.sample(slots, wanted):
        j = bad if random.random() < 0.4 else j
        if placed[j] < cells[j][3]:
            placed[j] += 1
    longest = random.choice([1, 3, 28])
    spans = list(windows(cells, longest))
    best, at = strongest(cells, spans, placed)
    if at is None:
        continue
    chance = ""
    if tiny:
        events = sum(placed)
        hits = all_ways = 0
        cache = {}
        for chosen in itertools.combinations(slots, events):
            if chosen not in cache:
                other = [0] * len(cells)
                for j in chosen:
                    other[j] += 1
                cache[chosen] = strongest(cells, spans, other)[0] >= best * (1 - mp.mpf(10) ** -9)
            hits += cache[chosen]
            all_ways += 1
        chance = text(mp.mpf(hits) / all_ways)
    field = " ".join(f"{c[0]}:{c[1]}:{c[2]}:{c[3]}:{placed[j]}" for j, c in enumerate(cells))
    rows.append([f"burst-{i + 1}", field, longest, at[0], at[1], text(best), chance, "relative:1e-9", "independent", TOOL])
table("bursts", "id cells longest observed trials score chance", rows)

# --- acceptance sampling ---
mp.mp.dps = 40


def at_most(c, n, p):
    return sum(comb(n, j) * p ** j * (1 - p) ** (n - j) for j in range(min(c, n) + 1))


def poisson_at_most(c, m):
    return mp.exp(-m) * sum(m ** j / mp.factorial(j) for j in range(c + 1))


def root(falling, low, high):
    for _ in range(120):
        middle = (low + high) / 2
        if falling(middle) > 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2


rows = []
for i in range(60):
    n = random.choice([1, 2, 5, 13, 32, 80, 200, 800])
    c = min(n, random.choice([0, 0, 1, 2, 5, n // 10, n]))
    p = random.choice([0.0, 1e-6, 0.001, 0.01, 0.05, 0.2, 0.5, 0.9, 1.0])
    lot = n + random.choice([0, 1, 10, 1000, 100000])
    bad = int(lot * p)
    hyper = mp.mpf(sum(comb(bad, j) * comb(lot - bad, n - j) for j in range(c + 1))) / comb(lot, n)
    value = at_most(c, n, mp.mpf(p))
    value = value if value > mp.mpf(10) ** -250 else ""
    pois = poisson_at_most(c, n * mp.mpf(p))
    rows.append([f"single-{i + 1}", n, c, repr(p), lot, bad, text(value) if value != "" else "", text(pois) if pois > mp.mpf(10) ** -250 else "", text(hyper) if hyper > mp.mpf(10) ** -250 else ("0" if hyper == 0 else ""), "", "", "", "relative:1e-9", "independent", TOOL])
for i in range(60):
    n = random.choice([1, 2, 5, 13, 32, 80, 200, 500, 1250])
    c = min(n - 1, random.choice([0, 0, 1, 2, 3, 5, 10, 21]))
    a = random.choice([0.999, 0.99, 0.95, 0.9, 0.5, 0.1, 0.05, 0.01, 0.0001])
    one = root(lambda t: at_most(c, n, t) - mp.mpf(a), mp.mpf(0), mp.mpf(1))
    two = root(lambda t: poisson_at_most(c, n * t) - mp.mpf(a), mp.mpf(0), mp.mpf(40 + 3 * c) / n)
    rows.append([f"quantile-{i + 1}", n, c, "", "", "", "", "", "", repr(a), text(one), text(two), "relative:1e-9", "independent", TOOL])
table("acceptance", "id size acceptance_number rate lot_size defective binomial poisson hypergeometric accepted rate_binomial rate_poisson", rows)

rows = []
for i in range(55):
    n = random.choice([2, 5, 13, 32, 80, 200])
    c = random.choice([0, 0, 1, 2, 5])
    c = min(c, n - 1)
    lot = n * random.choice([1, 2, 10, 1000])
    p = mp.mpf(random.choice([0.001, 0.01, 0.04, 0.1, 0.4]))
    accepted = at_most(c, n, p)
    out = accepted * p * (lot - n) / lot
    # the top of p P(p) by halving its slope
    slope = lambda t: at_most(c, n, t) - t * (n - c) * comb(n, c) * t ** c * (1 - t) ** (n - c - 1)
    top = root(slope, mp.mpf(0), mp.mpf(1) if n - c > 1 else mp.mpf(1))
    rows.append([f"outgoing-{i + 1}", n, c, lot, text(p), text(accepted), text(out), text(n + (1 - accepted) * (lot - n)), text(top), text(at_most(c, n, top) * top * (lot - n) / lot), "", "", "", "", "relative:1e-9", "independent", TOOL])
for i in range(55):
    n1, n2 = random.choice([5, 20, 50, 100]), random.choice([5, 20, 100, 200])
    c1 = random.choice([0, 0, 1, 2])
    r1 = c1 + random.choice([1, 2, 3, 6])
    c2 = c1 + random.choice([0, 1, 2, 4])
    p = mp.mpf(random.choice([0.001, 0.02, 0.05, 0.2]))
    pmf = lambda j: comb(n1, j) * p ** j * (1 - p) ** (n1 - j)
    first = at_most(c1, n1, p)
    second = sum(pmf(j) * at_most(c2 - j, n2, p) for j in range(c1 + 1, min(r1, n1 + 1)) if j <= c2)
    size = n1 + n2 * sum(pmf(j) for j in range(c1 + 1, min(r1, n1 + 1)))
    rows.append([f"double-{i + 1}", n1, c1, "", text(p), text(first), "", "", "", "", r1, n2, c2, f"{text(second)} {text(size)}", "relative:1e-9", "independent", TOOL])
table("outgoing-quality", "id size acceptance_number lot_size rate accepted outgoing tested limit_rate limit first_rejection second_size acceptance second_and_size", rows)

rows = []
for i in range(60):
    good = random.choice([0.0, 0.001, 0.005, 0.01, 0.02, 0.05, 0.1])
    bad = max(good, 0.005) * random.choice([2, 3, 4, 6, 9])
    a, b = random.choice([0.01, 0.05, 0.1, 0.2]), random.choice([0.01, 0.05, 0.1, 0.2])
    n = 1
    while True:
        c = int(stats.binom.ppf(1 - a, n, good))
        while c > 0 and stats.binom.cdf(c - 1, n, good) >= 1 - a:
            c -= 1
        while stats.binom.cdf(c, n, good) < 1 - a:
            c += 1
        if stats.binom.cdf(c, n, bad) <= b:
            break
        n += 1
    rows.append([f"smallest-{i + 1}", repr(good), a, repr(bad), b, n, c, repr(float(stats.binom.cdf(c, n, good))), repr(float(stats.binom.cdf(c, n, bad))), "relative:1e-9", "independent", SCIPY])
table("smallest-plans", "id good producers_risk bad consumers_risk size acceptance_number accepted_good accepted_bad", rows)

rows = []
for i in range(56):
    rate = random.choice([1e-4, 5e-4, 0.002, 0.02])
    trials, others = random.choice([20, 100, 700, 3000]), random.choice([50, 1000, 20000])
    lots, threshold, ratio = random.choice([1, 8, 60]), random.choice([0.05, 0.01, 0.001]), random.choice([0, 0.5, 1, 2, 5, 20, 45])
    q = ratio * rate
    total = 0.0
    y = max(0, int(stats.binom.ppf(1e-17, others, rate)) - 1)
    while True:
        chance = stats.binom.pmf(y, others, rate)
        if y > others * rate and chance < 1e-18:
            break
        x = 1
        while x <= trials and not stats.hypergeom.sf(x - 1, trials + others, x + y, trials) * lots < threshold:
            x += 1
        if x <= trials:
            total += chance * stats.binom.sf(x - 1, trials, q)
        y += 1
        if y > others:
            break
    rows.append([f"flag-{i + 1}", repr(rate), trials, others, lots, threshold, ratio, repr(float(total)), "absolute:1e-11", "independent", SCIPY])
table("flag-curves", "id rate trials others lots threshold ratio chance", rows)
