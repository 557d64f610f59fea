#!/usr/bin/python3
"""Reference values for courses of an infection: yields of schedules by integration and by simulation, and simulated viral loads.

Run from the repository root with Debian's python3, python3-numpy and python3-scipy:

    /usr/bin/python3 tests/reference/generators/courses.py

Nothing here uses what the library uses. Repeating schedules: the place of the infection within the pattern is integrated over (Gauss-Legendre
between the places where a screen meets a knot), every screen of every place is followed, people's effects are summed over 201 steps, and what is
passed on after a screen is integrated numerically. Observed gaps: people, gaps, misses and onsets are drawn one by one. Viral loads: the load is
evaluated on a grid of days, detection and infectiousness are read off it, and screens, misses and onsets are drawn.
"""
import csv
import numpy as np
import scipy
from scipy.stats import lognorm, norm

rng = np.random.default_rng(20261125)
GL = np.polynomial.legendre.leggauss(10)
GL16 = np.polynomial.legendre.leggauss(16)


def tool(how):
    return f"numpy {np.__version__}, scipy {scipy.__version__}: {how} (generators/courses.py)"


def out(name, header, rows):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header.split())
        writer.writerows(rows)


def num(x):
    return repr(float(x))


def nums(xs):
    return " ".join(num(x) for x in xs)


class Curve:
    """Linear between knots, jumps where two knots have one age, nothing outside."""

    def __init__(self, ages, values):
        self.ages, self.values = np.asarray(ages, float), np.asarray(values, float)

    def place(self, x):
        i = np.clip(np.searchsorted(self.ages, x, side="right") - 1, 0, len(self.ages) - 2)
        width = self.ages[i + 1] - self.ages[i]
        t = np.where(width > 0, (x - self.ages[i]) / np.where(width > 0, width, 1), 0)
        inside = (x >= self.ages[0]) & (x < self.ages[-1])
        return i, t, inside

    def at(self, x, values=None):
        v = self.values if values is None else values
        i, t, inside = self.place(x)
        return np.where(inside, v[..., i] * (1 - t) + v[..., i + 1] * t, 0)


def not_isolated(x, symptoms, share=None):
    """Chance that symptoms have not isolated a person; with a share of 1 of people, that they have not begun."""
    if symptoms is None:
        return np.ones_like(x)
    sh, med, sd, iso = symptoms
    w = sh * iso if share is None else share
    return 1 - w * lognorm.cdf(np.maximum(x, 0), sd, scale=med)


def tail(spread, symptoms, u):
    total = np.zeros_like(u)
    for a, b, va, vb in zip(spread.ages, spread.ages[1:], spread.values, spread.values[1:]):
        if b <= a:
            continue
        for lo, hi in zip(np.linspace(a, b, 4), np.linspace(a, b, 4)[1:]):
            low = np.clip(u, lo, hi)
            x = low[..., None] + (hi - low)[..., None] * (GL16[0] + 1) / 2
            v = va + (vb - va) * (x - a) / (b - a)
            total += ((v * not_isolated(x, symptoms)) @ GL16[1]) * (hi - low) / 2
    return total


