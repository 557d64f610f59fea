#!/usr/bin/python3
"""Reference values for the days that an infected person is away, by screens, by symptoms or by both.

Run from the repository root with Debian's python3, python3-numpy and python3-scipy:

    /usr/bin/python3 tests/reference/generators/days_away.py

Nothing here uses what the library uses. People are drawn one by one: the place of the infection between screens, effects, misses, symptoms. Who is isolated by a screen is away
from then on for so many days, who isolates because of symptoms likewise from their onset, and the days of the union of both stretches are added up. To lessen the noise the
place is stratified, and what symptoms alone give is known exactly and taken as a control.
"""
import csv
import numpy as np
import scipy
from scipy.stats import norm

rng = np.random.default_rng(20261126)
PEOPLE = 400_000
TOOL = f"numpy {np.__version__}, scipy {scipy.__version__}: {PEOPLE:,} people drawn one by one; the tolerance is four and a half standard errors (generators/days_away.py)"


def union(start, onset, days):
    """Days of [start, start + days] and [onset, onset + days] together; infinite where there is none."""
    away = np.where(np.isfinite(start), days, 0.0) + np.where(np.isfinite(onset), days, 0.0)
    both = np.isfinite(start) & np.isfinite(onset)
    with np.errstate(invalid="ignore"):
        return away - np.where(both, np.maximum(0, days - np.abs(start - onset)), 0.0)


def first_found(chance, last, at, period, participation, never, follow, rho):
    """The age of the screen that finds each infection and is acted upon."""
    place = rng.permutation((np.arange(PEOPLE) + rng.random(PEOPLE)) / PEOPLE * period)
    effect, takes = rng.standard_normal(PEOPLE), rng.random(PEOPLE) >= never
    found = np.full(PEOPLE, np.inf)
    for turn in range(int(np.max(last) / period) + 2):
        for o in at:
            age = o + turn * period - place
            p = chance(age)
            if rho > 0:
                with np.errstate(divide="ignore"):
                    p = norm.cdf((norm.ppf(p) + np.sqrt(rho) * effect) / np.sqrt(1 - rho))
            hit = takes & (age > 0) & np.isinf(found) & (rng.random(PEOPLE) < participation * p * follow)
            found = np.where(hit, age, found)
    return found


def schedule():
    return [(1.0, [0.0]), (2.0, [0.0]), (3.5, [0.0]), (7.0, [0.0]), (14.0, [0.0]), (30.0, [0.0]), (7.0, [0.0, 3.0]), (7.0, [0.0, 2.0, 4.0]), (7.0, [0.0, 1.0, 2.0, 3.0, 4.0])][int(rng.integers(9))]


def mean(away, isolates, onset_share, days):
    # Symptoms alone: days for the share that they isolate; its error in the sample is taken off.
    control = np.where(isolates, days, 0.0)
    values = away - control + onset_share * days
    return float(np.mean(values)), float(np.std(away - control) / np.sqrt(PEOPLE))


