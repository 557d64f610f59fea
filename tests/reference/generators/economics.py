#!/usr/bin/python3
"""Reference values for whether screening is worth it: frontiers, net benefit, distributions, the value of information, acceptability, one-way swings,
break-even values, numbers needed, decision curves, costs for each case, marginal costs and rules of frequency.

Run from the repository root with Debian's python3, python3-mpmath, python3-scipy and python3-statsmodels:

    /usr/bin/python3 tests/reference/generators/economics.py

Frontiers: every pair of options is mixed, in exact fractions. Values of information: every state or sample listed in exact fractions, or integrals at 40
digits. Bounds: every corner of the ranges. Break-even values: halving on the expected gain of one screen. Rules of frequency: for each period the history is read backwards anew.
Each section has a seed of its own, so that a new one leaves the others' rows as they are.
"""
import csv
import itertools
import math
import random
from fractions import Fraction as F

import mpmath as mp
import numpy as np
import scipy
from scipy import integrate, optimize, stats
from statsmodels import __version__ as statsmodels_version
from statsmodels.stats.proportion import confint_proportions_2indep, proportion_confint

mp.mp.dps = 40


def exact(how):
    return f"mpmath {mp.__version__} and exact fractions: {how} (generators/economics.py)"


def fitted(how):
    return f"scipy {scipy.__version__}, statsmodels {statsmodels_version}: {how} (generators/economics.py)"


def out(name, header, rows):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header.split())
        writer.writerows(rows)


def num(value):
    if isinstance(value, F):
        value = mp.mpf(value.numerator) / value.denominator
    return mp.nstr(mp.mpf(value), 17)


def words(values):
    return " ".join(num(v) if not isinstance(v, str) else v for v in values)


# Frontiers -------------------------------------------------------------------------------------------------------------------------------------
random.seed("Frontiers")


def frontier(options):
    """Standing, by whom, and the options on the frontier by effect, from all pairs."""
    standing, by = [], []
    for i, (c, e) in enumerate(options):
        strict = [j for j, (d, f) in enumerate(options) if d <= c and f >= e and (d < c or f > e)]
        if strict:
            standing.append("strict")
            by.append(strict)
            continue
        same = [j for j in range(i) if options[j] == options[i]]
        if same:
            standing.append("same")
            by.append(same[:1])
            continue
        best = None
        for j, k in itertools.combinations(range(len(options)), 2):
            (cj, ej), (ck, ek) = options[j], options[k]
            low, high = min(ej, ek), max(ej, ek)
            if low == high or not low <= e <= high:
                continue
            t = (e - ej) / (ek - ej)
            cost = cj + t * (ck - cj)
            if cost < c and (best is None or cost < best[0] or (cost == best[0] and high - low < best[1])):
                best = (cost, high - low, [j, k])
        if best:
            # Of equal options the first stands in the pair.
            pair = sorted(options.index(options[j]) for j in best[2])
            standing.append("extended")
            by.append(pair)
        else:
            standing.append("on")
            by.append([])
    return standing, by


rows, ratio_rows, benefit_rows = [], [], []
for k in range(90):
    n = random.choice([1, 2, 3, 4, 5, 7, 10, 15])
    kind = k % 3
    if kind == 0:
        options = [(F(random.randint(-4, 8)), F(random.randint(-3, 6))) for _ in range(n)]
    elif kind == 1:
        options = [(F(round(random.uniform(-1e5, 1e6), 2)), F(round(random.uniform(-50, 400), 3))) for _ in range(n)]
    else:
        # Near a curve of diminishing returns, so that many lie on or just above the frontier.
        options = []
        for _ in range(n):
            e = round(random.uniform(0, 20), 2)
            options.append((F(round(e ** 2 * 100 + random.expovariate(1 / 300), 2)), F(e)))
    standing, by = frontier(options)
    on = sorted((i for i in range(n) if standing[i] == "on"), key=lambda i: options[i][1])
    ratios = [(options[b][0] - options[a][0]) / (options[b][1] - options[a][1]) for a, b in zip(on, on[1:])]
    text = " ".join(f"{float(c)!r}:{float(e)!r}" for c, e in options)
    rows.append([f"drawn-{k}", text, " ".join(standing), " ".join("+".join(map(str, b)) or "-" for b in by), " ".join(map(str, on)), words(ratios), "relative:1e-10", "independent",
                 exact("every pair of options mixed")])
    value = F(random.choice([0, 1, 5, 1000, 20000])) + F(random.randint(0, 7), 8)
    nets = [value * e - c for c, e in options]
    benefit_rows.append([f"drawn-{k}", text, num(value), words(nets), " ".join(str(i) for i in range(n) if nets[i] == max(nets)), "relative:1e-10", "independent",
                         exact("value times effect minus cost")])
    if n > 1 and kind != 2:
        (c0, e0), (c1, e1) = options[0], options[1]
        dc, de = c1 - c0, e1 - e0
        ratio = "undefined" if de == 0 or (dc > 0 and de < 0) or (dc < 0 and de > 0) else num(abs(dc / de))
        ratio_rows.append([f"drawn-{k}", float(c0), float(e0), float(c1), float(e1), ratio, "relative:1e-12", "independent", exact("difference over difference")])
