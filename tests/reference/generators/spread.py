#!/usr/bin/python3
"""Reference values for spread inside a workplace: compartments, outbreaks without limit, outbreaks at a site, the renewal equation.

Run from the repository root with Debian's python3 and python3-mpmath:

    /usr/bin/python3 tests/reference/generators/spread.py

Nothing here uses the formulas that the library uses where another way exists. Compartments: the published difference equations with their
maxima of 0, as one vector, and only settings in which no maximum binds (there the library's guard does nothing). Chance of dying out: the
generating function applied to 0 again and again, then bisection. Sizes without limit: cases dealt with one after the other, by convolving
the offspring of each (not the formula for the total progeny). Sizes at a site: the triangular equations of Ball 1986 at 120 digits (from
memory), which have nothing in common with the library's chain and sums. Renewal: sums over pairs of days. Growth rates: bisection.
"""
import csv
import random

import mpmath as mp

mp.mp.dps = 30
random.seed(20261126)


def tool(how):
    return f"mpmath {mp.__version__} at {mp.mp.dps} digits: {how} (generators/spread.py)"


def out(name, header, rows):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header.split())
        writer.writerows(rows)


def num(value):
    return "" if value is None else mp.nstr(mp.mpf(value), 17)


COMPARTMENTS = ("id uninfected infectious days reproduction latent recovery symptoms fatal imports import_every every sensitivity specificity "
                "return cycles contacts screen_cost confirm_cost at U E A FP TP S R D infections screens false_alarms found mean_isolated "
                "mean_infected cost_per_person tolerance kind source")


def published_equations(s):
    """All states, whether a maximum bound, infections, screens, false positives, true positives."""
    c = s["cycles"]
    rho = 1 / mp.mpf(s["recovery"] * c)
    sigma = rho * mp.mpf(s["symptoms"]) / (1 - mp.mpf(s["symptoms"]))
    delta = rho * mp.mpf(s["fatal"]) / (1 - mp.mpf(s["fatal"]))
    theta, mu = 1 / (mp.mpf(s["latent"]) * c), 1 / (mp.mpf(s["return"]) * c)
    beta = mp.mpf(s["reproduction"]) * (rho + sigma)
    tau = 1 / (mp.mpf(s["every"]) * c) if s["every"] else mp.mpf(0)
    se, alarm = mp.mpf(s["sensitivity"]), 1 - mp.mpf(s["specificity"])
    states = [[mp.mpf(s["uninfected"]), mp.mpf(0), mp.mpf(s["infectious"])] + [mp.mpf(0)] * 5]
    bound = None
    infections = screens = alarms = found = mp.mpf(0)
    step = round(s["import_every"] * c)
    for t in range(s["days"] * c):
        u, e, a, fp, tp, sy, r, d = states[-1]
        before = states[-2] if t else [mp.mpf(0)] * 8
        pool = u + e + a + {"circulating": 0, "recovered": r, "everybody": fp + tp + sy + r + d}[s["contacts"]]
        new = beta * u * a / pool if pool else mp.mpf(0)
        x = mp.mpf(s["imports"]) if (t + 1) % step == 0 else mp.mpf(0)
        fresh_fp, fresh_tp = before[0] * tau * alarm, before[2] * tau * se
        u2 = u - new + mu * fp - fresh_fp - x
        a2 = a * (1 - sigma - rho) + theta * e - fresh_tp
        if bound is None and (u2 < 0 or a2 < 0):
            bound = t + 1
        states.append([max(mp.mpf(0), u2), e * (1 - theta) + new + x, max(mp.mpf(0), a2), fp * (1 - mu) + fresh_fp,
                       tp * (1 - sigma - rho) + fresh_tp, sy * (1 - rho - delta) + sigma * (tp + a), r + rho * (tp + a + sy), d + delta * sy])
        infections += new + x
        screens += tau * (u + e + a)
        alarms += fresh_fp
        found += fresh_tp
    return states, bound, infections, screens, alarms, found


def settings_fields(s):
    return [s["uninfected"], s["infectious"], s["days"], s["reproduction"], s["latent"], s["recovery"], s["symptoms"], s["fatal"], s["imports"],
            s["import_every"], s["every"] or "", s["sensitivity"], s["specificity"], s["return"], s["cycles"], s["contacts"], s["screen_cost"], s["confirm_cost"]]


