"""Days' worth of infections that a screen finds where infections run by individual viral loads, by drawing people and their screens backwards.

Each person's load rises from 3 to a peak and falls to 6 (as in viral-load-courses); the time at or above the limit, cut by symptoms, is walked back
through drawn gaps; the integral of s (1 - s)^(earlier screens within it) is taken piece by piece. Mean over people, with its standard error and spread.
Writes ../viral-load-exposures.csv. Run: /usr/bin/python3 viral-load-exposures.py
"""
import numpy as np

rng = np.random.default_rng(20251126)
PEOPLE = 400_000


def times(limit, share):
    growth = np.minimum(0.5 + rng.gamma(1.5, 1.0, PEOPLE), 3)
    peak = rng.uniform(7, 11, PEOPLE)
    ill = rng.random(PEOPLE) < share
    onset = np.where(ill, growth + rng.uniform(0, 3, PEOPLE), np.inf)
    end = np.where(ill, onset, growth) + rng.uniform(4, 9, PEOPLE)
    begin = (limit - 3) * growth / (peak - 3)
    last = growth + (peak - limit) * (end - growth) / (peak - 6)
    return np.maximum(np.minimum(last, onset) - begin, 0)


def exposure(time, gaps, counts, people, s):
    screens = people + sum(counts)
    first = people / screens
    chances = np.array(counts, float) / sum(counts)
    done, value, weight = np.zeros(PEOPLE), np.zeros(PEOPLE), np.full(PEOPLE, s)
    open_ = np.ones(PEOPLE, bool)
    while open_.any():
        gap = rng.choice(gaps, PEOPLE, p=chances).astype(float)
        gap[rng.random(PEOPLE) < first] = np.inf
        part = np.minimum(np.maximum(time - done, 0), gap)
        value += np.where(open_, weight * part, 0)
        done = done + gap
        weight = weight * (1 - s)
        open_ &= done < time
    return screens * value.mean(), screens * value.std()


rows = []
for limit in (3, 5, 6):
    for share in (0, 0.35):
        for s in (1.0, 0.8, 0.4):
            for gaps, counts, people in (((7,), (1000,), 0), ((3, 4), (600, 600), 0), ((1, 2, 3, 10), (300, 300, 200, 50), 120)):
                mean, spread = exposure(times(limit, share), gaps, counts, people, s)
                tolerance = 4 * spread * np.sqrt(1 / PEOPLE + 1 / 40_000)
                rows.append((limit, share, s, " ".join(map(str, gaps)), " ".join(map(str, counts)), people, mean, tolerance))

with open("../viral-load-exposures.csv", "w", newline="\n") as out:
    out.write("id,detection_limit,symptom_share,sensitivity,gaps,counts,people,exposure,tolerance,kind,source\n")
    for i, (limit, share, s, gaps, counts, people, mean, tolerance) in enumerate(rows, 1):
        out.write(f"drawn-{i:02d},{limit},{share},{s},{gaps},{counts},{people},{mean:.6f},absolute:{max(tolerance, 1e-6):.3g},independent,"
                  f"\"{PEOPLE} people and their screens drawn by generators/viral-load-exposures.py, numpy {np.__version__}; tolerance 4 standard errors of both drawings\"\n")