for k in range(20):
    c0, e0, c1, e1 = (F(round(random.uniform(0, 1e6), 2)) for _ in range(4))
    dc, de = c1 - c0, e1 - e0
    ratio = "undefined" if dc * de < 0 else num(abs(dc / de))
    ratio_rows.append([f"more-{k}", float(c0), float(e0), float(c1), float(e1), ratio, "relative:1e-12", "independent", exact("difference over difference")])
out("frontiers", "id options standing by on ratios tolerance kind source", rows)
out("incremental-ratios", "id cost_from effect_from cost_to effect_to ratio tolerance kind source", ratio_rows)
out("net-benefits", "id options value net best tolerance kind source", benefit_rows)

# Value of information, listed states ------------------------------------------------------------------------------------------------------------
random.seed("Value of information, listed states")
rows, accept_rows = [], []
for k in range(70):
    n, states = random.choice([1, 2, 3, 5]), random.choice([1, 2, 5, 12])
    table = [[F(random.randint(-20, 40)) / random.choice([1, 1, 4]) for _ in range(states)] for _ in range(n)]
    weights = None if k % 2 else [F(random.randint(0, 9)) for _ in range(states)]
    if weights and sum(weights) == 0:
        weights[0] = F(1)
    w = [x / sum(weights) for x in weights] if weights else [F(1, states)] * states
    means = [sum(a * b for a, b in zip(w, row)) for row in table]
    best = means.index(max(means))
    losses = [max(row[i] for row in table) - table[best][i] for i in range(states)]
    value = sum(a * b for a, b in zip(w, losses))
    rows.append([f"drawn-{k}", "|".join(words(row) for row in table), words(weights) if weights else "", best, num(max(means)), num(max(means) + value), num(value), words(losses),
                 "absolute:1e-11", "independent", exact("every state listed")])
out("perfect-information", "id benefits weights best now knowing value losses tolerance kind source", rows)

for k in range(70):
    n, draws = random.choice([1, 2, 3, 6]), random.choice([1, 2, 5, 20])
    costs = [[F(random.randint(0, 12)) for _ in range(draws)] for _ in range(n)]
    effects = [[F(random.randint(0, 6)) for _ in range(draws)] for _ in range(n)]
    value = F(random.randint(0, 12), 4)
    chances = [F(0)] * n
    for d in range(draws):
        nets = [value * effects[i][d] - costs[i][d] for i in range(n)]
        top = [i for i in range(n) if nets[i] == max(nets)]
        chances[top[0]] += F(1, draws)
    means = [sum(value * e - c for c, e in zip(costs[i], effects[i])) / draws for i in range(n)]
    best = means.index(max(means))
    accept_rows.append([f"drawn-{k}", "|".join(words(c) for c in costs), "|".join(words(e) for e in effects), num(value), words(chances), words(means), best, num(chances[best]),
                        "absolute:1e-12", "independent", exact("winners of each draw counted, the first of equal ones")])
out("acceptability", "id costs effects value chances means best chance_of_best tolerance kind source", accept_rows)


# Distributions ----------------------------------------------------------------------------------------------------------------------------------
random.seed("Distributions")


def frozen(kind, mean, deviation):
    if kind == "beta":
        w = mean * (1 - mean) / deviation ** 2 - 1
        return stats.beta(mean * w, (1 - mean) * w), (mean * w, (1 - mean) * w)
    if kind == "gamma":
        return stats.gamma(mean ** 2 / deviation ** 2, scale=deviation ** 2 / mean), (mean ** 2 / deviation ** 2, deviation ** 2 / mean)
    s2 = math.log1p(deviation ** 2 / mean ** 2)
    return stats.lognorm(math.sqrt(s2), scale=math.exp(math.log(mean) - s2 / 2)), (math.log(mean) - s2 / 2, math.sqrt(s2))


def far(value):
    """A quantile; none where scipy's falls below what it can tell from 0."""
    return num(value) if value > 1e-100 else ""


rows = []
for k in range(120):
    kind = ["beta", "gamma", "lognormal"][k % 3]
    if kind == "beta":
        mean = round(random.choice([random.uniform(0.02, 0.98), random.uniform(0.001, 0.02), random.uniform(0.98, 0.999)]), 4)
        deviation = float(f"{math.sqrt(mean * (1 - mean)) * random.uniform(0.02, 0.6):.3g}")
    else:
        mean = float(f"{10 ** random.uniform(-3, 6):.4g}")
        deviation = float(f"{mean * 10 ** random.uniform(-2, 0.2):.3g}")
    law, (first, second) = frozen(kind, mean, deviation)
    rows.append([f"moments-{k}", kind, "moments", mean, deviation, "", "", num(first), num(second), num(mean), num(deviation), *(far(law.ppf(share)) for share in (0.025, 0.5, 0.975)),
                 "relative:1e-8", "independent", fitted("distribution by its moments, quantiles by ppf")])