def compartment_row(name, s, result):
    states, _, infections, screens, alarms, found = result
    n = len(states) - 1
    mean = lambda ks: sum(sum(x[k] for k in ks) for x in states[1:]) / n if n else None
    cost = (screens * s["screen_cost"] + (alarms + found) * s["confirm_cost"]) / (s["uninfected"] + s["infectious"])
    return ([name] + settings_fields(s) + [n] + [num(x) for x in states[-1]]
            + [num(infections), num(screens), num(alarms), num(found), num(mean((3, 4, 5))) if n else "undefined", num(mean((4, 5))) if n else "undefined", num(cost)])


def compartments():
    rows = []
    tail = ["relative:1e-9", "independent", tool("the published difference equations as one vector, no maximum binding")]
    while len(rows) < 60:
        c = random.choice([1, 2, 3, 3, 4, 8])
        s = dict(uninfected=random.choice([0, 1, 9, 50, 400, 4990, 1000000]), infectious=random.choice([0, 1, 2.5, 10, 300]), days=random.choice([0, 1, 7, 30, 80, 120]),
                 reproduction=random.choice([0, 0.4, 1, 1.7, 2.5, 6]), latent=random.choice([1, 2.5, 3, 6]), recovery=random.choice([4, 7.5, 14, 30]),
                 symptoms=random.choice([0, 0.1, 0.3, 0.7]), fatal=random.choice([0, 0.0005, 0.1]), imports=random.choice([0, 0.2, 3, 10]), import_every=random.choice([1, 2, 7, 14]),
                 every=random.choice([None, 1, 2, 3.5, 7, 14, 30]), sensitivity=random.choice([0, 0.4, 0.7, 0.9, 1]), specificity=random.choice([0.9, 0.98, 0.997, 1]),
                 cycles=c, contacts=random.choice(["circulating", "circulating", "recovered", "everybody"]), screen_cost=random.choice([0, 5, 10]), confirm_cost=random.choice([0, 100]))
        s["return"] = random.choice([1, 2, 5])
        if s["uninfected"] + s["infectious"] < 1:
            continue
        result = published_equations(s)
        if result[1] is not None:
            continue
        rows.append(compartment_row(f"drawn-{len(rows)}", s, result) + tail)

    # The quirk: the published equations of the worst scenario just before and just after a maximum of 0 first binds.
    worst = dict(uninfected=4990, infectious=10, days=80, reproduction=3.5, latent=3, recovery=14, symptoms=0.3, fatal=0.0005, imports=25, import_every=7, every=None,
                 sensitivity=0.7, specificity=0.98, cycles=3, contacts="circulating", screen_cost=10, confirm_cost=100)
    worst["return"] = 1
    states, bound, infections, *_ = published_equations(worst)
    note = tool(f"the published difference equations of the worst scenario, unscreened: a maximum of 0 first binds at cycle {bound}")
    fields = settings_fields(worst)
    blank = [""] * 7
    rows.append(["worst-before"] + fields + [bound - 1] + [num(x) for x in states[bound - 1]] + blank + ["relative:1e-9", "independent", note])
    rows.append(["worst-quirk"] + fields + [bound] + [num(x) for x in states[bound]] + [num(infections)] + [""] * 6 + ["relative:1e-9", "independent", note])
    out("compartment-models", COMPARTMENTS, rows)


def escape(r, k, s):
    """The offspring's generating function at s."""
    return mp.exp(-r * (1 - s)) if k is None else (1 + r * (1 - s) / k) ** (-k)


def offspring_chances(r, k, c, most):
    chances = []
    p = mp.exp(-r) if k is None else (1 + r / k) ** (-k)
    for x in range(most + 1):
        chances.append((1 - c) * p + (c if x == 0 else 0))
        p = p * (r / (x + 1) if k is None else r / (k + r) * (k + x) / (x + 1))
    return chances


