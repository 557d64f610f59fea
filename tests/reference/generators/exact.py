#!/usr/bin/python3
"""Reference values at 50 digits: intervals of one proportion, hypergeometric tails, comparison of a specificity.

Run from the repository root with Debian's python3, python3-mpmath and python3-scipy:

    /usr/bin/python3 tests/reference/generators/exact.py

It writes tests/reference/proportion-intervals-generated.csv, hypergeometric-generated.csv and
specificity-comparisons-generated.csv. Nothing here is shared with the library: the incomplete beta function is a
power series (the library uses a continued fraction), hypergeometric terms come from logarithms of the gamma
function at 50 digits (the library uses saddle-point forms in double precision).
"""
import csv
import mpmath as mp
import scipy
from scipy import stats

mp.mp.dps = 50
TOOL = f"mpmath {mp.__version__} at 50 digits (generators/exact.py)"


def text(value):
    return mp.nstr(mp.mpf(value), 17, strip_zeros=True) if value not in (0, 1) else str(value)


def normal(confidence):
    # The confidence is the double next to the decimal: near 1 the difference matters to the twelfth digit of the limits.
    return mp.sqrt(2) * mp.erfinv(mp.mpf(float(confidence)))


def beta_lower(a, b, x):
    """I_x(a, b) = x^a (1-x)^b / (a B(a,b)) * sum of (a+b)_n / (a+1)_n x^n: all terms positive."""
    if x > 0.9:  # the series creeps there; at 50 digits the complement loses nothing that matters
        return 1 - beta_lower(b, a, 1 - x)
    term = mp.mpf(1)
    total = mp.mpf(1)
    n = 0
    while True:
        term *= (a + b + n) / (a + 1 + n) * x
        total += term
        n += 1
        if term < total * mp.mpf(10) ** -45:
            break
    return kernel(a, b, x) / a * total


def kernel(a, b, x):
    return mp.exp(a * mp.log(x) + b * mp.log(1 - x) + mp.loggamma(a + b) - mp.loggamma(a) - mp.loggamma(b))


def solve(start, probability, slope, target):
    x = mp.mpf(start)
    for _ in range(60):
        step = (probability(x) - target) / slope(x)
        if x - step <= 0:
            step = x / 2
        if x - step >= 1:
            step = -(1 - x) / 2
        x -= step
        if abs(step) < x * mp.mpf(10) ** -30:
            return x
    # Newton left its basin: halve the bracket on the logit scale instead.
    low, high = mp.mpf(-800), mp.mpf(800)
    rising = slope(mp.mpf("0.5")) > 0
    for _ in range(140):
        middle = (low + high) / 2
        x = 1 / (1 + mp.exp(-middle))
        if (probability(x) < target) == rising:
            low = middle
        else:
            high = middle
    return x


def beta_quantile(a, b, lower_probability):
    start = max(1e-300, float(stats.beta.ppf(float(lower_probability), float(a), float(b))))
    return solve(start, lambda x: beta_lower(a, b, x), lambda x: kernel(a, b, x) / (x * (1 - x)), lower_probability)


def mid_p_tail_above(x, n, p):
    """P(X > x) + P(X = x) / 2."""
    point = mp.exp(mp.loggamma(n + 1) - mp.loggamma(x + 1) - mp.loggamma(n - x + 1) + x * mp.log(p) + (n - x) * mp.log(1 - p))
    above = beta_lower(mp.mpf(x + 1), mp.mpf(n - x), p) if x < n else mp.mpf(0)
    return above + point / 2, point


def mid_p_limit(x, n, probability_above):
    start = (x + 0.5) / (n + 1.0)
    interval = clopper_small(x, n, mp.mpf("0.025"))
    start = interval[0] if probability_above < 0.5 else interval[1]
    if start == 0:
        start = mp.mpf(1) / (4 * n)

    def slope(p):
        point = mid_p_tail_above(x, n, p)[1]
        return point * ((n - x) / (1 - p) + x / p) / 2

    return solve(start, lambda p: mid_p_tail_above(x, n, p)[0], slope, probability_above)


def clopper_small(x, n, tail):
    lower = mp.mpf(0) if x == 0 else beta_quantile(mp.mpf(x), mp.mpf(n - x + 1), tail)
    upper = mp.mpf(1) if x == n else beta_quantile(mp.mpf(x + 1), mp.mpf(n - x), 1 - tail)
    return lower, upper