for k in range(50):
    lower = float(f"{10 ** random.uniform(-3, 5):.4g}")
    upper = float(f"{lower * 10 ** random.uniform(0.02, 1.5):.4g}")
    confidence = random.choice([0.5, 0.8, 0.95, 0.95, 0.99])
    z = stats.norm.ppf((1 + confidence) / 2)
    mu, sigma = (math.log(lower) + math.log(upper)) / 2, (math.log(upper) - math.log(lower)) / (2 * z)
    law = stats.lognorm(sigma, scale=math.exp(mu))
    rows.append([f"range-lognormal-{k}", "lognormal", "range", "", confidence, lower, upper, num(mu), num(sigma), num(law.mean()), num(law.std()), num(law.ppf(0.025)), num(law.ppf(0.5)),
                 num(law.ppf(0.975)), "relative:1e-8", "independent", fitted("logarithms of the ends, quantiles by ppf")])
    value = float(f"{random.uniform(lower, upper):.4g}")
    value = min(max(value, lower), upper)
    tail = (1 - confidence) / 2
    first = optimize.brentq(lambda a: math.log(stats.gamma.isf(tail, math.exp(a)) / stats.gamma.ppf(tail, math.exp(a)) / (upper / lower)), -4, 30, xtol=1e-14, rtol=1e-14)
    first = math.exp(first)
    second = upper / stats.gamma.isf(tail, first)
    law = stats.gamma(first, scale=second)
    rows.append([f"range-gamma-{k}", "gamma", "range", value, confidence, lower, upper, num(first), num(second), num(law.mean()), num(law.std()), num(law.ppf(0.025)), num(law.ppf(0.5)),
                 num(law.ppf(0.975)), "relative:1e-8", "independent", fitted("shape with both quantiles at the ends by brentq, quantiles by ppf")])
    law = stats.uniform(lower, upper - lower)
    rows.append([f"uniform-{k}", "uniform", "range", "", "", lower, upper, num(lower), num(upper), num(law.mean()), num(law.std()), num(law.ppf(0.025)), num(law.ppf(0.5)), num(law.ppf(0.975)),
                 "relative:1e-8", "independent", fitted("uniform distribution")])
out("uncertain-figures", "id kind by value second lower upper first_parameter second_parameter mean deviation q025 q500 q975 tolerance kind_of_row source".replace("kind_of_row", "kind").replace("id kind by", "id family by"), rows)

rows = []
for k in range(60):
    n = random.choice([2, 3, 4, 6])
    weights = [float(f"{10 ** random.uniform(-0.5, 3):.4g}") for _ in range(n)]
    law = stats.dirichlet(weights)
    means, variances = law.mean(), law.var()
    rows.append([f"drawn-{k}", words(means), words([math.sqrt(v) for v in variances]), words(weights), "relative:1e-9", "independent", fitted("dirichlet mean and var")])
out("uncertain-shares", "id means deviations weights tolerance kind source", rows)

# Ratios of draws --------------------------------------------------------------------------------------------------------------------------------
random.seed("Ratios of draws")
rows = []
for k in range(70):
    n = random.choice([1, 4, 20, 101])
    off = random.choice([-1, 0, 1, 3])
    costs = [F(random.randint(-4, 60), 4) for _ in range(n)]
    effects = [F(random.randint(-2, 12) + off, 8) for _ in range(n)]
    confidence = random.choice(["0.5", "0.8", "0.95"])
    mc, me = sum(costs) / n, sum(effects) / n
    order = sorted((c / e for c, e in zip(costs, effects) if e > 0))
    order += [None] * (n - len(order))
    tail = (1 - F(confidence)) / 2

    def rank(fraction):
        return order[max(1, math.ceil(fraction * n)) - 1]
    low, high = rank(tail), rank(1 - tail)
    if me <= 0:
        answer = ["undefined", "", ""]
    elif high is None:
        answer = ["undefined", "" if low is None else num(min(low, mc / me)), ""]
    else:
        answer = [num(mc / me), num(min(low, mc / me)), num(max(high, mc / me))]
    without = F(sum(1 for e in effects if e <= 0), n)
    rows.append([f"drawn-{k}", words(costs), words(effects), confidence, *answer, num(without), "relative:1e-11", "independent", exact("ratios put in order, those without an effect last")])
out("drawn-ratios", "id costs effects confidence value lower upper without tolerance kind source", rows)