def dies_out(r, k, c):
    g = lambda s: c + (1 - c) * escape(r, k, s)
    if (1 - c) * r <= 1:
        return mp.mpf(1)
    low = mp.mpf(0)
    for _ in range(200):
        low = g(low)
    # Between the iterate, which is below the root, and the point of slope 1, which is above it.
    high = 1 - mp.log((1 - c) * r) / r if k is None else 1 - k / r * (((1 - c) * r) ** (1 / (k + 1)) - 1)
    for _ in range(110):
        middle = (low + high) / 2
        if g(middle) > middle:
            low = middle
        else:
            high = middle
    return low


def sizes_by_turns(chances, introductions, most):
    """The chance of each size below `most`: cases dealt with one after the other."""
    state = {introductions: mp.mpf(1)}
    sizes = [mp.mpf(0)] * most
    for done in range(most):
        sizes[done] = state.pop(done, mp.mpf(0))
        after = {}
        for cases, chance in state.items():
            for x in range(most - cases):
                after[cases + x] = after.get(cases + x, mp.mpf(0)) + chance * chances[x]
        state = after
    return sizes


def offspring():
    rows = []
    how = "the generating function iterated, then bisection; sizes by dealing with the cases one after the other"
    cases = [(0.5, 0.1, 0, 1, 5), (2.5, 0.1, 0, 1, 5), (3, 1e-6, 0, 1, 5), (1, 1, 0, 1, 10), (1, None, 0, 1, 10), (0, 1, 0, 1, 2), (0, None, 0.5, 2, 2), (50, 0.2, 0, 1, 5),
             (1000, None, 0, 1, 5), (1.0001, 0.5, 0, 1, 5), (2, 1e6, 0, 1, 12), (2.5, 0.3, 0.6, 1, 5), (2.5, 0.3, 1, 3, 5), (4, None, 0.5, 1, 20), (0.01, 0.2, 0, 1, 6), (1.2, 1e-3, 0, 1, 8), (1.00000001, None, 0, 1, 5), (1.00001, 0.02, 0, 1, 5), (2.0000001, 3, 0.5, 1, 5), (1e9, 1e-9, 0, 1, 5), (1e9, 0.5, 0, 1, 5)]
    while len(cases) < 75:
        cases.append((random.choice([0.05, 0.3, 0.7, 0.95, 1.1, 1.5, 2.5, 5, 20]), random.choice([None, 0.02, 0.1, 0.16, 0.5, 1, 3, 10, 200]),
                      random.choice([0, 0, 0, 0.2, 0.7]), random.choice([1, 1, 1, 2, 3, 7]), random.choice([2, 3, 5, 8, 15, 25])))
    for i, (r, k, c, a, size) in enumerate(cases):
        r, k, c = mp.mpf(r), None if k is None else mp.mpf(k), mp.mpf(c)
        sizes = sizes_by_turns(offspring_chances(r, k, c, size + 1), a, size + 1)
        q = dies_out(r, k, c)
        by = mp.mpf(0)
        for _ in range(6):
            by = c + (1 - c) * escape(r, k, by)
        rows.append([f"drawn-{i}", num(r), num(k), num(c), a, size, num(q ** a), num(by ** a), num(sizes[size]), num(1 - sum(sizes[:size])), "absolute:1e-12", "independent", tool(how)])
    out("offspring", "id reproduction dispersion caught introductions size extinct extinct_by_6 exactly at_least tolerance kind source", rows)


def site_sizes(n, a, r, k, c):
    """Ball's equations: for each l, sum over i <= l of C(n - i, l - i) P(i) / phi(n - l)^(i + a) = C(n, l); n at risk, a at the start."""
    phi = lambda left: c + (1 - c) * escape(r, k, 1 - mp.mpf(left) / (n + a - 1)) if n + a > 1 else mp.mpf(1)
    p = []
    for l in range(n + 1):
        f = phi(n - l)
        known = sum(mp.binomial(n - i, l - i) * p[i] / f ** (i + a) for i in range(l))
        p.append((mp.binomial(n, l) - known) * f ** (l + a))
    return p