def mirrored(function):
    def both(x, n, confidence):
        if 2 * x > n:
            lower, upper = function(n - x, n, confidence)
            return 1 - upper, 1 - lower
        return function(x, n, confidence)
    return both


def clopper_pearson(x, n, confidence):
    return clopper_small(x, n, (1 - mp.mpf(float(confidence))) / 2)


def jeffreys(x, n, confidence):
    tail = (1 - mp.mpf(float(confidence))) / 2
    a, b = mp.mpf(x) + mp.mpf("0.5"), mp.mpf(n - x) + mp.mpf("0.5")
    return (mp.mpf(0) if x == 0 else beta_quantile(a, b, tail)), (mp.mpf(1) if x == n else beta_quantile(a, b, 1 - tail))


def mid_p(x, n, confidence):
    tail = (1 - mp.mpf(float(confidence))) / 2
    return (mp.mpf(0) if x == 0 else mid_p_limit(x, n, tail)), (mp.mpf(1) if x == n else mid_p_limit(x, n, 1 - tail))


def wilson(x, n, confidence, shift=mp.mpf(0)):
    """Roots of (|p - x/n| - shift/n)^2 = z^2 p (1 - p) / n."""
    z = normal(confidence)
    x, n = mp.mpf(x), mp.mpf(n)

    def root(h, sign):
        return (2 * h + z * z + sign * z * mp.sqrt(z * z + 4 * h * (1 - h / n))) / (2 * (n + z * z))

    # Less than half an event (a real count) is a rate of 0 with correction: 0 satisfies the inequality that the limit solves.
    return (mp.mpf(0) if x <= shift else root(x - shift, -1)), (mp.mpf(1) if x + shift >= n else root(x + shift, 1))


def wilson_continuity(x, n, confidence):
    return wilson(x, n, confidence, mp.mpf("0.5"))


def agresti_coull(x, n, confidence):
    z = normal(confidence)
    total = n + z * z
    centre = (x + z * z / 2) / total
    half = z * mp.sqrt(centre * (1 - centre) / total)
    return max(mp.mpf(0), centre - half), min(mp.mpf(1), centre + half)


METHODS = {
    "wilson": wilson, "wilson-continuity": wilson_continuity, "clopper-pearson": mirrored(clopper_pearson),
    "agresti-coull": agresti_coull, "jeffreys": mirrored(jeffreys), "mid-p": mirrored(mid_p),
}


