#!/usr/bin/python3
"""Independent values of control charts, run rules and their run lengths.

Run from the repository root with Debian's python3, python3-numpy, python3-scipy:

    /usr/bin/python3 tests/reference/generators/charts.py

It writes the -generated tables of control-charts, rare-event-charts, overdispersion, run-rule-lengths, shewhart-run-lengths,
moving-average-run-lengths and runs-and-crossings. Nothing is taken from the C# code: quantiles are scipy's, chains keep the plain history of
points and are solved sparse, the integral equation is solved by Clenshaw-Curtis quadrature, runs are counted by a recursion over single points,
moments of the dispersion statistic by listing every table.
"""
import csv
import itertools
import math
import random
from fractions import Fraction
import numpy as np
import scipy
from scipy import sparse, stats
from scipy.sparse.linalg import spsolve

random.seed(20260320)
TOOL = f"scipy {scipy.__version__}"
HERE = "(generators/charts.py)"


def write(name, columns, rows):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(columns.split())
        for row in rows:
            assert not set(row) - set(columns.split()), row
            out.writerow([text(row.get(column, "")) for column in columns.split()])


def text(value):
    return repr(float(value)) if isinstance(value, (float, np.floating)) else " ".join(map(text, value)) if isinstance(value, (list, tuple)) else str(value)


