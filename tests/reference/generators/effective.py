#!/usr/bin/python3
"""Reference values at 50 digits: intervals of one proportion for counts that are real numbers, and one-sided limits.

Run from the repository root with Debian's python3, python3-mpmath and python3-scipy:

    /usr/bin/python3 tests/reference/generators/effective.py

It writes tests/reference/effective-intervals-generated.csv, with the functions of exact.py.
"""
import csv
import random
import mpmath as mp
from exact import METHODS, text

TOOL = f"mpmath {mp.__version__} at 50 digits (generators/effective.py)"
random.seed(20260212)


def one_sided(function, x, n, confidence, side):
    """The end of the two-sided interval of confidence 2 c - 1, with the double nearest to the decimal as c."""
    if side == "both":
        return function(x, n, confidence)
    lower, upper = function(x, n, 2 * mp.mpf(confidence) - 1)
    return (lower, mp.mpf(1)) if side == "lower" else (mp.mpf(0), upper)


def cases():
    # Whole counts, one-sided: 1 in 10 to 1 in 10,000,000, both ends.
    for exponent in range(1, 8):
        n = 10 ** exponent
        for x in (0, 1, 3, n - 1, n):
            for side in ("lower", "upper"):
                yield float(x), float(n), 0.95, side
    for confidence in (0.75, 0.8, 0.9, 0.975, 0.99, 0.999):
        for side in ("lower", "upper"):
            yield 2.0, 29.0, confidence, side
    # Real counts, with their edges: less than one event, less than one failure, less than one trial.
    for x, n in ((0.0, 0.4), (0.4, 0.4), (0.1, 0.4), (0.3, 0.4), (0.05, 1.0), (0.95, 1.0), (0.25, 12.5), (12.25, 12.5), (0.0, 37.3),
                 (37.3, 37.3), (0.05, 5000.5), (0.2, 250.75), (0.5, 1e7), (1e7 - 0.5, 1e7), (33.333, 98765.4321)):
        for side in ("both", "lower", "upper"):
            yield x, n, 0.95, side
    for _ in range(36):
        n = round(10 ** random.uniform(0, 6), 3)
        # With a hundredth of an event the lower limit is smaller than any double.
        x = min(n, max(0.05, round(min(n, 300) * random.random() ** random.choice((1, 2, 4)), 4)))
        yield x, n, random.choice((0.8, 0.9, 0.95, 0.99)), random.choice(("both", "lower", "upper"))


def tolerance(method, x, n):
    # The clipped Agresti-Coull end is a difference of nearly equal numbers where it is near 0.
    return "relative:1e-9" if method == "agresti-coull" else "relative:1e-11"


with open("tests/reference/effective-intervals-generated.csv", "w", newline="\n", encoding="utf-8") as file:
    out = csv.writer(file, lineterminator="\n")
    out.writerow("id method successes trials confidence side lower upper tolerance kind source".split())
    for x, n, confidence, side in cases():
        for method, function in METHODS.items():
            lower, upper = one_sided(function, mp.mpf(x), mp.mpf(n), confidence, side)
            out.writerow([f"{method}-{x!r}-{n!r}-{confidence}-{side}", method, repr(x), repr(n), confidence, side,
                          text(lower), text(upper), tolerance(method, x, n), "independent", TOOL])
