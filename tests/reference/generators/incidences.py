#!/usr/bin/python3
"""Reference values for incidence from cases under real gaps.

Run from the repository root with Debian's python3, python3-numpy and python3-scipy:

    /usr/bin/python3 tests/reference/generators/incidences.py

Nothing here uses the recursion that the library uses.

1. incidence-exposures-generated.csv: every history of earlier screens of a screen is written out as a path (its gaps one by one, up to
   a first screen or out of the infection), with its chance and the product of the misses on it; the sum over paths is integrated over the age of the
   infection by adaptive quadrature between the breaks and over the person effect by Gauss-Legendre panels in the normal quantile.
   Limits of the incidence: scipy's chi-square quantiles.
2. incidence-programs-generated.csv: whole programs simulated person by person: calendars of screens with drawn gaps, infections at a
   known rate beginning long before the first screen, symptoms, misses with a person effect, follow-up; the cases of many programs.
"""
import csv
import math
import random

import numpy as np
import scipy
from scipy import integrate, special, stats

random.seed(20261126)
rng = np.random.default_rng(20261126)


def tool(how):
    return f"scipy {scipy.__version__} and numpy {np.__version__}: {how} (generators/incidences.py)"


def out(name, header, rows):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header.split())
        writer.writerows(rows)


def curve(course):
    """Detection chance as a function of age (vectorised), its end and its breaks."""
    if course[0] == "windows":
        _, a, b, s = course
        return (lambda x: np.where((x >= a) & (x < b), s, 0.0)), b, [a, b]
    ages = [age for age, _ in course[1]]
    values = [value for _, value in course[1]]
    return (lambda x: np.interp(x, ages, values, left=0.0, right=0.0)), ages[-1], ages


def not_isolated(symptoms):
    if symptoms is None:
        return lambda x: np.ones_like(np.asarray(x, float))
    share, median, spread, isolate = symptoms

    def stay(x):
        x = np.asarray(x, float)
        with np.errstate(divide="ignore"):
            return 1 - share * isolate * special.ndtr((np.log(np.maximum(x, 1e-300)) - math.log(median)) / spread)

    return stay


def for_person(p, rho, z):
    if rho == 0:
        return p + 0.0 * z
    with np.errstate(divide="ignore"):
        return special.ndtr((special.ndtri(p) + math.sqrt(rho) * z) / math.sqrt(1 - rho))


def person_curve(course, rho):
    """Chance at an age for people of levels z: between the days of a course each person's chance is linear."""
    if course[0] == "windows":
        _, a, b, s = course
        return lambda x, z: for_person(s, rho, z) if a <= x < b else 0.0 * z
    ages = [age for age, _ in course[1]]
    values = [value for _, value in course[1]]

    def chance(x, z):
        if not ages[0] <= x < ages[-1]:
            return 0.0 * z
        k = int(np.searchsorted(ages, x, side="right")) - 1
        t = (x - ages[k]) / (ages[k + 1] - ages[k])
        return (1 - t) * for_person(values[k], rho, z) + t * for_person(values[k + 1], rho, z)

    return chance


def paths(end, weights, first):
    """Histories of a screen whose infection is of age below `end`: (gaps back to the oldest screen that still matters, chance that it is so, depth)."""
    stack = [((), 1.0)]
    while stack:
        gaps, chance = stack.pop()
        yield gaps, chance
        for g, w in weights:
            if sum(gaps) + g < end and chance * w > 1e-13:
                stack.append((gaps + (g,), chance * w * (1 - first)))


def exposure(course, symptoms, rho, weights, first):
    """Integral of p Q U: over paths, ages and people."""
    p, end, breaks = curve(course)
    person = person_curve(course, rho)
    stay = not_isolated(symptoms)
    histories = list(paths(end, weights, first))
    lattice = sorted({max(0.0, b) for b in breaks} | {float(b) + sum(g) for b in breaks for g, _ in histories if b + sum(g) < end})
    # a person's levels: panels in the normal quantile
    if rho == 0:
        levels = [(0.0, 1.0)]
    else:
        levels = []
        nodes, node_weights = np.polynomial.legendre.leggauss(10)
        step = min(0.5, 0.8 * math.sqrt((1 - rho) / rho))
        for low in np.arange(-7, 7, step):
            for node, weight in zip(nodes, node_weights):
                z = low + step * (node + 1) / 2
                levels.append((z, weight * step / 2 * math.exp(-z * z / 2) / math.sqrt(2 * math.pi)))
    z = np.array([level[0] for level in levels])
    share = np.array([level[1] for level in levels])

    def at(x):
        own = person(x, z)
        unfound = np.zeros_like(z)
        for gaps, chance in histories:
            ages, age, inside = [], x, True
            for g in gaps:
                age -= g
                if age < 0:
                    inside = False
                    break
                ages.append(age)
            if not inside:
                continue
            # the path ends here: a first screen, or the next gap back reaches beyond the infection
            ends = first + (1 - first) * sum(w for g, w in weights if g > age)
            missed = np.ones_like(z)
            for earlier in ages:
                missed = missed * (1 - person(earlier, z))
            unfound += chance * ends * missed
        return float(np.sum(share * own * unfound) * stay(x))

    total = 0.0
    marks = sorted({m for m in lattice if m <= end} | {float(k) for k in range(int(math.ceil(end)) + 1) if k <= end} | {end})
    if symptoms is not None:
        marks = sorted(set(marks) | {symptoms[1]} if symptoms[1] < end else set(marks))
    flat = course[0] == "windows" and symptoms is None
    for low, high in zip(marks, marks[1:]):
        if high - low < 1e-12:
            continue
        if flat:
            total += (high - low) * at((low + high) / 2)
        elif rho == 0:
            total += integrate.quad(at, low, high, epsabs=1e-12, epsrel=1e-11)[0]
        else:
            total += integrate.fixed_quad(np.vectorize(at), low, high, n=8)[0]
    return total