# Value of one parameter, of a sample and of a share -------------------------------------------------------------------------------------------
random.seed("Value of one parameter, of a sample and of a share")
rows = []
for k in range(60):
    laws = []
    for _ in range(2):
        kind = random.choice(["beta", "gamma", "lognormal"])
        mean = round(random.uniform(0.1, 0.9), 2) if kind == "beta" else round(random.uniform(1, 100), 1)
        deviation = float(f"{(math.sqrt(mean * (1 - mean)) * random.uniform(0.1, 0.45) if kind == 'beta' else mean * random.uniform(0.1, 0.6)):.3g}")
        laws.append((kind, mean, deviation, frozen(kind, mean, deviation)[0]))
    a, b = (round(random.choice([-1, 1]) * 10 / law[2] * random.uniform(0.2, 1), 4) for law in laws)
    middle = a * laws[0][1] + b * laws[1][1]
    shift = round(-middle + random.uniform(-8, 8), 3)
    now = max(0.0, middle + shift)
    answers = []
    for own, other, slope, rest in ((laws[0], laws[1], a, b), (laws[1], laws[0], b, a)):
        base = shift + rest * other[1]
        zero = -base / slope
        cut = min(max(own[3].cdf(zero), 0.0), 1.0)
        edge = own[3].ppf([1e-14, 1 - 1e-14])
        low, high = (zero, edge[1]) if slope > 0 else (edge[0], zero)
        low, high = max(low, edge[0]), min(high, edge[1])
        gain = integrate.quad(lambda x: (base + slope * x) * own[3].pdf(x), low, high, limit=500, epsabs=1e-11)[0] if low < high else 0.0
        answers.append(max(gain - now, 0.0))
    rows.append([f"drawn-{k}", *laws[0][:3], *laws[1][:3], a, b, shift, *(num(x) for x in answers), "absolute:0", "independent",
                 fitted("integral of the gain beyond its zero; the test allows for the draws")])

def curved(law, function):
    """Mean of the gain above 0 and of the gain, over the middles of 400,000 equal chances."""
    u = (np.arange(400_000) + 0.5) / 400_000
    gain = function(law.ppf(u))
    return max(0.0, float(np.mean(np.maximum(gain, 0))) - max(0.0, float(np.mean(gain))))


for k in range(40):
    shape = ["product", "hump"][k % 2]
    laws = []
    for _ in range(2):
        kind = random.choice(["beta", "gamma", "lognormal"])
        mean = round(random.uniform(0.2, 0.8), 2) if kind == "beta" else round(random.uniform(1, 50), 1)
        deviation = float(f"{(math.sqrt(mean * (1 - mean)) * random.uniform(0.1, 0.4) if kind == 'beta' else mean * random.uniform(0.1, 0.4)):.3g}")
        laws.append((kind, mean, deviation, frozen(kind, mean, deviation)[0]))
    (_, m1, d1, x), (_, m2, d2, y) = laws
    if shape == "product":
        a, b = float(f"{20 / (m1 * m2):.4g}"), 0
        shift = round(-20 * random.uniform(0.8, 1.2), 3)
        answers = [curved(x, lambda v: shift + a * v * m2), curved(y, lambda v: shift + a * v * m1)]
    else:
        a, b = float(f"{-5 / d1 ** 2:.4g}"), float(f"{4 / d2:.4g}")
        shift = round(5 - b * m2 + random.uniform(-3, 3), 3)
        answers = [curved(x, lambda v: shift + a * (v - m1) ** 2 + b * m2), curved(y, lambda v: shift + a * d1 ** 2 + b * v)]
    rows.append([f"{shape}-{k}", *laws[0][:3], *laws[1][:3], a, b, shift, *(num(v) for v in answers), "absolute:0", "independent",
                 fitted(f"mean over equal chances, {shape} of both; the test allows for the draws")])
out("parameter-information", "id first_family first_mean first_deviation second_family second_mean second_deviation first_slope second_slope constant of_first of_second tolerance kind source", rows)

rows = []
for k in range(70):
    a = float(f"{10 ** random.uniform(-0.7, 2):.3g}")
    b = float(f"{10 ** random.uniform(-0.7, 3):.3g}")
    mean = a / (a + b)
    options = [(0.0, 0.0)]
    for _ in range(random.choice([1, 1, 2, 3])):
        slope = random.choice([-1, 1]) * random.uniform(50, 2000)
        at = mean * random.uniform(0.5, 1.6)
        options.append((round(-slope * at, 2), round(slope * (1 - at), 2)))
    n = random.choice([0, 1, 2, 5, 20, 100, 400])
    A, B = mp.mpf(a), mp.mpf(b)

    def net(p):
        return max(zero + p * (one - zero) for zero, one in ((mp.mpf(z), mp.mpf(o)) for z, o in options))
    now = net(A / (A + B))
    total = mp.mpf(0)
    for x in range(n + 1):
        chance = mp.binomial(n, x) * mp.beta(A + x, B + n - x) / mp.beta(A, B)
        total += chance * net((A + x) / (A + B + n))
    crossings = sorted({mp.mpf(0), mp.mpf(1), *[
        c for (z1, o1), (z2, o2) in itertools.combinations(options, 2)
        for d in [mp.mpf(z1) - mp.mpf(z2) - (mp.mpf(o1) - mp.mpf(o2))] if d != 0 for c in [(mp.mpf(z1) - mp.mpf(z2)) / d] if 0 < c < 1]})
    perfect = mp.mpf(0)
    for low, high in zip(crossings, crossings[1:]):
        middle = (low + high) / 2
        zero, one = max(((mp.mpf(z), mp.mpf(o)) for z, o in options), key=lambda line: line[0] + middle * (line[1] - line[0]))

        def mass(s, t):
            return mp.betainc(s, t, low, high, regularized=True)
        perfect += zero * mass(A, B) + (one - zero) * A / (A + B) * mass(A + 1, B)
    rows.append([f"drawn-{k}", a, b, " ".join(f"{z!r}:{o!r}" for z, o in options), n, num(now), num(max(total - now, 0)), num(max(perfect - now, 0)), "absolute:1e-8", "independent",
                 exact("every result of the sample listed; incomplete beta functions between crossings")])