def course(k):
    windows = k % 2 == 0
    first = rng.uniform(0.5, 4)
    if windows:
        ages, chances = [first, first + rng.uniform(3, 14)], [float(rng.choice([0.3, 0.6, 0.9, 1.0]))] * 2
    else:
        n = int(rng.integers(4, 9))
        ages, chances = list(first + np.concatenate([[0], np.cumsum(rng.uniform(0.5, 4, n))])), [0.0, *rng.uniform(0.05, 0.98, n - 1), 0.0]
    share, median, spread, isolate = (0.0, 1.0, 0.0, 0.0) if k % 7 == 3 else (rng.uniform(0.2, 1), rng.uniform(2, 9), float(rng.choice([0.0, 0.1, 0.3, 0.6])), float(rng.choice([0.5, 0.9, 1.0])))
    rho = 0.0 if not windows or rng.random() < 0.5 else float(rng.choice([0.2, 0.5]))
    participation, never, follow = float(rng.choice([1.0, 0.8])), float(rng.choice([0.0, 0.2])), float(rng.choice([1.0, 0.8]))
    delay, days = float(rng.choice([0.0, 0.2, 1.5])), float(rng.choice([1.0, 5.0, 7.0, 10.0]))
    period, at = schedule()

    def chance(age):
        inside = (age >= ages[0]) & (age < ages[-1])
        return np.where(inside, np.interp(age, ages, chances), 0.0)

    found = first_found(chance, ages[-1], at, period, participation, never, follow, rho)
    isolates = rng.random(PEOPLE) < share * isolate
    onset = np.where(isolates, median * np.exp(spread * rng.standard_normal(PEOPLE)), np.inf)
    # Nobody is screened any more once symptoms have isolated them.
    found = np.where(found < onset, found, np.inf)
    # Who is found just before the onset, the result to be acted upon after it, is away from the onset on alone.
    late = np.isfinite(found) & isolates & (found + delay >= onset)
    away = np.where(late, days, union(found + delay, onset, days))
    value, error = mean(away, isolates, share * isolate, days)
    text = lambda xs: " ".join(repr(float(x)) for x in xs)
    return [f"{'windows' if windows else 'by-day'}-{k}", text(ages), text(chances), text([share, median, spread, isolate]), repr(period), text(at), participation, never, follow, rho, delay, days,
            repr(value), repr(share * isolate * days), f"absolute:{max(4.5 * error, 1e-9):.2g}", "independent", TOOL]


def viral(k):
    share, isolate = rng.uniform(0.2, 1), float(rng.choice([0.5, 1.0]))
    limit, sensitivity = float(rng.choice([3.0, 5.0, 6.0])), float(rng.choice([1.0, 0.8]))
    participation, delay, days = float(rng.choice([1.0, 0.8])), float(rng.choice([0.0, 0.2, 1.5])), float(rng.choice([3.0, 7.0]))
    period, at = schedule()
    start, peak_after, peak = rng.uniform(2.5, 3.5, PEOPLE), np.minimum(0.5 + rng.gamma(1.5, 1, PEOPLE), 3), rng.uniform(7, 11, PEOPLE)
    has = rng.random(PEOPLE) < share
    top = start + peak_after
    onset = top + rng.uniform(0, 3, PEOPLE)
    end = np.where(has, onset, top) + rng.uniform(4, 9, PEOPLE)
    isolates = has & (rng.random(PEOPLE) < isolate)

    def chance(age):
        up = 3 + (peak - 3) * (age - start) / peak_after
        down = peak + (6 - peak) * (age - top) / (end - top)
        level = np.where(age < start, 0, np.where(age < top, up, down))
        return np.where(level >= limit, sensitivity, 0.0)

    last = top + (end - top) * (peak - limit) / (peak - 6)
    found = first_found(chance, last, at, period, participation, 0.0, 1.0, 0.0)
    quits = np.where(isolates, onset, np.inf)
    found = np.where(found < quits, found, np.inf)
    late = np.isfinite(found) & isolates & (found + delay >= onset)
    away = np.where(late, days, union(found + delay, quits, days))
    value, error = mean(away, isolates, share * isolate, days)
    # The library draws its own people, fewer of them: its own error is added.
    return [f"viral-{k}", " ".join(map(repr, map(float, [share, 0, 0, isolate]))), repr(period), " ".join(map(repr, at)), participation, 0.0, limit, sensitivity, delay, days,
            repr(value), repr(share * isolate * days), f"absolute:{4.5 * error * np.sqrt(1 + PEOPLE / 50_000):.2g}", "independent",
            TOOL.replace("four and a half standard errors", "four and a half standard errors of these and of the library's own 50,000, after what symptoms alone give")]


with open("tests/reference/days-away-generated.csv", "w", newline="\n", encoding="utf-8") as file:
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow("id detection_ages detection symptoms period at participation never follow_through correlation delay isolation away by_symptoms tolerance kind source".split())
    writer.writerows(course(k) for k in range(60))
with open("tests/reference/viral-days-away-generated.csv", "w", newline="\n", encoding="utf-8") as file:
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow("id symptoms period at participation never limit sensitivity delay isolation away by_symptoms tolerance kind source".split())
    writer.writerows(viral(k) for k in range(50))