def course_text(course):
    if course[0] == "windows":
        return f"{course[1]}..{course[2]}@{course[3]}"
    return "|".join(f"{age}:{value}" for age, value in course[1])


def limits(cases, unit, confidence):
    tail = (1 - confidence) / 2
    return (stats.chi2.ppf(tail, 2 * cases) / 2 / unit if cases else 0.0, stats.chi2.isf(tail, 2 * cases + 2) / 2 / unit)


def drawn_course(kind):
    if kind == "windows":
        a = random.choice([0, 1, 2, 2.5, random.uniform(0, 4)])
        return ("windows", round(a, 3), round(a + random.choice([3, 5, 7.5, random.uniform(0.5, 9)]), 3), random.choice([1, 0.6, 0.8, round(random.uniform(0.01, 1), 3)]))
    days = random.randint(4, 11)
    peak = random.randint(1, days - 2)
    values = [0.0] + [round(min(1, max(0, (k / peak if k <= peak else (days - k) / (days - peak)) * random.uniform(0.5, 1))), 3) for k in range(1, days)] + [0.0]
    return ("by-day", list(zip(range(days + 1), values)))


def exposures():
    rows = []
    for number in range(64):
        kind = "windows" if number % 2 == 0 else "by-day"
        course = drawn_course(kind)
        symptoms = None if number % 3 else (round(random.uniform(0.1, 0.9), 2), round(random.uniform(2, 6), 2), round(random.uniform(0.25, 0.7), 2), round(random.uniform(0.2, 1), 2))
        rho = 0 if number % 4 < 2 else random.choice([0.2, 0.5, 0.8, 0.95])
        lengths = sorted(random.sample([1, 2, 3, 4, 5, 7, 10, 14, 28, 90], random.randint(1, 4)))
        counts = [random.choice([3, 40, 500, 12000]) for _ in lengths]
        people = random.choice([1, 5, 60, 800, 0 if number % 5 == 0 else 7])
        cases = random.choice([0, 1, 2, 7, 40, 300])
        follow = random.choice([1, 1, 0.83])
        total = sum(counts)
        while sum(1 for _ in paths(course[2] if course[0] == "windows" else course[1][-1][0], [(g, c / total) for g, c in zip(lengths, counts)], 0)) > 600:
            lengths, counts = lengths[1:] or [5], counts[1:] or [30]
            total = sum(counts)
        weights = [(g, c / total) for g, c in zip(lengths, counts)]
        screens = people + total
        alone = exposure(course, symptoms, rho, [(10**6, 1.0)], 1.0)
        mixed = exposure(course, symptoms, rho, weights, people / screens)
        endless = exposure(course, symptoms, rho, weights, 0.0)
        mean = sum(g * w for g, w in weights)
        unit = screens * mixed * follow
        low, high = limits(cases, unit, 0.95)
        tolerance = "relative:1e-9" if rho == 0 and symptoms is None else "relative:2e-6"
        rows.append([f"drawn-{number}", course_text(course), *(symptoms or ["", "", "", ""]), rho, cases, people,
                     "|".join(f"{g}:{c}" for g, c in zip(lengths, counts)), follow, repr(alone), repr(screens * mixed), repr(endless / mean),
                     repr(cases / unit), repr(float(low)), repr(float(high)), tolerance, "independent",
                     tool("every history of earlier screens written out, adaptive quadrature over the age of the infection and panels over the person effect")])
        print(number, course_text(course), rho, weights, mixed, flush=True)
    out("incidence-exposures", "id course share median spread isolate correlation cases people gaps follow_through first exposure detection incidence lower upper tolerance kind source", rows)


