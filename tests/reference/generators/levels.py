#!/usr/bin/python3
"""Reference values of levels that wander: normal series, and rates seen through binomial counts.

Run from the repository root with Debian's python3, python3-mpmath, python3-numpy and python3-scipy:

    /usr/bin/python3 tests/reference/generators/levels.py

It writes gaussian-levels-generated.csv and binomial-levels-generated.csv under tests/reference. Methods differ from the library's: normal series
by the covariance matrix of all values and generalised least squares (the library: Kalman's filter), the slope of the likelihood by a complex step;
rates over one fixed lattice for all periods of a case with the normal density as kernel, three times as dense, without windows (the library: a lattice
and windows that follow the data, difference kernels for narrow steps), constant rates by the beta distribution at 40 digits.
"""
import csv
import math
import random

import mpmath as mp
import numpy as np
import scipy
from scipy import interpolate, optimize, signal, special

mp.mp.dps = 40
random.seed(20261128)
draw = np.random.default_rng(20261128)
SCIPY = f"scipy {scipy.__version__} and numpy {np.__version__} (generators/levels.py)"
TOOL = f"mpmath {mp.__version__} at 40 digits (generators/levels.py)"


def text(value):
    return repr(float(value)) if not isinstance(value, mp.mpf) else mp.nstr(value, 17)


def listed(values):
    return " ".join(text(value) for value in values)


def write(name, rows):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="", encoding="utf-8") as file:
        writer = csv.DictWriter(file, rows[0].keys(), lineterminator="\n")
        writer.writeheader()
        writer.writerows(rows)


# --- normal series ---
def covariance(times, noise, level):
    return level * np.minimum.outer(times, times) + noise * np.eye(len(times))


def diffuse_log(y, times, noise, level):
    v = covariance(times, noise, level)
    one = np.ones(len(y))
    vy, v1 = np.linalg.solve(v, y.astype(v.dtype)), np.linalg.solve(v, one.astype(v.dtype))
    mean = (one @ vy) / (one @ v1)
    r = y - mean
    return -0.5 * ((len(y) - 1) * math.log(2 * math.pi) + np.log(np.linalg.det(v / scale(v))) + len(y) * np.log(scale(v)) + np.log(one @ v1) + r @ (vy - mean * v1))


def scale(v):
    return float(np.mean(np.real(np.diag(v))))


def profile(y, times, ratio):
    """The likelihood with the common scale at its best, and the scale."""
    v = covariance(times, 1, ratio)
    one = np.ones(len(y))
    vy, v1 = np.linalg.solve(v, y.astype(v.dtype)), np.linalg.solve(v, one.astype(v.dtype))
    mean = (one @ vy) / (one @ v1)
    m = len(y) - 1
    s = ((y - mean) @ (vy - mean * v1)) / m
    sign, logdet = np.linalg.slogdet(v)
    if np.iscomplexobj(v):
        logdet = logdet + 1j * np.angle(sign)
    return -0.5 * (m * np.log(2 * np.pi * s) + m + logdet + np.log(one @ v1)), s


def predict(y, times, at, noise, level):
    v = covariance(times, noise, level)
    one = np.ones(len(y))
    v1 = np.linalg.solve(v, one)
    information = one @ v1
    mean = (v1 @ y) / information
    c = level * np.minimum(times, at)
    w = np.linalg.solve(v, c)
    return mean + w @ (y - mean), level * at - c @ w + (1 - w @ one) ** 2 / information