out("share-information", "id alpha beta options sample now of_sample of_perfect tolerance kind source", rows)

rows = []
for k in range(60):
    a, b = random.choice([1, 2, 3, 5]), random.choice([1, 4, 20, 60])
    mean = F(a, a + b)
    options = [(F(0), F(0))]
    for _ in range(random.choice([1, 1, 2])):
        slope = random.choice([-1, 1]) * F(random.randint(50, 2000))
        at = mean * F(random.randint(5, 16), 10)
        options.append((-slope * at, slope * (1 - at)))
    each, fixed, largest = F(random.choice([0, 1, 5, 40]), 20), F(random.choice([0, 0, 3])), random.choice([0, 10, 40])

    def worth(n):
        def net(p):
            return max(zero + p * (one - zero) for zero, one in options)
        total = F(0)
        for x in range(n + 1):
            # Whole weights: the chance is a ratio of binomial coefficients.
            chance = F(math.comb(a + x - 1, x) * math.comb(b + n - x - 1, n - x), math.comb(a + b + n - 1, n))
            total += chance * net(F(a + x, a + b + n))
        return total - net(mean)
    tried = [(F(0) if n == 0 else worth(n) - fixed - n * each, n) for n in range(largest + 1)]
    best = min((n for net, n in tried if net == max(t[0] for t in tried)))
    rows.append([f"drawn-{k}", a, b, " ".join(f"{num(z)}:{num(o)}" for z, o in options), num(each), num(fixed), largest, best, num(worth(best)), num(max(t[0] for t in tried)), "absolute:1e-8",
                 "independent", exact("every size tried, every result listed")])
out("best-samples", "id alpha beta options each fixed largest sample worth net tolerance kind source", rows)

# One-way swings ---------------------------------------------------------------------------------------------------------------------------------
random.seed("One-way swings")
rows = []
for k in range(60):
    n = random.choice([1, 2, 4, 8])
    values = [F(random.randint(-20, 20), 4) for _ in range(n)]
    ranges = [(v - F(random.randint(0, 12), 4), v + F(random.randint(0, 12), 4)) for v in values]
    weights = [F(random.randint(-3, 3)) for _ in range(n)]
    both = F(random.randint(0, 2), 8)

    def outcome(x):
        product = both
        for v in x:
            product *= v
        return sum(c * v for c, v in zip(weights, x)) + product
    ends = [tuple(outcome([*values[:i], end, *values[i + 1:]]) for end in ranges[i]) for i in range(n)]
    order = sorted(range(n), key=lambda i: (-abs(ends[i][1] - ends[i][0]), i))
    rows.append([f"drawn-{k}", " ".join(f"{float(v)!r}:{float(l)!r}:{float(u)!r}" for v, (l, u) in zip(values, ranges)), words(weights), num(both), " ".join(map(str, order)),
                 words([ends[i][0] for i in order]), words([ends[i][1] for i in order]), "absolute:1e-9", "independent", exact("each end of each parameter")])
out("one-way-swings", "id parameters weights product order at_lower at_upper tolerance kind source", rows)

# Break-even values ------------------------------------------------------------------------------------------------------------------------------
random.seed("Break-even values")


def halved(net, low, high, rising):
    """The value at which the gain turns; None where it does not."""
    a, b = net(low), net(high)
    first, last = (a, b) if rising else (b, a)
    if last < 0:
        return "undefined"
    if first >= 0:
        return "undefined"
    for _ in range(130):
        middle = (low + high) / 2
        if (net(middle) >= 0) == rising:
            high = middle
        else:
            low = middle
    return num(high if rising else low)