def sites():
    rows = []
    with mp.workdps(120):
        how = tool("the triangular equations of Ball 1986 (from memory)")
        cases = [(1, 1, 3, 0.2, 0, 1), (2, 1, 3, 0.2, 0, 2), (3, 1, 2, None, 0, 3), (3, 1, 2, None, 0, 2), (10, 10, 2, 0.3, 0, 10), (12, 1, 0, 0.3, 0, 2), (8, 1, 1e6, 0.3, 0, 8),
                 (8, 1, 2, 1e-6, 0, 5), (8, 1, 2, 1e6, 0, 5), (60, 1, 1.5, 0.1, 0, 5), (150, 1, 1.5, 0.1, 0, 5), (150, 2, 2.5, None, 0, 60), (9, 1, 2.5, 0.5, 1, 2)]
        while len(cases) < 65:
            n = random.choice([2, 3, 5, 8, 12, 20, 35, 60, 100])
            a = random.choice([1, 1, 1, 2])
            cases.append((n, a, random.choice([0.2, 0.8, 1, 1.5, 2.5, 6, 40]), random.choice([None, 0.05, 0.16, 0.5, 1, 4, 50, 5000]), random.choice([0, 0, 0.3, 0.8]), random.randint(a, n)))
        for i, (n, a, r, k, c, size) in enumerate(cases):
            r, k, c = mp.mpf(str(r)), None if k is None else mp.mpf(str(k)), mp.mpf(str(c))
            p = site_sizes(n - a, a, r, k, c)
            exactly = p[size - a]
            rows.append([f"drawn-{i}", num(r), num(k), num(c), n, a, size, num(exactly), num(sum(p[size - a:])), num(sum((j + a) * x for j, x in enumerate(p))), "absolute:1e-10", "independent", how])
    out("site-outbreaks", "id reproduction dispersion caught people introductions size exactly at_least mean tolerance kind source", rows)


def renewal():
    rows = []
    profiles = [[1], [0, 0, 1], [0, 1, 3, 4, 3, 2, 1], [5, 4, 3, 2, 1, 0.5, 0.25, 0.1], [0, 0, 2, 6, 9, 9, 7, 5, 4, 3, 2, 1, 1, 0.5]]
    how = tool("sums over pairs of days; bisection for the growth rate")
    cases = [(1, 0.01, 3, 2, 91, 0), (1, 0, 3, 2, 91, 1), (2, 0.01, 30, 2, 91, 0), (1000000, 1, 0, 2, 91, 0), (1000000, 1, 1, 2, 91, 0), (500, 0, 2, 2, 91, 0), (500, 3, 2, 2, 0, 0), (50, 1, 1000000, 2, 91, 0)]
    while len(cases) < 60:
        cases.append((random.choice([2, 7, 40, 300, 5000, 1000000]), random.choice([0, 0.001, 0.05, 0.7, 4, 50]), random.choice([0, 0.3, 0.8, 1, 1.3, 2.5, 8]),
                      random.randrange(len(profiles)), random.choice([1, 7, 30, 91, 180]), random.choice([0, 0, 0.1, 2])))
    for i, (people, imports, r, profile, days, earlier) in enumerate(cases):
        w = [mp.mpf(x) for x in profiles[profile]]
        share = [x / sum(w) for x in w]
        most = min(mp.mpf(r), mp.mpf(people) - 1)
        infected, inside, imported = {}, mp.mpf(0), mp.mpf(0)
        for t in range(days):
            force = most * sum(share[j - 1] * (infected[t - j] if t >= j else mp.mpf(earlier)) for j in range(1, len(w) + 1))
            rate = force + mp.mpf(imports)
            free = people - sum(infected.values())
            infected[t] = free * (1 - mp.exp(-rate / people))
            if rate > 0:
                inside += infected[t] * force / rate
                imported += infected[t] * mp.mpf(imports) / rate
        growth = "undefined"
        if r > 0:
            f = lambda x: r * sum(s * mp.exp(-x * (j + 1)) for j, s in enumerate(share)) - 1
            growth = num(0 if r == 1 else mp.findroot(f, (-20, 20), solver="bisect", tol=1e-25, maxsteps=200))
        rows.append([f"drawn-{i}", people, imports, r, " ".join(str(x) for x in profiles[profile]), days, earlier, num(imported), num(inside), growth, "absolute:1e-9" if people < 1e6 else "relative:1e-9", "independent", how])
    out("renewal-spread", "id people imports reproduction profile days earlier imported inside growth tolerance kind source", rows)


compartments()
offspring()
sites()
renewal()