def draw_points(i):
    """Events and trials: few to many points, tiny to large samples, rare to common events; now and then a point without trials."""
    m = (2, 3, 5, 8, 15, 30)[i % 6]
    size = (5, 40, 300, 5_000, 200_000)[i % 5]
    rate = (.002, .02, .1, .4, .9)[(i // 5) % 5]
    while True:
        trials = [max(1, int(size * random.lognormvariate(0, .6))) for _ in range(m)]
        if i % 7 == 3 and m > 2:
            trials[random.randrange(m)] = 0
        p = [min(1, max(0, rate * random.lognormvariate(0, .3 * (i % 3)))) for _ in range(m)]
        events = [int(stats.binom.rvs(n, q, random_state=random.randrange(2**31))) if n else 0 for n, q in zip(trials, p)]
        if 0 < sum(events) < sum(trials) and sum(n > 0 for n in trials) > 1:
            return events, trials


# --- charts of proportions, counts and moving averages ---
rows = []
for i in range(60):
    events, trials = draw_points(i)
    centre = None if i % 3 else round(sum(events) / sum(trials) * random.uniform(.7, 1.3), 6) or 1e-4
    if centre is not None and centre >= 1:
        centre = .99
    p = sum(events) / sum(trials) if centre is None else centre
    shown = [k for k, n in enumerate(trials) if n]
    at = random.choice(shown)
    n = trials[at]
    tail = (.00135, .00135, .01, .025, .0001)[i % 5]
    base = dict(events=events, trials=trials, centre="" if centre is None else centre, point=at + 1, observed=events[at] / n, centre_line=p, kind="independent")
    few, most = (int(stats.binom.ppf(tail, n, p)), int(stats.binom.isf(tail, n, p)))
    outside = [k + 1 for k in shown if stats.binom.sf(events[k] - 1, trials[k], p) <= tail or stats.binom.cdf(events[k], trials[k], p) < tail]
    rows.append(dict(base, id=f"exact-{i}", method="p-exact", tail=tail, fewest=few, most=most, lower=few / n, upper=most / n, outside=outside or "none",
                     tolerance="relative:1e-12", source=f"{TOOL} binom.ppf and isf {HERE}"))
    error = {k: math.sqrt(p * (1 - p) / trials[k]) for k in shown}
    outside = [k + 1 for k in shown if abs(events[k] / trials[k] - p) > 3 * error[k]]
    rows.append(dict(base, id=f"three-sigma-{i}", method="p-three-sigma", lower=max(0., p - 3 * error[at]), upper=min(1., p + 3 * error[at]), outside=outside or "none",
                     tolerance="absolute:1e-12", source=f"{TOOL}, plain arithmetic {HERE}"))
    z = np.array([(events[k] / trials[k] - p) / error[k] for k in shown])
    divisor = (1.128, 2 / math.sqrt(math.pi))[i % 2]
    widening = np.abs(np.diff(z)).mean() / divisor
    if widening > 0:
        rows.append(dict(base, id=f"widened-{i}", method="p-widened", divisor=divisor, widening=widening, lower=max(0., p - 3 * error[at] * widening), upper=min(1., p + 3 * error[at] * widening),
                         tolerance="relative:1e-9", source=f"{TOOL} with numpy {HERE}"))
    weight, width = random.choice((.05, .1, .2, .4, 1.)), random.choice((2.5, 2.814, 2.962, 3.))
    # The average as one weighted sum, not as a recursion.
    upto = [k for k in shown if k <= at]
    w = [weight * (1 - weight) ** (len(upto) - 1 - j) for j in range(len(upto))]
    value = sum(a * events[k] / trials[k] for a, k in zip(w, upto)) + (1 - weight) ** len(upto) * p
    sd = math.sqrt(sum(a * a * p * (1 - p) / trials[k] for a, k in zip(w, upto)))
    rows.append(dict(base, id=f"average-{i}", method="p-average", weight=weight, width=width, value=value, lower=max(0., p - width * sd), upper=min(1., p + width * sd),
                     tolerance="absolute:1e-12", source=f"{TOOL}, plain arithmetic {HERE}"))
    mean = (.3, 2., 9., 40., 600.)[i % 5]
    counts = [int(stats.poisson.rvs(mean, random_state=random.randrange(2**31))) for _ in range((2, 5, 12)[i % 3])]
    if sum(counts):
        c = sum(counts) / len(counts)
        rows.append(dict(id=f"count-exact-{i}", method="c-exact", events=counts, tail=tail, point=1, observed=counts[0], centre_line=c, lower=int(stats.poisson.ppf(tail, c)),
                         upper=int(stats.poisson.isf(tail, c)), tolerance="relative:1e-12", kind="independent", source=f"{TOOL} poisson.ppf and isf {HERE}"))
        rows.append(dict(id=f"count-three-sigma-{i}", method="c-three-sigma", events=counts, point=1, centre_line=c, lower=max(0., c - 3 * math.sqrt(c)), upper=c + 3 * math.sqrt(c),
                         tolerance="absolute:1e-11", kind="independent", source=f"{TOOL}, plain arithmetic {HERE}"))
    values = [round(random.gauss(20, 4), 2) for _ in range((1, 4, 17)[i % 3])]
    last = len(values)
    w = np.array([weight * (1 - weight) ** (last - 1 - j) for j in range(last)])
    for method, sd in (("average", 4 * math.sqrt((w * w).sum())), ("average-steady", 4 * math.sqrt(weight / (2 - weight)))):
        rows.append(dict(id=f"{method}-values-{i}", method=method, values=values, centre=20., deviation=4., weight=weight, width=width, point=last, value=float(w @ values) + (1 - weight) ** last * 20,
                         lower=20 - width * sd, upper=20 + width * sd, tolerance="absolute:1e-11", kind="independent", source=f"{TOOL} with numpy {HERE}"))
# Published limits in a seed data set of 21 plates (Crowder 1978), sizes 6 to 81.
seeds = [10, 23, 23, 26, 17, 5, 53, 55, 32, 46, 10, 8, 10, 8, 23, 0, 3, 22, 15, 32, 3], [39, 62, 81, 51, 39, 6, 74, 72, 51, 79, 13, 16, 30, 28, 45, 4, 12, 41, 30, 51, 7]
p = sum(seeds[0]) / sum(seeds[1])
z = [(x / n - p) / math.sqrt(p * (1 - p) / n) for x, n in zip(*seeds)]
widening = float(np.abs(np.diff(z)).mean() / 1.128)
for at in (1, 3, 6):
    e = 3 * widening * math.sqrt(p * (1 - p) / seeds[1][at - 1])
    rows.append(dict(id=f"seeds-{at}", method="p-widened", events=seeds[0], trials=seeds[1], point=at, centre_line=p, lower=max(0., p - e), upper=min(1., p + e), widening=widening, tolerance="relative:1e-9",
                     kind="independent", source=f"{TOOL}; germinated seeds of Crowder MJ, Appl Stat 1978;27:34-37 (from memory) {HERE}"))
    print("seeds", seeds[1][at - 1], p - e, p + e)
write("control-charts", "id method events trials values centre tail divisor weight width deviation point observed value centre_line lower upper expected_lower expected_upper fewest most widening outside tolerance kind source", rows)

# --- rare events ---
rows = []
for i in range(55):
    p = 10 ** random.uniform(-6, -.05)
    tail = (.00135, .01, .0001, .05)[i % 4]
    gaps = [int(stats.geom.rvs(p, random_state=random.randrange(2**31))) - 1 for _ in range((2, 6, 20)[i % 3])]
    own = 1 / (1 + sum(gaps) / len(gaps))
    given = i % 2 == 0 or own == 1
    q = p if given else own
    g = (1 - q) / q
    base = dict(values=gaps, rate=q if given else "", point=len(gaps), value=gaps[-1], kind="independent")
    # scipy's geometric counts the trials up to and with the event, so one more.
    rows.append(dict(base, id=f"g-{i}", method="g-probability", tail=tail, lower=max(0, int(stats.geom.ppf(tail, q)) - 1), centre_line=max(0, int(stats.geom.ppf(.5, q)) - 1), upper=int(stats.geom.isf(tail, q)) - 1,
                     tolerance="exact", source=f"{TOOL} geom.ppf and isf {HERE}"))
    rows.append(dict(base, id=f"g3-{i}", method="g-three-sigma", lower=max(0., g - 3 * math.sqrt(g * (g + 1))), upper=g + 3 * math.sqrt(g * (g + 1)), centre_line=g, tolerance="relative:1e-11", source=f"{TOOL}, plain arithmetic {HERE}"))
    times = [round(random.expovariate(1 / 50), (0, 2, 4)[i % 3]) + (.5 if i % 5 else 0) for _ in range((2, 7, 25)[i % 3])]
    if sum(times) == 0 or len(set(times)) == 1:
        times[0] += 1
    mean = sum(times) / len(times) if i % 2 else 60.
    rows.append(dict(id=f"t-{i}", method="t-probability", values=times, mean="" if i % 2 else mean, tail=tail, point=1, value=times[0], lower=float(stats.expon.ppf(tail, scale=mean)),
                     centre_line=float(stats.expon.median(scale=mean)), upper=float(stats.expon.isf(tail, scale=mean)), tolerance="relative:1e-11", kind="independent", source=f"{TOOL} expon.ppf and isf {HERE}"))
    power = (.2777, 1 / 3.6, .25)[i % 3]
    x = np.array(times) ** power
    width = 3 * np.abs(np.diff(x)).mean() / 1.128
    rows.append(dict(id=f"t-power-{i}", method="t-transformed", values=times, power=power, divisor=1.128, point=1, value=times[0], lower=max(0., x.mean() - width) ** (1 / power), centre_line=x.mean() ** (1 / power),
                     upper=(x.mean() + width) ** (1 / power), tolerance="relative:1e-10", kind="independent", source=f"{TOOL} with numpy {HERE}"))
write("rare-event-charts", "id method values rate mean tail power divisor point value centre_line lower upper outside chance_above tolerance kind source", rows)

# --- overdispersion: moments of the statistic over all tables with the margins ---
rows = []
i = 0
while len(rows) < 60:
    i += 1
    m = (2, 3, 4, 5)[i % 4]
    trials = [random.randint(1, (3, 8, 15, 6)[i % 4] if m > 2 else 60) for _ in range(m)]
    total = sum(trials)
    r = random.randint(1, total - 1)
    if total <= 3 or max(trials) == 1:
        continue
    weights, values = [], []
    for cells in itertools.product(*(range(min(n, r) + 1) for n in trials[:-1])):
        last = r - sum(cells)
        if not 0 <= last <= trials[-1]:
            continue
        table = list(cells) + [last]
        weights.append(math.prod(math.comb(n, x) for n, x in zip(trials, table)))
        q = Fraction(r, total)
        values.append((sum((x - n * q) ** 2 / (n * q * (1 - q)) for n, x in zip(trials, table)), table))
    every = math.comb(total, r)
    assert sum(weights) == every
    mean = sum(w * v for w, (v, _) in zip(weights, values)) / every
    variance = sum(w * v * v for w, (v, _) in zip(weights, values)) / every - mean * mean
    if variance == 0:
        continue
    statistic, table = random.choices(values, weights=[w * float(v) ** 2 + 1 for w, (v, _) in zip(weights, values)])[0]
    if statistic == 0:
        continue
    scale = float(variance / mean)
    rows.append(dict(id=f"listed-{len(rows)}", events=table, trials=trials, statistic=float(statistic), p_value=float(stats.gamma.sf(float(statistic), float(mean) / scale, scale=scale)), tolerance="relative:1e-8", kind="independent",
                     source=f"{TOOL} gamma.sf with the moments from all tables listed {HERE}"))
for k in range(20):
    m = (10, 30, 60)[k % 3]
    trials = [random.randint(10**5, 10**6) for _ in range(m)]
    events = [int(stats.binom.rvs(n, .05 * (1 + .01 * random.gauss(0, k % 4)), random_state=random.randrange(2**31))) for n in trials]
    chi, p, _, _ = stats.chi2_contingency([events, [n - x for x, n in zip(events, trials)]], correction=False)
    rows.append(dict(id=f"large-{k}", events=events, trials=trials, statistic=chi, p_value=p if p > 1e-12 else "", tolerance="relative:1e-4", kind="independent",
                     source=f"{TOOL} chi2_contingency: with large samples the statistic is chi-square, hence the tolerance {HERE}"))
write("overdispersion", "id events trials statistic p_value tolerance kind source", rows)

# --- run rules: a chain of plain histories ---
NAMES = ("outside-limits", "two-of-three-far", "four-of-five-off", "eight-on-one-side")


def run_length(rules, chances):
    """chances: {signed zone: chance}; zones 0 on the centre, +-1 near, +-2 off, +-3 far, +-4 outside."""
    start = ((0,) * 4, 0)
    index, order, entries = {start: 0}, [start], []
    for state in order:
        history, run = state
        for zone, chance in chances.items():
            if chance <= 0:
                continue
            sign = (zone > 0) - (zone < 0)
            after = run + sign if run * sign > 0 else sign
            row = history + (zone,)
            if 0 in rules and abs(zone) == 4:
                continue
            if 1 in rules and abs(zone) >= 3 and sum(z * sign >= 3 for z in row[-3:]) >= 2:
                continue
            if 2 in rules and abs(zone) >= 2 and sum(z * sign >= 2 for z in row) >= 4:
                continue
            if 3 in rules and abs(after) >= 8:
                continue
            keep = row[1:] if 2 in rules else (0, 0) + row[-2:] if 1 in rules else (0,) * 4
            # A zone matters by its distance only.
            new = (tuple(max(-3, min(3, z)) for z in keep), after if 3 in rules else 0)
            if new not in index:
                index[new] = len(order)
                order.append(new)
            entries.append((index[state], index[new], chance))
    size = len(order)
    a, b, c = zip(*entries) if entries else ((), (), ())
    q = sparse.csc_matrix((c, (a, b)), shape=(size, size))
    return float(spsolve(sparse.identity(size, format="csc") - q, np.ones(size))[0])


def normal_chances(shift):
    edges = [0, 1, 2, 3, math.inf]
    result = {}
    for k in range(4):
        result[k + 1] = float(stats.norm.sf(edges[k] - shift) - stats.norm.sf(edges[k + 1] - shift))
        result[-k - 1] = float(stats.norm.sf(edges[k] + shift) - stats.norm.sf(edges[k + 1] + shift))
    return result


def binomial_chances(n, centre, rate, tail):
    x = np.arange(n + 1)
    more, less = stats.binom.sf(x - 1, n, centre), stats.binom.cdf(x, n, centre)
    few, most = stats.binom.ppf(tail, n, centre), stats.binom.isf(tail, n, centre)
    result = {}
    for k, (up, down) in enumerate(zip(more, less)):
        sign, t = (1, up) if up <= .5 * (1 + 1e-12) else (-1, down) if down <= .5 * (1 + 1e-12) else (0, 1)
        zone = 4 if k > most or k < few else 3 if t < stats.norm.sf(2) else 2 if t < stats.norm.sf(1) else 1
        result[sign * zone] = result.get(sign * zone, 0) + float(stats.binom.pmf(k, n, rate))
    return result


rows = []
for i in range(55):
    # Every choice of rules in turn.
    rules = [k for k in range(4) if (i % 15 + 1) >> k & 1]
    shift = round(random.uniform(-3, 3), 3)
    rows.append(dict(id=f"normal-{i}", rules=[NAMES[k] for k in rules], shift=shift, length=run_length(rules, normal_chances(shift)), tolerance="relative:1e-9", kind="independent",
                     source=f"{TOOL} spsolve on the chain of plain histories {HERE}"))
for i in range(55):
    rules = [k for k in range(4) if (i % 15 + 1) >> k & 1]
    n, centre, tail = random.randint(2, (10, 60, 400)[i % 3]), round(random.uniform(.005, .6), 4), (.00135, .01, .0005)[i % 3]
    rate = centre if i % 4 == 0 else round(min(.99, centre * random.uniform(.3, 2.5)), 4)
    chances = binomial_chances(n, centre, rate, tail)
    if rules == [0] and chances.get(4, 0) + chances.get(-4, 0) == 0:
        continue
    length = run_length(rules, chances)
    # Where a signal is one in a hundred million points, a chain solved as I - Q has no more digits.
    if length > 1e7:
        continue
    rows.append(dict(id=f"binomial-{i}", rules=[NAMES[k] for k in rules], trials=n, centre=centre, rate=rate, tail=tail, length=length, tolerance="relative:1e-8", kind="independent",
                     source=f"{TOOL} spsolve on the chain of plain histories {HERE}"))
write("run-rule-lengths", "id rules shift trials centre rate tail length tolerance kind source", rows)

# --- plain limits ---
rows = []
for i in range(60):
    n = int(10 ** random.uniform(.5, 6))
    centre = min(.7, max(2 / n, 10 ** random.uniform(-4, -.2)))
    rate = min(.95, centre * random.choice((1, 1, .5, 1.3, 2)))
    tail = (.00135, .01)[i % 2]
    limits, sides = ("exact", "three-sigma")[i % 2], ("both", "upper")[(i // 2) % 2]
    mean, sd = n * centre, math.sqrt(n * centre * (1 - centre))
    few, most = (stats.binom.ppf(tail, n, centre), stats.binom.isf(tail, n, centre)) if limits == "exact" else (math.ceil(mean - 3 * sd), math.floor(mean + 3 * sd))
    chance = stats.binom.sf(most, n, rate) + (stats.binom.cdf(few - 1, n, rate) if sides == "both" else 0)
    rows.append(dict(id=f"drawn-{i}", limits=limits, sides=sides, trials=n, centre=centre, rate=rate, tail=tail, length="undefined" if chance == 0 else float(1 / chance), tolerance="relative:1e-9", kind="independent",
                     source=f"{TOOL} binom.sf and cdf {HERE}"))
write("shewhart-run-lengths", "id limits sides trials centre rate tail length tolerance kind source", rows)


# --- moving averages: Clenshaw-Curtis quadrature of the integral equation ---
def clenshaw_curtis(n):
    theta = np.pi * np.arange(n + 1) / n
    w = np.zeros(n + 1)
    for k in range(n + 1):
        s = sum((1 if 2 * j == n else 2) / (1 - 4 * j * j) * math.cos(2 * j * theta[k]) for j in range(1, n // 2 + 1))
        w[k] = (1 + s) * (1 if k in (0, n) else 2) / n
    return np.cos(theta), w


NODES, WEIGHTS = clenshaw_curtis(500)
rows = []
for i in range(55):
    weight, width, shift = (.02, .03, .05, .1, .2, .3, .5, .75, 1.)[i % 9], round(random.uniform(.5, 3.6), 3), round(random.uniform(-3, 3), 3) if i % 3 else 0.
    end = width * math.sqrt(weight / (2 - weight))
    y, w = end * NODES, end * WEIGHTS
    kernel = stats.norm.pdf((y[None, :] - (1 - weight) * y[:, None]) / weight - shift) / weight * w[None, :]
    lengths = np.linalg.solve(np.eye(len(y)) - kernel, np.ones(len(y)))
    rows.append(dict(id=f"drawn-{i}", weight=weight, width=width, shift=shift, length=float(1 + stats.norm.pdf(y / weight - shift) / weight * w @ lengths), tolerance="relative:1e-8", kind="independent",
                     source=f"{TOOL} with numpy, Clenshaw-Curtis quadrature {HERE}"))
write("moving-average-run-lengths", "id weight width shift length tolerance kind source", rows)

# --- runs and crossings: one point at a time, over (crossings, present run) ---
rows = []
for n in [1, 2, 3, 4, 5, 6, 7, 8, 9] + sorted(random.sample(range(11, 130), 42)) + [180, 250, 400]:
    longest = int(round(math.log2(n) + 3))
    fewest = int(stats.binom.ppf(.05, n - 1, .5)) if n > 1 else 0
    state = {(0, 1): 1}
    for _ in range(n - 1):
        new = {}
        for (c, run), count in state.items():
            if run < longest:
                new[c, run + 1] = new.get((c, run + 1), 0) + count
            new[c + 1, 1] = new.get((c + 1, 1), 0) + count
        state = new
    every = 2 ** (n - 1)
    kept, both = sum(state.values()), sum(v for (c, _), v in state.items() if c >= fewest)
    rows.append(dict(id=f"counted-{n}", useful=n, longest_limit=longest, crossings_limit=fewest, long_run=float(1 - Fraction(kept, every)), few_crossings=float(stats.binom.cdf(fewest - 1, n - 1, .5)) if fewest else 0.,
                     either=float(1 - Fraction(both, every)), tolerance="absolute:1e-12", kind="independent", source=f"{TOOL}, whole numbers counted by a recursion {HERE}"))
for i in range(60):
    values = [random.randint(0, (3, 12, 1000)[i % 3]) for _ in range(random.randint(3, 60))]
    middle = float(np.median(values))
    sides = [v > middle for v in values if v != middle]
    if len(sides) < 2 or len(set(sides)) < 2:
        continue
    groups = [len(list(g)) for _, g in itertools.groupby(sides)]
    rows.append(dict(id=f"values-{i}", values=values, centre_line=middle, useful=len(sides), longest_run=max(groups), crossings=len(groups) - 1, tolerance="exact", kind="independent", source=f"{TOOL} with numpy median and itertools.groupby {HERE}"))
write("runs-and-crossings", "id values centre_line useful longest_run crossings longest_limit crossings_limit long_run few_crossings either tolerance kind source", rows)