BY_DAY = ("by-day", [(0, 0.0), (1, 0.05), (2, 0.25), (3, 0.6), (4, 0.75), (5, 0.7), (6, 0.6), (8, 0.4), (10, 0.2), (13, 0.05), (15, 0.0)])
BOX = ("windows", 2.5, 9.0, 0.7)
SYMPTOMS = (0.6, 5.0, 0.45, 0.8)
# id, course, symptoms, rho, follow-through, incidence, people, how gaps follow each other, screens of a person, what happens to people found
SCENARIOS = [
    ("weekly-box", BOX, None, 0, 1, 0.001, 60, lambda n: [7] * n, (26, 26), False),
    ("irregular-by-day", BY_DAY, None, 0, 1, 0.001, 60, lambda n: random.choices([1, 2, 3, 4, 5, 7, 9, 14], k=n), (5, 40), False),
    ("twice-weekly-repeated-misses", BY_DAY, None, 0.5, 1, 0.001, 50, lambda n: [3 + k % 2 for k in range(n)], (30, 30), False),
    ("weekdays-repeated-misses-strong", BY_DAY, None, 0.9, 1, 0.001, 50, lambda n: [(2, 2, 3)[k % 3] for k in range(n)], (10, 45), False),
    ("all-of-it", BY_DAY, SYMPTOMS, 0.4, 0.8, 0.0015, 60, lambda n: random.choices([2, 3, 4, 7], k=n), (10, 40), False),
    ("mostly-first-screens", BY_DAY, None, 0.3, 1, 0.002, 150, lambda n: random.choices([3, 7, 10], k=n), (1, 3), False),
    ("gaps-longer-than-the-infection", BY_DAY, SYMPTOMS, 0, 0.9, 0.001, 120, lambda n: [28] * n, (6, 6), False),
    ("daily-early", ("windows", 0.0, 12.0, 0.35), None, 0.6, 1, 0.001, 40, lambda n: [1] * n, (60, 60), False),
    ("people-of-two-rhythms", BY_DAY, None, 0.3, 1, 0.001, 60, lambda n: random.choice([[3], [28]]) * (n if random.random() < 0.5 else 4), (30, 30), False),
    ("isolated-and-then-immune", BY_DAY, SYMPTOMS, 0.4, 0.9, 0.0005, 60, lambda n: random.choices([3, 4, 7], k=n), (15, 25), True),
]


def programs(number, course, symptoms, rho, follow, incidence, people, gaps_of, screens, immune):
    """Cases of a number of programs, the gaps and people of all of them together, and the infections and person-days that really were."""
    _, end, _ = curve(course)
    person = person_curve(course, rho)
    calendars = []
    for _ in range(people):
        gaps = list(gaps_of(random.randint(*screens) - 1))
        calendars.append(np.concatenate([[0], np.cumsum(gaps)]) + random.randint(0, 6))
    cases, counts, first, infections, days = [], {}, 0, 0, 0.0
    for _ in range(number):
        found_now = 0
        for calendar in calendars:
            start, stop = calendar[0] - end, float(calendar[-1])
            days += stop - start
            times = np.sort(rng.uniform(start, stop, rng.poisson(incidence * (stop - start))))
            if immune:
                times = times[:1]
            infections += len(times)
            taken = list(calendar)
            for t in times:
                z = rng.standard_normal()
                onset = math.inf
                if symptoms is not None and rng.random() < symptoms[0] * symptoms[3]:
                    onset = symptoms[1] * math.exp(symptoms[2] * rng.standard_normal())
                gone = t + onset
                for day in calendar:
                    age = day - t
                    if age <= 0:
                        continue
                    if age >= end or age >= onset:
                        break
                    if rng.random() < person(float(age), z):
                        found_now += rng.random() < follow
                        gone = min(gone, float(day))
                        break
                if immune:
                    taken = [day for day in calendar if not gone < day < gone + 10]
            first += 1 if taken else 0
            for gap in np.diff(taken):
                counts[int(gap)] = counts.get(int(gap), 0) + 1
        cases.append(found_now)
    return cases, counts, first, infections, days


def simulated():
    rows = []
    for name, course, symptoms, rho, follow, incidence, people, gaps_of, screens, immune in SCENARIOS:
        number = 400
        cases, counts, first, infections, days = programs(number, course, symptoms, rho, follow, incidence, people, gaps_of, screens, immune)
        truth = infections / days if immune else incidence
        if not immune:
            counts = {g: c // number for g, c in counts.items()}
            first //= number
        else:
            cases = [sum(cases)]
        rows.append([name, course_text(course), *(symptoms or ["", "", "", ""]), rho, first, "|".join(f"{g}:{c}" for g, c in sorted(counts.items())), follow,
                     repr(truth), "|".join(map(str, cases)), "exact", "independent",
                     tool("programs simulated person by person, infections at a known rate; " + ("400 programs together; who was infected stays so or immune, is away for 10 days once found or ill, and the rate is per person-day of all" if immune else "cases of each of 400"))])
        print(name, sum(cases), flush=True)
    out("incidence-programs", "id course share median spread isolate correlation people gaps follow_through truth cases tolerance kind source", rows)


if __name__ == "__main__":
    exposures()
    simulated()