rows = []
case = 0
while len(rows) < 72:
    case += 1
    t = random.choice([3, 6, 15, 40, 90])
    noise, level = random.choice([.1, 1, 25]), random.choice([.01, .2, 3])
    y = 10 + np.cumsum(draw.normal(0, math.sqrt(level), t)) + draw.normal(0, math.sqrt(noise), t)
    y = np.round(y, 3)
    seen = draw.random(t) < random.choice([1, 1, .7])
    if seen.sum() < 3 or len(set(y[seen])) < 2:
        continue
    times = np.arange(t, dtype=float) + 1
    ys, ts = y[seen], times[seen]
    likely = len(rows) % 2 == 0
    tolerance = "relative:1e-8"
    if likely:
        def slope(log):
            return np.imag(profile(ys, ts, np.exp(log + 1e-30j))[0]) / 1e-30
        logs = np.linspace(-14, 14, 57)
        slopes = [slope(log) for log in logs]
        tops = [optimize.brentq(slope, a, b, xtol=1e-13, rtol=1e-14) for a, b, f, g in zip(logs, logs[1:], slopes, slopes[1:]) if f > 0 >= g]
        still = float(np.real(profile(ys, ts, 0.0)[0]))
        best = max(((float(np.real(profile(ys, ts, math.exp(log))[0])), math.exp(log)) for log in tops), default=(-math.inf, 0))
        if slopes[-1] > 0:
            continue  # no noise at all: covered by a property test
        if still > best[0]:
            best = (still, 0.0)
        scale_ = float(np.real(profile(ys, ts, best[1])[1]))
        noise, level = scale_, best[1] * scale_
        tolerance = "relative:1e-7"
    else:
        noise, level = random.choice([.05, 1, 30]), random.choice([0, .01, .5, 8])
    smooth = [predict(ys, ts, at, noise, level) for at in times]
    first = int(ts[0]) - 1
    filtered = [predict(ys[ts <= at], ts[ts <= at], at, noise, level) for at in times[first:]]
    rows.append(dict(
        id=f"{'likely' if likely else 'given'}-{case}", values=" ".join(text(v) if s else "." for v, s in zip(y, seen)),
        noise="" if likely else text(noise), level="" if likely else text(level), log_likelihood=text(np.real(diffuse_log(ys, ts, noise, level))),
        noise_variance=text(noise), level_variance=text(level), filtered=listed(m for m, _ in filtered), filtered_variances=listed(v for _, v in filtered),
        smoothed=listed(m for m, _ in smooth), smoothed_variances=listed(v for _, v in smooth), tolerance=tolerance, kind="independent", source=SCIPY))
write("gaussian-levels", rows)


# --- rates ---
def choose(x, n):
    return special.gammaln(n + 1) - special.gammaln(x + 1) - special.gammaln(n - x + 1)


class Lattice:
    """All periods on one lattice."""

    def __init__(self, periods, events, trials, sigma, start):
        sd = 1 / math.sqrt(max(n * max(p * (1 - p), .5 / (n + 1)) for n, p in ((n, (x + .5) / (n + 1)) for x, n in zip(events, trials)) if n > 0))
        step = min(sigma / 2.5, 1 / math.sqrt(1 / sd ** 2 + 1 / sigma ** 2) / 2.5, .15)
        low, high = RANGE(events, trials, sigma, start, periods)
        self.step, self.a = step, np.arange(low, high, step)
        a = self.a
        lp, lq = -np.logaddexp(0, -a), -np.logaddexp(0, a)
        if start[0] == "normal":
            prior = np.exp(-.5 * ((a - start[1]) / start[2]) ** 2) / math.sqrt(2 * math.pi) / start[2]
        elif start[0] == "beta":
            prior = np.exp(start[1] * lp + start[2] * lq - special.betaln(start[1], start[2]))
        else:
            prior = np.ones(len(a))
        likelihoods = [x * lp + (n - x) * lq + choose(x, n) for x, n in zip(events, trials)]
        self.forward, self.log, f = [], 0.0, prior
        moves = []
        for t in range(len(periods)):
            if t:
                s = sigma * math.sqrt(periods[t] - periods[t - 1])
                reach = int(13 * s / step) + 1
                k = np.exp(-.5 * (np.arange(-reach, reach + 1) * step / s) ** 2) / math.sqrt(2 * math.pi) / s * step
                moves.append((k, reach))
                f = np.convolve(f, k)[reach:reach + len(a)]
            top = likelihoods[t].max()
            f = f * np.exp(likelihoods[t] - top)
            z = f.sum() * step
            self.log += top + math.log(z)
            f = f / z
            self.forward.append(f)
        b = np.ones(len(a))
        self.smooth = [None] * len(periods)
        for t in range(len(periods) - 1, -1, -1):
            s = self.forward[t] * b
            self.smooth[t] = s / (s.sum() * step)
            if t:
                b = b * np.exp(likelihoods[t] - likelihoods[t].max())
                k, reach = moves[t - 1]
                b = np.convolve(b, k)[reach:reach + len(a)]
                b = b / b.max()