rows = []
for k in range(80):
    p, s, sp = (random.choice([0.0005, 0.004, 0.03, 0.3, round(random.random(), 3)]), random.choice([0.4, 0.6, 0.95, 1.0]), random.choice([0.9, 0.98, 0.997, 0.9995, 1.0]))
    c, h, worth = random.choice([0.0, 1.0, 5.0, 12.5]), random.choice([0.0, 60.0, 150.0, 900.0]), random.choice([0.0, 300.0, 4000.0, 60000.0])
    due, fixed = random.choice([0.0, 500.0, 20000.0]), random.choice([0.0, 50.0, 3000.0])
    P, S, SP, C, H, B = (mp.mpf(x) for x in (p, s, sp, c, h, worth))

    def gain(P=P, S=S, SP=SP, C=C, H=H, B=B):
        return P * S * B - C - (1 - P) * (1 - SP) * H
    most = P * S * B - (1 - P) * (1 - SP) * H
    alarms = (1 - P) * (1 - SP)
    cost_of_alarm = "undefined" if P * S * B < C or alarms == 0 else num((P * S * B - C) / alarms)
    need = C + alarms * H
    worth_needed = "0" if need == 0 else "undefined" if P * S == 0 else num(need / (P * S))
    full = gain() * mp.mpf(due)
    share = "undefined" if gain() < 0 or mp.mpf(fixed) > full or fixed == 0 else num(mp.mpf(fixed) / full)
    rows.append([f"drawn-{k}", p, s, sp, c, h, worth, due, fixed, num(gain()),
                 halved(lambda x: gain(SP=x), mp.mpf(0), mp.mpf(1), True), halved(lambda x: gain(S=x), mp.mpf(0), mp.mpf(1), True),
                 "undefined" if most < 0 else num(most), cost_of_alarm, worth_needed, share, "relative:1e-9", "independent",
                 exact("halving on the expected gain of a screen, or the line solved")])
out("break-even-values", "id prevalence sensitivity specificity cost false_positive benefit due fixed net at_specificity at_sensitivity at_cost at_false_positive at_benefit participation "
    "tolerance kind source", rows)

rows = []
for k in range(60):
    roots = sorted(random.sample(range(-40, 41), random.choice([0, 1, 1, 1, 2, 3])))
    roots = [F(r, 4) + F(1, 64) for r in roots]
    low, high = F(-8), F(9)
    sign = random.choice([-1, 1])
    inside = [r for r in roots if low < r < high]

    def poly(x):
        value = F(sign)
        for r in roots:
            value *= x - r
        return value
    if len(inside) == 1:
        answer, why = num(inside[0]), ""
    elif len(inside) == 0:
        answer, why = "undefined", "AlwaysPays" if poly(F(0)) > 0 else "NeverPays"
    else:
        answer, why = "undefined", "PaysInPieces"
    rows.append([f"drawn-{k}", words(roots), sign, num(low), num(high), answer, why, "absolute:1e-11", "independent", exact("a product of straight lines with known zeros")])
out("turning-points", "id roots sign lower upper at reason tolerance kind source", rows)

# Numbers needed ---------------------------------------------------------------------------------------------------------------------------------
random.seed("Numbers needed")
rows = []
for k in range(60):
    screens = random.choice([10, 200, 5000, 1000000])
    cases = min(screens, int(screens * 10 ** random.uniform(-4, -0.2)))
    confidence = random.choice([0.8, 0.95, 0.99])
    low, high = proportion_confint(cases, screens, alpha=1 - confidence, method="wilson")
    rows.append([f"case-{k}", "case", cases, screens, "", "", confidence, "undefined" if cases == 0 else num(F(screens, cases)), num(1 / high), "" if cases == 0 else num(1 / low),
                 "relative:1e-8", "independent", fitted("Wilson's limits turned over")])
for k in range(70):
    n1, n2 = random.choice([30, 400, 9000]), random.choice([30, 400, 9000])
    x1 = int(n1 * random.uniform(0.01, 0.5))
    x2 = int(n2 * x1 / n1 * random.uniform(0.3, 1.1))
    confidence = random.choice([0.8, 0.95, 0.99])
    low, high = confint_proportions_2indep(x1, n1, x2, n2, method="newcomb", compare="diff", alpha=1 - confidence)
    difference = F(x1, n1) - F(x2, n2)
    if difference < 0:
        answer = ["undefined", "", ""]
    elif low <= 0 or difference == 0:
        answer = ["undefined", num(1 / high), ""]
    else:
        answer = [num(1 / difference), num(1 / high), num(1 / low)]
    rows.append([f"averted-{k}", "averted", x1, n1, x2, n2, confidence, *answer, "relative:1e-7", "independent", fitted("Newcombe's limits turned over")])
out("numbers-needed", "id of first first_of second second_of confidence number lower upper tolerance kind source", rows)

# Decision curves --------------------------------------------------------------------------------------------------------------------------------
random.seed("Decision curves")
rows = []
for k in range(60):
    p, s, sp = (round(random.choice([random.random(), random.random() / 100]), 5), round(random.random(), 3), round(1 - 10 ** random.uniform(-4, -0.3), 5))
    threshold = round(random.choice([0, 0.001, 0.01, 0.05, 0.3, 0.9]), 4)
    P, S, SP, T = F(p), F(s), F(sp), F(threshold)
    weight = T / (1 - T)
    screen, everyone = P * S - (1 - P) * (1 - SP) * weight, P - (1 - P) * weight
    after = P * S / (P * S + (1 - P) * (1 - SP)) if P * S + (1 - P) * (1 - SP) else None
    missed = P * (1 - S) / (P * (1 - S) + (1 - P) * SP) if P * (1 - S) + (1 - P) * SP else None
    useful = after is not None and missed is not None and after > missed
    rows.append([f"stated-{k}", p, s, sp, "", "", "", "", "", threshold, num(screen), "", "", num(everyone), "", "", num(missed) if useful else "undefined", num(after) if useful else "undefined",
                 "absolute:1e-14", "independent", exact("shares of people, one by one")])