def integrated(detection, spread, symptoms, period, at, participation, never, follow, rho, delay):
    if rho > 0:
        z = np.linspace(-8, 8, 201)
        weight = norm.pdf(z) * (z[1] - z[0])
        with np.errstate(divide="ignore"):
            table = norm.cdf((norm.ppf(detection.values)[None, :] + np.sqrt(rho) * z[:, None]) / np.sqrt(1 - rho))
    else:
        weight, table = np.ones(1), detection.values[None, :]
    marks = {0.0, period}
    for o in at:
        for age in list(detection.ages) + [a - delay for a in spread.ages] + ([symptoms[1], symptoms[1] - delay] if symptoms else []):
            marks.add((o - age) % period)
    marks = sorted(set(marks) | set(np.linspace(0, period, max(2, int(period * (4 if symptoms else 1)) + 1))))
    lo, hi = np.array(marks[:-1]), np.array(marks[1:])
    place = (lo[:, None] + (hi - lo)[:, None] * (GL[0] + 1) / 2).ravel()
    w = ((hi - lo)[:, None] * GL[1] / 2).ravel() / period
    last = detection.ages[-1]
    missed = np.repeat(weight[:, None], len(place), 1)
    order = np.array(sorted(at))
    start = np.searchsorted(order, place, side="left")
    sums = dict(found=0.0, screens=0.0, alone=0.0, both=0.0, before=0.0, onset=0.0)
    k = 0
    while True:
        j = start + k
        age = order[j % len(order)] + period * (j // len(order)) - place
        if (age >= last).all():
            break
        i, t, inside = detection.place(age)
        inside &= age > detection.ages[0]
        p = np.where(inside, table[:, i] * (1 - t) + table[:, i + 1] * t, 0)
        here = np.where(inside, missed.sum(0), 0)
        positive = (missed * p).sum(0) * participation * follow
        missed = missed * (1 - participation * follow * p)
        free = not_isolated(age, symptoms)
        sums["found"] += (w * positive * free).sum()
        sums["screens"] += (w * here * free).sum() * participation
        sums["alone"] += (w * positive * tail(spread, None, age + delay)).sum()
        sums["both"] += (w * positive * tail(spread, symptoms, age + delay)).sum()
        sums["before"] += (w * positive * (age + delay < spread.ages[0])).sum()
        if symptoms:
            sums["onset"] += (w * positive * not_isolated(age + delay, symptoms, 1.0)).sum()
        k += 1
    zero = np.zeros(1)
    total, kept = tail(spread, None, zero)[0], tail(spread, symptoms, zero)[0]
    for key in sums:
        sums[key] *= 1 - never
    free = not_isolated(np.array([spread.ages[0]]), symptoms)[0]
    return [sums["found"], sums["screens"], total / spread.values.max(), 1 - kept / total + sums["both"] / total, 1 - kept / total, sums["alone"] / total,
            1 - free + free * sums["before"], sums["onset"] if symptoms else None]


def drawn(detection, spread, symptoms, gaps, participation, never, follow, rho, delay, people=400_000):
    days, counts = np.array([g for g, _ in gaps], float), np.array([c for _, c in gaps], float)
    age = rng.random(people) * rng.choice(days, people, p=days * counts / (days * counts).sum())
    takes = rng.random(people) >= never
    effect = rng.standard_normal(people)
    if symptoms:
        has = rng.random(people) < symptoms[0]
        onset = np.where(has, symptoms[1] * np.exp(symptoms[2] * rng.standard_normal(people)), np.inf)
        isolates = has & (rng.random(people) < symptoms[3])
    else:
        has = isolates = np.zeros(people, bool)
        onset = np.full(people, np.inf)
    by_symptoms = np.where(isolates, onset, np.inf)
    found = np.full(people, np.inf)
    screens = np.zeros(people)
    with np.errstate(divide="ignore"):
        quantile = norm.ppf(detection.values)
    while (age < detection.ages[-1]).any():
        i, t, inside = detection.place(age)
        inside &= (age > detection.ages[0]) & (age < detection.ages[-1])
        if rho > 0:
            ends = [norm.cdf((quantile[k] + np.sqrt(rho) * effect) / np.sqrt(1 - rho)) for k in (i, i + 1)]
        else:
            ends = [detection.values[i], detection.values[i + 1]]
        p = np.where(inside, ends[0] * (1 - t) + ends[1] * t, 0)
        taken = takes & inside & (rng.random(people) < participation) & np.isinf(found)
        screens += taken & (age < by_symptoms)
        positive = taken & (rng.random(people) < p) & (rng.random(people) < follow)
        found = np.where(positive, age, found)
        age = age + rng.choice(days, people, p=counts / counts.sum())
    whole = tail(spread, None, np.zeros(1))[0]

    def removed(at):
        return tail_fast(spread, np.minimum(at, 1e6)) / whole
    isolated = np.minimum(found + delay, by_symptoms)
    values = [found < by_symptoms, screens, np.full(people, whole / spread.values.max()), removed(isolated), removed(by_symptoms), removed(found + delay),
              isolated < spread.ages[0]]
    errors = [np.std(v) / np.sqrt(people) for v in values]
    means = [np.mean(v) for v in values]
    if symptoms:
        means.append(np.mean((found + delay < onset)[has]))
        errors.append(0.5 / np.sqrt(has.sum()))
    else:
        means.append(None)
    return means, max(errors)


def tail_fast(spread, u):
    total = np.zeros_like(u)
    for a, b, va, vb in zip(spread.ages, spread.ages[1:], spread.values, spread.values[1:]):
        if b <= a:
            continue
        low = np.clip(u, a, b)
        v = va + (vb - va) * (low - a) / (b - a)
        total += (b - low) * (v + vb) / 2
    return total


def random_course():
    kind = rng.choice(["windows", "days", "jumps"])
    if kind == "windows":
        a, i0 = rng.uniform(0, 5), rng.uniform(0, 5)
        s = rng.choice([0.3, 0.6, 0.9, 1.0])
        return Curve([a, a + rng.uniform(2, 14)], [s, s]), Curve([i0, i0 + rng.uniform(2, 10)], [1, 1])
    n = int(rng.integers(4, 10))
    first = rng.uniform(0, 3)
    ages = np.round(np.concatenate([[first], first + np.cumsum(rng.uniform(0.5, 4, n))]), 2)
    p = np.concatenate([[0], rng.uniform(0.05, 0.98, n - 1), [0]])
    v = np.concatenate([[0, 0], rng.uniform(0.1, 5, n - 2), [0]])
    if kind == "jumps":
        p[-1], v[-1] = rng.uniform(0.1, 0.9), rng.uniform(0.1, 2)
        v[1] = rng.uniform(0.1, 5)
        return Curve(ages, p), Curve(ages[1:], v[1:])
    return Curve(ages, p), Curve(ages[1:], v[1:])


def course_rows(cases, drawn_cases):
    rows = []
    for k in range(cases + drawn_cases):
        detection, spread = random_course()
        symptoms = None if rng.random() < 0.35 else (rng.uniform(0.2, 1), rng.uniform(2, 8), rng.choice([0.1, 0.3, 0.42, 0.6]), rng.choice([0.0, 0.5, 0.8, 1.0]))
        rho = 0.0 if rng.random() < 0.4 else rng.choice([0.1, 0.3, 0.5, 0.8])
        participation, never, follow = rng.choice([1.0, 1.0, 0.9, 0.6]), rng.choice([0.0, 0.0, 0.1, 0.4]), rng.choice([1.0, 1.0, 0.85])
        delay = rng.choice([0.0, 0.25, 1.0, 2.0, 3.3])
        gaps = period = at = ""
        if k < cases:
            style = rng.choice(["every", "weekdays", "pattern"])
            if style == "every":
                period, at = float(rng.choice([0.5, 1, 2, 3, 3.5, 7, 14, 30.4])), [0.0]
            elif style == "weekdays":
                period, at = 7.0, sorted(float(d) for d in rng.choice(7, int(rng.integers(1, 6)), replace=False))
            else:
                period = float(np.round(rng.uniform(4, 20), 2))
                at = sorted(float(np.round(x, 2)) for x in (np.arange(3) + rng.uniform(0, 0.8, 3)) * period / 3)
            value = integrated(detection, spread, symptoms, period, at, participation, never, follow, rho, delay)
            tolerance, how = "absolute:2e-7", "integrated over the place of the infection, every screen followed, effects summed"
        else:
            gaps = [(int(d), int(rng.integers(1, 60))) for d in sorted(rng.choice(np.arange(1, 22), int(rng.integers(1, 8)), replace=False))]
            value, error = drawn(detection, spread, symptoms, gaps, participation, never, follow, rho, delay)
            tolerance, how = f"absolute:{4.5 * error:.2g}", "400,000 people drawn one by one; the tolerance is four and a half times the largest standard error of the row"
        rows.append([
            f"{'observed' if gaps else 'repeating'}-{k}", nums(detection.ages), nums(detection.values), nums(spread.ages), nums(spread.values),
            nums(symptoms) if symptoms else "", num(period) if gaps == "" else "", nums(at) if gaps == "" else "",
            " ".join(f"{d} {c}" for d, c in gaps) if gaps else "", num(participation), num(never), num(follow), num(rho), num(delay),
            *[num(v) if v is not None else "undefined" for v in value], tolerance, "independent", tool(how)])
    out("course-yields", "id detection_ages detection spread_ages spread symptoms period at gaps participation never follow_through correlation delay "
        "detected screens days removed by_symptoms by_screening before before_onset tolerance kind source", rows)


def viral_rows(cases, people=20_000):
    rows = []
    for k in range(cases):
        start = sorted(rng.uniform(0.5, 4, 2))
        level, end = rng.uniform(2, 4), rng.uniform(4, 6)
        shortest, shape, scale = rng.uniform(0.3, 1), rng.uniform(0.8, 3), rng.uniform(0.3, 1.2)
        cap = rng.choice(["Whole", "DrawnPart"])
        longest = rng.uniform(1.5, 4)
        peak = sorted(rng.uniform(6.6, 11, 2))
        clearance = sorted(rng.uniform(3, 10, 2))
        share, after, iso = rng.uniform(0, 1), sorted(rng.uniform(0, 4, 2)), rng.choice([0.0, 0.5, 1.0])
        limit, infectious = rng.choice([3.0, 4.5, 5.0, 6.0, 7.5]), rng.choice([3.5, 5.0, 6.0])
        function = rng.choice(["LogAboveThreshold", "LogAboveThreshold", "Step"])
        s = rng.choice([1.0, 1.0, 0.9, 0.7])
        rho = 0.0 if s == 1 or rng.random() < 0.4 else rng.choice([0.2, 0.5])
        participation, never = rng.choice([1.0, 0.8]), rng.choice([0.0, 0.2])
        delay = rng.choice([0.0, 0.5, 1.0, 2.0])
        period, at = [(1.0, [0.0]), (2.0, [0.0]), (3.5, [0.0]), (7.0, [0.0]), (14.0, [0.0]), (7.0, [0.0, 3.0]), (7.0, [0.0, 2.0, 4.0])][int(rng.integers(7))]
        t0 = rng.uniform(*start, people)
        gamma = rng.gamma(shape, scale, people)
        growth = np.minimum(shortest + gamma, longest) if cap == "Whole" else shortest + np.minimum(gamma, longest)
        tp, vp = t0 + growth, rng.uniform(*peak, people)
        has = rng.random(people) < share
        onset = np.where(has, tp + rng.uniform(*after, people), np.inf)
        tf = np.where(has, onset, tp) + rng.uniform(*clearance, people)
        isolates = has & (rng.random(people) < iso)
        quits = np.where(isolates, onset, np.inf)

        def load(t, who=slice(None)):
            a, b, c, v = t0[who], tp[who], tf[who], vp[who]
            with np.errstate(divide="ignore", invalid="ignore"):
                up = level + (v - level) * (t - a) / (b - a)
                down = v + (end - v) * (t - b) / (c - b)
            return np.where(t < a, 0, np.where(t < b, up, np.maximum(down, 0)))

        # Screens drawn one by one.
        horizon = float((tf + (tf - tp) * 4).max())
        place = rng.random(people) * period
        effect = rng.standard_normal(people)
        chance = norm.cdf((norm.ppf(s) + np.sqrt(rho) * effect) / np.sqrt(1 - rho)) if 0 < rho and s < 1 else np.full(people, s)
        takes = rng.random(people) >= never
        found, screens = np.full(people, np.inf), np.zeros(people)
        for turn in range(int(min(horizon, 80) / period) + 2):
            for o in at:
                t = o + turn * period - place
                can = (t >= 0) & (load(t) >= limit) & takes & np.isinf(found) & (rng.random(people) < participation)
                screens += can & (t < quits)
                found = np.where(can & (rng.random(people) < chance), t, found)
        # What is passed on, on a grid of each person's own days.
        steps = 1500
        stop = np.minimum(found + delay, quits)
        sums = np.zeros((4, people))
        span = tf - t0 + np.maximum(0, (end - infectious) / ((vp - end) / (tf - tp)))
        first = np.full(people, np.inf)
        for g in range(steps):
            t = t0 + span * (g + 0.5) / steps
            v = load(t)
            f = np.where(v > infectious, (v - infectious) if function == "LogAboveThreshold" else 1.0, 0) * span / steps
            first = np.where((f > 0) & np.isinf(first), t, first)
            sums[0] += f
            sums[1] += f * (t >= stop)
            sums[2] += f * (t >= quits)
            sums[3] += f * (t >= found + delay)
        spreads = sums[0] > 0
        n = spreads.sum()

        def ratio(x):
            r = x.sum() / sums[0].sum()
            return r, np.sqrt(((x - r * sums[0]) ** 2).sum()) / sums[0].sum()
        values = [(np.mean(found < quits), np.std(found < quits) / np.sqrt(people)), (np.mean(screens), np.std(screens) / np.sqrt(people)),
                  ratio(sums[1]), ratio(sums[2]), ratio(sums[3]), (np.mean((stop < first)[spreads]), 0.5 / np.sqrt(n))]
        rows.append([
            f"viral-{k}", nums(start), num(level), num(shortest), num(shape), num(scale), num(longest), cap, nums(peak), nums(clearance), num(end), num(share), nums(after),
            num(iso), num(limit), num(s), function, num(infectious), num(period), nums(at), num(participation), num(never), num(rho), num(delay),
            *[num(v[0]) for v in values], *[num(v[1]) for v in values], "absolute:5e-4", "independent",
            tool("20,000 people, loads on a grid, screens drawn one by one; the test adds four standard errors of both; the tolerance is that of the grid")])
    out("viral-load-yields", "id start start_level shortest shape scale longest growth_limit peak clearance end_level symptom_share symptoms_after isolation limit sensitivity "
        "infectiousness infectious_level period at participation never correlation delay detected screens removed by_symptoms by_screening before "
        "detected_error screens_error removed_error by_symptoms_error by_screening_error before_error tolerance kind source", rows)


course_rows(70, 20)
viral_rows(56)