def RANGE(events, trials, sigma, start, periods):
    logits = [math.log((x + .5) / (n - x + .5)) for x, n in zip(events, trials) if n > 0]
    span = 9 * sigma * math.sqrt(max(periods[-1] - periods[0], 0))
    if start[0] == "normal":
        return min(logits + [start[1]]) - 9 * start[2] - span, max(logits + [start[1]]) + 9 * start[2] + span
    x0, m0 = start[1:] if start[0] == "beta" else (0, 0)
    xs, ms = x0 or next(x for x in events if x > 0), m0 or next(n - x for x, n in zip(events, trials) if n > x)
    return min(logits) - 42 / min(xs, 1) - span, max(logits) + 42 / min(ms, 1) + span


def figures(a, step, density, tail):
    """Mean, deviation, mean rate and quantiles, those by the integral of a cubic spline through the density, interpolated by Fourier's series."""
    keep = density > density.max() * 1e-15
    first, last = np.argmax(keep), len(a) - np.argmax(keep[::-1])
    a, density = a[first:last], density[first:last]
    p = density * step
    mean = (p * a).sum()
    # Eight times as many points by Fourier's interpolation: the density is 0 at both ends.
    wide = np.concatenate([np.zeros(8), density, np.zeros(8)])
    many = signal.resample(wide, 8 * len(wide))
    places = a[0] - 8 * step + np.arange(len(many)) * step / 8
    integral = interpolate.CubicSpline(places, many).antiderivative()
    total = integral(places[-1])
    def quantile(q):
        return optimize.brentq(lambda x: integral(x) / total - q, a[0], a[-1], xtol=1e-13)
    return mean, math.sqrt((p * (a - mean) ** 2).sum()), (p * special.expit(a)).sum(), special.expit(quantile(tail)), special.expit(quantile(1 - tail))


def drawn(real):
    t = random.choice([2, 3, 5, 12, 20])
    gaps = [random.choice([1, 1, 1, 1, 2, 5]) for _ in range(t)]
    periods = np.cumsum(gaps).tolist()
    level = random.choice([-4, -2.5, -1, .5, 3])
    wander = random.choice([.02, .15, .4])
    logits = level + np.cumsum(draw.normal(0, wander, t) * np.sqrt(gaps))
    trials = [random.choice([0, 3, 40, 400, 2000]) for _ in range(t)]
    events = [int(draw.binomial(n, special.expit(l))) for n, l in zip(trials, logits)]
    if real:
        d = random.choice([1.3, 2.7])
        trials, events = [round(n / d, 4) for n in trials], [round(x / d, 4) for x in events]
    return periods, events, trials


def start_of(kind):
    return ("diffuse",) if kind == 0 else ("normal", random.choice([-3.0, 0.0]), random.choice([.7, 2.0])) if kind == 1 else ("beta",) + random.choice([(.5, .5), (2.0, 30.0)])


def named(start):
    return start[0] if len(start) == 1 else start[0] + ":" + ",".join(text(v) for v in start[1:])