for k in range(60):
    n = random.choice([20, 300, 8000, 500000])
    tp = random.randint(0, max(1, n // random.choice([4, 50])))
    fp = random.randint(0, max(1, n // random.choice([4, 50])))
    infected = random.randint(tp, n - fp)
    threshold, confidence = random.choice([0, 0.01, 0.1, 0.5]), random.choice([0.8, 0.95, 0.99])
    w = threshold / (1 - threshold)
    a = proportion_confint(tp, n, alpha=1 - confidence, method="wilson")
    b = proportion_confint(fp, n, alpha=1 - confidence, method="wilson")
    i = proportion_confint(infected, n, alpha=1 - confidence, method="wilson")
    p, q = tp / n, fp / n
    r = -math.sqrt(p * q / ((1 - p) * (1 - q)))
    low = p - w * q - math.sqrt((p - a[0]) ** 2 + (w * (b[1] - q)) ** 2 - 2 * r * (p - a[0]) * w * (b[1] - q))
    high = p - w * q + math.sqrt((a[1] - p) ** 2 + (w * (q - b[0])) ** 2 - 2 * r * (a[1] - p) * w * (q - b[0]))
    rows.append([f"counts-{k}", "", "", "", tp, fp, n, infected, confidence, threshold, num(p - w * q), num(max(low, -w)), num(min(high, 1)), num(infected / n - (1 - infected / n) * w),
                 num(i[0] - (1 - i[0]) * w), num(i[1] - (1 - i[1]) * w), "", "", "absolute:1e-9", "independent", fitted("Wilson's limits squared and added with their correlation")])
out("decision-curves", "id prevalence sensitivity specificity true_positives false_positives screens infected confidence threshold screen lower upper all all_lower all_upper useful_from useful_to "
    "tolerance kind source", rows)

# Costs ------------------------------------------------------------------------------------------------------------------------------------------
random.seed("Costs")
rows = []
for k in range(60):
    def amount(big):
        value = F(random.randint(0, big), 4)
        return (value, value, value) if random.random() < 0.4 else (value, value * F(random.randint(0, 4), 4), value + F(random.randint(0, big), 8))
    items = [(amount(4000), amount(400) if random.random() < 0.93 else None) for _ in range(random.choice([1, 2, 4]))]
    number = amount(60)

    def total(pick):
        return sum(pick(u) * pick(p) for u, p in items if p is not None)
    sums = [sum(u * p for (u, p) in corner) for corner in itertools.product(*[[(u, p) for u in us[1:] for p in ps[1:]] for us, ps in items if ps is not None])] or [F(0)]
    missing = any(p is None and max(u) > 0 for u, p in items)
    value = "undefined" if missing or number[0] == 0 else num(total(lambda x: x[0]) / number[0])
    lower = "undefined" if number[2] == 0 else num(min(sums) / number[2])
    upper = "undefined" if missing or number[1] == 0 else num(max(sums) / number[1])

    def text(x):
        return "-" if x is None else "/".join(num(y) for y in x)
    rows.append([f"drawn-{k}", " ".join(f"{text(u)}*{text(p)}" for u, p in items), text(number), num(total(lambda x: x[0])), value, lower, upper, "relative:1e-12", "independent",
                 exact("every corner of the ranges")])
out("cost-yields", "id items number total each lower upper tolerance kind source", rows)

rows = []
for k in range(60):
    n = random.choice([1, 3, 6])
    cost, effect, steps = F(0), F(0), []
    for _ in range(n):
        cost += F(random.randint(-2, 40), 4)
        effect += F(random.randint(-1, 8), 8)
        steps.append((cost, effect))
    average = ["undefined" if e <= 0 else num(c / e) for c, e in steps]
    marginal = []
    for (c0, e0), (c1, e1) in zip([(F(0), F(0)), *steps], steps):
        dc, de = c1 - c0, e1 - e0
        marginal.append("undefined" if de == 0 or dc * de < 0 else num(abs(dc / de)))
    rows.append([f"drawn-{k}", " ".join(f"{num(c)}:{num(e)}" for c, e in steps), " ".join(average), " ".join(marginal), "relative:1e-12", "independent", exact("differences of the sums")])
out("marginal-costs", "id steps average marginal tolerance kind source", rows)

# Rules of frequency -----------------------------------------------------------------------------------------------------------------------------
random.seed("Rules of frequency")
rows = []
for k in range(80):
    edges = [(F(0), False), *sorted({(F(random.randint(1, 24), 100), random.random() < 0.5) for _ in range(random.choice([1, 2, 3]))})]
    edges = [e for i, e in enumerate(edges) if i == 0 or e[0] != edges[i - 1][0]]
    days = sorted(random.sample([56, 28, 14, 7, 3.5, 2, 1], len(edges)), reverse=True)
    rise, fall = random.choice([1, 1, 2, 3]), random.choice([1, 2, 3])
    start = random.randrange(len(edges))
    periods = []
    for _ in range(random.choice([1, 4, 12, 30])):
        n = random.choice([0, 50, 100, 100, 200])
        periods.append((random.randint(0, n // 4) if n else 0, n, random.choice([7, 28, 30])))

    def band(found, n):
        share = F(found, n)
        return max(i for i, (edge, above) in enumerate(edges) if (share > edge if above else share >= edge))
    bands = [band(f, n) if n else None for f, n, _ in periods]
    # In force from the list of changes; each period reads the history backwards from itself to the last change.
    force, changed = [], 0
    now = start
    after = []
    for t in range(len(periods)):
        force.append(now)
        for direction, need in ((1, rise), (-1, fall)):
            row = []
            u = t
            while u >= changed and bands[u] is not None and (bands[u] - now) * direction > 0:
                row.append(bands[u])
                u -= 1
            if len(row) >= need:
                now = min(row) if direction > 0 else max(row)
                changed = t + 1
                break
        after.append(now)
    screens = sum(F(d) / F(days[f]) for f, (_, _, d) in zip(force, periods))
    rows.append([f"drawn-{k}", " ".join(f"{'>' if above else ''}{float(edge)!r}:{day}" for (edge, above), day in zip(edges, days)), rise, fall, start,
                 " ".join(f"{f}/{n}/{d}" for f, n, d in periods), " ".join("-" if b is None else str(b) for b in bands), " ".join(map(str, force)), " ".join(map(str, after)), num(screens),
                 "relative:1e-12", "independent", exact("history read backwards at each period")])
out("frequency-rules", "id bands rise fall start periods band in_force next screens tolerance kind source", rows)

# Decision curves of screens that come in clusters -----------------------------------------------------------------------------------------------
random.seed("Decision curves in clusters")
rows = []


def widened(x, n, effect, clusters, confidence):
    """Both roots of the squared standardised distance from the share, of counts over their design effect, with Student's quantile below 30 clusters."""
    tail = 1 - (1 - confidence) / 2
    z = mp.mpf(stats.norm.ppf(tail))
    if 2 <= clusters < 30:
        # The library's quantile is the start: with two clusters it is right to 1e-9 only.
        df = clusters - 1
        z = mp.findroot(lambda q: mp.betainc(mp.mpf(df) / 2, 0.5, 0, df / (df + q * q), regularized=True) / 2 - (1 - mp.mpf(tail)), stats.t.ppf(tail, df))
    size, share = mp.mpf(n) / mp.mpf(effect), mp.mpf(x) / n
    lean = z ** 2 / size
    low, high = sorted(mp.polyroots([1 + lean, -(2 * share + lean), share ** 2], maxsteps=500, extraprec=200)) if x else (mp.mpf(0), lean / (1 + lean))
    return min(float(low), x / n), max(float(high), x / n)


for k in range(80):
    n = random.choice([20, 300, 8000, 500000])
    tp = random.choice([0, random.randint(0, max(1, n // random.choice([4, 50, 500])))])
    fp = random.choice([0, random.randint(0, max(1, n // random.choice([4, 50, 500])))])
    effects = [random.choice([1.0, round(random.uniform(1, 3), 3), round(random.uniform(1, 20), 3)]) for _ in range(2)]
    clusters = [random.choice([0, 1, 2, 5, 29, 30, 200]) for _ in range(2)]
    threshold, confidence = random.choice([0, 0.01, 0.1, 0.5, 0.9]), random.choice([0.8, 0.95, 0.99])
    w = threshold / (1 - threshold)
    p, q = tp / n, fp / n
    a, b = (widened(x, n, effect, m, confidence) for x, effect, m in zip((tp, fp), effects, clusters))
    r = -math.sqrt(p * q / ((1 - p) * (1 - q)))
    low = p - w * q - math.sqrt((p - a[0]) ** 2 + (w * (b[1] - q)) ** 2 - 2 * r * (p - a[0]) * w * (b[1] - q))
    high = p - w * q + math.sqrt((a[1] - p) ** 2 + (w * (q - b[0])) ** 2 - 2 * r * (a[1] - p) * w * (q - b[0]))
    rows.append([f"clustered-{k}", tp, fp, n, effects[0], clusters[0], effects[1], clusters[1], confidence, threshold, num(p - w * q), num(max(low, -w)), num(min(high, 1)),
                 "absolute:1e-9", "independent", exact("roots of the score equation of counts over their design effect, squared and added with their correlation")])
out("decision-curves-clustered", "id true_positives false_positives screens found_effect found_clusters alarm_effect alarm_clusters confidence threshold screen lower upper tolerance kind source", rows)