def intervals():
    cases = []
    for exponent in range(1, 8):
        n = 10 ** exponent
        xs = sorted({0, 1, 2, 5, n // 10, n // 3, n // 2, n - 1, n})
        cases += [(x, n, "0.95") for x in xs]
    cases += [(1, 10 ** e, c) for e in range(1, 8) for c in ("0.9", "0.99")]
    cases += [(3, 3330, "0.999"), (17, 1000000, "0.999999"), (50, 3330, "0.5"), (1, 1, "0.95"), (0, 1, "0.95"), (1, 2, "0.95"),
              (641, 1103, "0.95"), (462, 903408, "0.99"), (150000, 10000000, "0.95"), (7, 10000000, "0.8"), (1, 10 ** 9, "0.95"), (1, 10 ** 10, "0.95")]
    with open("tests/reference/proportion-intervals-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow("id method successes trials confidence lower upper tolerance kind source".split())
        for method, function in METHODS.items():
            for x, n, confidence in cases:
                lower, upper = function(x, n, confidence)
                # The clipped Agresti-Coull end is a difference of nearly equal numbers where it is near 0.
                tolerance = "relative:1e-10" if method == "agresti-coull" else "relative:1e-12"
                out.writerow([f"{method}-{x}-{n}-{confidence}", method, x, n, confidence, text(lower), text(upper), tolerance, "independent", TOOL])


def log_choose(n, k):
    return mp.loggamma(n + 1) - mp.loggamma(k + 1) - mp.loggamma(n - k + 1)


def hypergeometric():
    cases = [
        # observed, population, successes, draws
        (6, 20, 7, 12), (0, 20, 7, 12), (7, 20, 7, 12), (1, 10, 1, 1), (3, 50, 5, 10), (5, 50, 5, 5), (12, 100, 40, 30),
        (278, 903408, 462, 1200), (278, 602272, 462, 900), (25, 602272, 462, 30000), (23, 602272, 462, 30000), (40, 602272, 462, 30000),
        (0, 602272, 462, 30000), (90, 60000, 420, 5000), (36, 60000, 420, 5000), (300, 60000, 420, 5000),
        (10, 10 ** 6, 100, 10 ** 5), (60, 10 ** 6, 100, 10 ** 5), (100, 10 ** 6, 100, 10 ** 5), (500, 10 ** 7, 10 ** 4, 10 ** 5),
        (50, 10 ** 9, 1000, 10 ** 7), (12, 10 ** 9, 1000, 10 ** 7), (200, 10 ** 9, 1000, 10 ** 7), (1000, 10 ** 9, 1000, 10 ** 7),
        (10300, 10 ** 9, 10 ** 6, 10 ** 7), (11000, 10 ** 9, 10 ** 6, 10 ** 7), (9500, 10 ** 9, 10 ** 6, 10 ** 7),
        (2600, 10 ** 9, 500000, 5 * 10 ** 6), (1, 10 ** 9, 1, 1), (1, 10 ** 9, 10, 10), (10, 10 ** 9, 10, 10),
        (501, 1000, 900, 550), (450, 1000, 900, 550), (490, 1000, 900, 550), (5, 1000, 995, 10), (8, 1000, 995, 10), (10, 1000, 995, 10),
    ]
    with open("tests/reference/hypergeometric-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow("id observed population successes draws point upper lower tolerance kind source".split())
        for k, population, successes, draws in cases:
            lowest = max(0, draws - (population - successes))
            highest = min(successes, draws)
            first = mp.exp(log_choose(successes, k) + log_choose(population - successes, draws - k) - log_choose(population, draws))

            def tail(direction):
                total, term, j = mp.mpf(1), mp.mpf(1), k
                while (j < highest) if direction > 0 else (j > lowest):
                    if direction > 0:
                        term *= mp.mpf(successes - j) * (draws - j) / ((j + 1) * (population - successes - draws + j + 1))
                    else:
                        term *= mp.mpf(j) * (population - successes - draws + j) / ((successes - j + 1) * (draws - j + 1))
                    total += term
                    j += direction
                    # Terms rise before they fall where k lies on the far side of the mean.
                    if term < total * mp.mpf(10) ** -40 and (direction > 0) == (j > successes * draws / population):
                        break
                return first * total
            out.writerow([f"hypergeometric-{k}-{population}-{successes}-{draws}", k, population, successes, draws,
                          text(first), text(tail(1)), text(tail(-1)), "relative:1e-9", "independent", TOOL])


def specificity():
    z = normal("0.95")

    def score(x, n):
        return wilson(x, n, "0.95")

    cases = [
        # refuted, without conclusive result, valid tests, stated successes, stated trials, outcome
        (462, 219, 903408, 2391, 2400, "NotCompatible"), (9, 2, 2400, 2391, 2400, "Compatible"), (100, 20, 10000, 2391, 2400, "NotCompatible"),
        (60, 5, 10000, 999, 1000, "NotCompatible"), (15, 300, 10000, 1998, 2000, "CannotTell"), (0, 40, 10000, 995, 1000, "CannotTell"),
        (0, 0, 10, 2391, 2400, "Compatible"), (0, 0, 10000, 980, 1000, "NotCompatible"), (0, 400, 10000, 980, 1000, "CannotTell"),
        (5, 0, 10000, 2400, 2400, "Compatible"),
    ]
    with open("tests/reference/specificity-comparisons-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow("id refuted open valid specificity joint_lower joint_upper outcome tolerance kind source".split())
        for refuted, open_, valid, s, n, expected in cases:
            stated = mp.mpf(n - s) / n
            sl, su = score(n - s, n)

            def difference(x):
                o = mp.mpf(x) / valid
                l, u = score(x, valid)
                return o - stated - mp.sqrt((o - l) ** 2 + (su - stated) ** 2), o - stated + mp.sqrt((u - o) ** 2 + (stated - sl) ** 2)
            low, high = difference(refuted), difference(refuted + open_)
            outcome = ("NotCompatible" if low[0] > 0 or high[1] < 0
                       else "Compatible" if low[0] <= 0 <= low[1] and high[0] <= 0 <= high[1] else "CannotTell")
            if outcome != expected:
                print("note", refuted, open_, valid, s, n, outcome, "not", expected)
            out.writerow([f"specificity-{refuted}-{open_}-{valid}-{s}-{n}", refuted, open_, valid, f"{s}/{n}",
                          text(low[0]), text(high[1]), outcome, "relative:1e-10", "independent", TOOL])


if __name__ == "__main__":
    intervals()
    hypergeometric()
    specificity()