def row(name, periods, events, trials, sigma, start, confidence, log, found, filtered, smoothed, tolerance, source=SCIPY, kind="independent"):
    return dict(
        id=name, periods=" ".join(f"{p}:{text(x)}/{text(n)}" for p, x, n in zip(periods, events, trials)), sigma=sigma, start=named(start), confidence=text(confidence), at="",
        log_likelihood=text(log), sigma_found=found, filtered_rates=listed(f[2] for f in filtered if f), logit_means=listed(s[0] for s in smoothed),
        logit_deviations=listed(s[1] for s in smoothed), rates=listed(s[2] for s in smoothed), lowers=listed(s[3] for s in smoothed), uppers=listed(s[4] for s in smoothed),
        tolerance=tolerance, kind=kind, source=source)


def bounded(events, trials, start):
    """Whether the counts up to each period bound the rate."""
    if start[0] != "diffuse":
        return [True] * len(events)
    x, m, out = 0, 0, []
    for e, n in zip(events, trials):
        x, m = x + e, m + n - e
        out.append(x > 0 and m > 0)
    return out


def usable(periods, events, trials, start):
    x, n = sum(events), sum(trials)
    return sum(c > 0 for c in trials) >= 2 and (start[0] != "diffuse" or 0 < x < n) and min(v for v in [x if x > 0 else 1, n - x if n > x else 1]) > .3


def whole(lattice, events, trials, start, tail):
    bounds = bounded(events, trials, start)
    filtered = [figures(lattice.a, lattice.step, f, tail) if b else None for f, b in zip(lattice.forward, bounds)]
    return filtered, [figures(lattice.a, lattice.step, f, tail) for f in lattice.smooth]


rows = []
case = 0
while len(rows) < 54:
    case += 1
    periods, events, trials = drawn(case % 3 == 0)
    start = start_of(case % 4 if case % 4 < 3 else 0)
    if not usable(periods, events, trials, start):
        continue
    sigma, confidence = random.choice([.03, .1, .25, .6, 1.5]), random.choice([.5, .9, .95, .99])
    lattice = Lattice(periods, events, trials, sigma, start)
    filtered, smoothed = whole(lattice, events, trials, start, (1 - confidence) / 2)
    if any(abs(s[0]) < .02 for s in smoothed):
        continue
    rows.append(row(f"given-{case}", periods, events, trials, text(sigma), start, confidence, lattice.log, text(sigma), filtered, smoothed, "relative:2e-6"))

likely = 0
while likely < 30:
    case += 1
    periods, events, trials = drawn(case % 3 == 0)
    start = start_of(case % 4 if case % 4 < 3 else 0)
    if not 3 <= len(periods) <= 12 or not usable(periods, events, trials, start):
        continue
    def log(s):
        return Lattice(periods, events, trials, math.exp(s), start).log
    logs = np.log([.03, .06, .12, .24, .48, .96, 1.92])
    values = [log(s) for s in logs]
    at = int(np.argmax(values))
    if at in (0, len(logs) - 1):
        continue
    best = optimize.minimize_scalar(lambda s: -log(s), bracket=(logs[at - 1], logs[at], logs[at + 1]), tol=1e-9).x
    # The root of a five-point slope.
    best = optimize.brentq(lambda s: log(s - .02) - 8 * log(s - .01) + 8 * log(s + .01) - log(s + .02), best - .02, best + .02, xtol=1e-9)
    sigma = math.exp(best)
    lattice = Lattice(periods, events, trials, sigma, start)
    filtered, smoothed = whole(lattice, events, trials, start, .025)
    if any(abs(s[0]) < .02 for s in smoothed):
        continue
    likely += 1
    rows.append(row(f"likely-{case}", periods, events, trials, "likely", start, .95, lattice.log, text(sigma), filtered, smoothed, "relative:5e-6"))

averaged = 0
while averaged < 3:
    case += 1
    periods, events, trials = drawn(False)
    start = start_of(case % 3)
    if not 3 <= len(periods) <= 5 or not usable(periods, events, trials, start):
        continue
    # By Simpson's rule over many sigmas.
    sigmas = np.concatenate([np.linspace(.02, .3, 29), np.linspace(.3, 1, 36)[1:], np.linspace(1, 4, 31)[1:]])
    weights = np.gradient(sigmas)
    lattices = [Lattice(periods, events, trials, s, start) for s in sigmas]
    logs = np.array([l.log for l in lattices]) - .5 * sigmas ** 2 + .5 * math.log(2 / math.pi)
    top = logs.max()
    w = np.exp(logs - top)
    # Below the first point the integrand is all but constant.
    weights[0] = .02 + .005
    evidence = (w * weights).sum()
    w = w * weights / evidence
    keep = w > 1e-7
    lows, highs = min(l.a[0] for l in np.array(lattices, dtype=object)[keep]), max(l.a[-1] for l in np.array(lattices, dtype=object)[keep])
    smoothed = []
    for t in range(len(periods)):
        parts = [(wk, l) for wk, l, k in zip(w, lattices, keep) if k]
        means = [(l.smooth[t] * l.a).sum() * l.step for _, l in parts]
        mean = sum(wk * m for (wk, _), m in zip(parts, means))
        square = sum(wk * ((l.smooth[t] * (l.a - mean) ** 2).sum() * l.step) for wk, l in parts)
        rate = sum(wk * (l.smooth[t] * special.expit(l.a)).sum() * l.step for wk, l in parts)
        sums = [(wk, l.a[0], l.a[-1], interpolate.CubicSpline(l.a, l.smooth[t]).antiderivative()) for wk, l in parts]
        def quantile(q):
            return special.expit(optimize.brentq(lambda x: sum(wk * float(c(min(max(x, a), b))) for wk, a, b, c in sums) - q, lows, highs, xtol=1e-9))
        smoothed.append((mean, math.sqrt(square), rate, quantile(.025), quantile(.975)))
    if any(abs(s[0]) < .1 for s in smoothed):
        continue
    averaged += 1
    rows.append(row(f"averaged-{case}", periods, events, trials, "averaged", start, .95, math.log(evidence) + top, text((w * sigmas).sum()), [], smoothed, "relative:4e-3",
                    SCIPY + "; looser: sums over a fixed list of sigmas from 0.02 to 4"))

# --- constant rates: the beta distribution ---
exact = 0
while exact < 16:
    case += 1
    periods, events, trials = drawn(exact % 3 == 0)
    if exact < 5:
        periods, events, trials = periods[:1], events[:1], trials[:1]
    a, b = random.choice([(0, 0), (.5, .5), (2, 30)])
    start = ("diffuse",) if a == 0 else ("beta", float(a), float(b))
    x, m = mp.mpf(a) + sum(map(mp.mpf, events)), mp.mpf(b) + sum(mp.mpf(n) - mp.mpf(e) for e, n in zip(events, trials))
    if x < .3 or m < .3 or sum(trials) == 0:
        continue
    log = mp.log(mp.beta(x, m)) - (mp.log(mp.beta(a, b)) if a else 0) + sum(
        mp.loggamma(mp.mpf(n) + 1) - mp.loggamma(mp.mpf(e) + 1) - mp.loggamma(mp.mpf(n) - mp.mpf(e) + 1) for e, n in zip(events, trials))
    def quantile(q):
        return special.betaincinv(float(x), float(m), q)
    all_ = (mp.digamma(x) - mp.digamma(m), mp.sqrt(mp.polygamma(1, x) + mp.polygamma(1, m)), x / (x + m), quantile(.025), quantile(.975))
    exact += 1
    rows.append(row(f"constant-{case}", periods, events, trials, "0", start, .95, log, "0", [], [all_] * len(periods), "relative:1e-6", TOOL + f", quantiles scipy {scipy.__version__}", "closed-form"))
write("binomial-levels", rows)
