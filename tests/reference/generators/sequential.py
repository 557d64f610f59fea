#!/usr/bin/python3
"""Independent values for sequential alarms: evidence, cumulative sums, sequential test.

Written from the definitions, not from the C#: products with 60 digits (mpmath), average run lengths from dense linear systems (numpy, scipy),
the sequential test by a plain recursion over the number of events. Writes tests/reference/*-generated.csv.
Run with Debian's python3: /usr/bin/python3 tests/reference/generators/sequential.py [part ...]
"""
import math
import os
import sys

import mpmath as mp
import numpy as np
import scipy
import scipy.optimize
import scipy.sparse
import scipy.sparse.linalg
import scipy.stats

mp.mp.dps = 60
HERE = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..")
MP = f"mpmath {mp.__version__} (generators/sequential.py)"
SP = f"scipy {scipy.__version__} (generators/sequential.py)"


def write(name, header, rows):
    with open(os.path.join(HERE, name + "-generated.csv"), "w", newline="\n", encoding="utf-8") as file:
        file.write(header + ",tolerance,kind,source\n")
        for row in rows:
            file.write(",".join("" if x is None else x if isinstance(x, str) else repr(x) for x in row) + "\n")


def number(x):
    return repr(float(x))


# --- evidence valid at any time -------------------------------------------------------------------------------------------------------------

def evidence_after_each(events):
    """The average over theta of the products of likelihood ratios, by the definition, after each event."""
    products = [mp.mpf(1)] * 6
    out = []
    for p, hit in events:
        p = mp.mpf(p)
        if 0 < p < 1:
            for i in range(6):
                theta = mp.mpf(2) ** (i + 1)
                q = theta * p / (1 - p + theta * p)
                products[i] *= q / p if hit else (1 - q) / (1 - p)
        out.append(mp.fsum(products) / 6)
    return out


def evidence():
    rng = np.random.default_rng(20261125)
    rows = []
    for case in range(70):
        n = int(rng.integers(1, 60)) if case < 60 else 400
        scale = rng.choice([1e-6, 1e-3, 0.05, 0.3, 0.7, 0.999])
        ps = [float(min(1.0, scale * rng.uniform(0.3, 1.0))) for _ in range(n)]
        if case % 7 == 0:
            ps[0] = 0.0 if case % 2 else 1.0
        odds = rng.choice([1.0, 3.0, 20.0])
        hits = []
        for p in ps:
            q = p if p in (0.0, 1.0) else odds * p / (1 - p + odds * p)
            hits.append(int(rng.uniform() < q))
        lots = int(rng.choice([1, 3, 60]))
        level = float(rng.choice([0.01, 0.05]))
        path = evidence_after_each(zip(ps, hits))
        informative = [i for i, p in enumerate(ps) if 0 < p < 1]
        alarm = next((i for i in informative if path[i] >= lots / mp.mpf(level)), None)
        rows.append((f"case-{case}", " ".join(map(repr, ps)), " ".join(map(str, hits)), str(lots), number(level),
                     number(mp.log(path[-1])), number(max(mp.mpf(0), mp.log(max(path)))),
                     "none" if alarm is None else str(alarm), "absolute:1e-10", "independent", MP))
    write("anytime-evidence", "id,probabilities,on_lot,lots,level,log_evidence,log_maximum,alarm", rows)


def discoveries():
    rng = np.random.default_rng(7)
    rows = []
    for case in range(60):
        k = int(rng.integers(1, 25))
        logs = [float(x) for x in rng.normal(rng.choice([-1.0, 1.0, 3.0]), rng.choice([0.5, 2.0, 5.0]), k)]
        if case % 6 == 0 and k > 2:
            logs[1] = logs[0]
        level = float(rng.choice([0.01, 0.05, 0.2]))
        e = [mp.e ** mp.mpf(x) for x in logs]
        ordered = sorted(e, reverse=True)
        largest = max([j for j in range(1, k + 1) if j * ordered[j - 1] / k >= 1 / mp.mpf(level)], default=0)
        chosen = [int(largest > 0 and x >= ordered[largest - 1]) for x in e]
        adjusted = [min([mp.mpf(1)] + [k / (j * ordered[j - 1]) for j in range(1, k + 1) if ordered[j - 1] <= x]) for x in e]
        rows.append((f"case-{case}", " ".join(map(repr, logs)), number(level), " ".join(map(str, chosen)), " ".join(number(x) for x in adjusted),
                     "relative:1e-11", "independent", MP))
    write("evidence-discoveries", "id,log_evidence,level,selected,adjusted", rows)


# --- cumulative sums of counts --------------------------------------------------------------------------------------------------------------

def chain(moves, states, start):
    """Average run length of max(0, S + move) with a signal at `states`, by a sparse linear system."""
    rows, columns, values = [], [], []
    for move, chance in moves:
        s = np.arange(states)
        to = np.maximum(0, s + move)
        inside = to < states
        rows.append(s[inside]); columns.append(to[inside]); values.append(np.full(inside.sum(), -chance))
    rows.append(np.arange(states)); columns.append(np.arange(states)); values.append(np.ones(states))
    matrix = scipy.sparse.csc_matrix((np.concatenate(values), (np.concatenate(rows), np.concatenate(columns))), shape=(states, states))
    return scipy.sparse.linalg.spsolve(matrix, np.ones(states))[start]


def gamma(p0, p1):
    r1 = -math.log((1 - p1) / (1 - p0))
    return r1 / math.log(p1 * (1 - p0) / (p0 * (1 - p1)))


def bernoulli():
    rng = np.random.default_rng(1999)
    rows = []
    while len(rows) < 60:
        p0 = float(10 ** rng.uniform(-4, -0.9))
        p1 = float(p0 * rng.uniform(1.5, 6))
        if p1 > 0.35:
            continue
        m = round(1 / gamma(p0, p1))
        if m < 3 or abs(m * gamma(p0, p1) - 1) > 0.045 or 1 / m <= p0 * 1.01:
            continue
        adjusted = scipy.optimize.brentq(lambda x: gamma(p0, x) - 1 / m, p0 * (1 + 1e-6), 1 - 1e-12, xtol=1e-16, rtol=1e-14)
        steps = int(rng.integers(1, int(5.5 * m)))
        if steps > 30000:
            continue
        above = bool(rng.integers(0, 2))
        first = steps + 1 if above else steps
        start = int(rng.integers(0, steps)) if rng.uniform() < 0.5 else 0
        rate = float(p0 * rng.choice([0.5, 1.5, 3.0]))
        arl = [chain([(m - 1, p), (-1, 1 - p)], first, start) for p in (p0, adjusted, rate)]
        if arl[0] > 1e8 or arl[2] > 1e8:
            continue
        rows.append((f"case-{len(rows)}", number(p0), number(p1), "", number(steps / m), number(start / m), "above" if above else "at-or-above", number(rate),
                     str(m), number(adjusted), number(arl[0]), number(arl[1]), number(arl[2]), "", "", "relative:1e-7", "independent", SP))
    write("bernoulli-cumulative-sums", "id,in_order,to_find,denominator,limit,head_start,signal,rate,steps,adjusted,run_length_in_order,"
          "run_length_to_find,run_length_at,diffusion_in_order,diffusion_to_find", rows)


def binomial():
    rng = np.random.default_rng(1993)
    rows = []
    while len(rows) < 60:
        n = int(rng.choice([1, 5, 20, 50, 100, 400]))
        p = float(rng.choice([0.005, 0.02, 0.1, 0.3, 0.6]))
        units = int(rng.choice([1, 2, 4, 10, 20]))
        k = math.ceil((n * p + rng.uniform(0.1, 1) * math.sqrt(n * p * (1 - p))) * units) / units
        if not 0 < k < n:
            continue
        steps = int(rng.integers(1, max(2, int(4 * units * max(1, math.sqrt(n * p * (1 - p)))))))
        above = bool(rng.integers(0, 2))
        first = steps + 1 if above else steps
        start = int(rng.integers(0, steps)) if rng.uniform() < 0.5 else 0
        pmf = scipy.stats.binom.pmf(np.arange(n + 1), n, p)
        arl = chain([(int(round((x - k) * units)), pmf[x]) for x in range(n + 1)], first, start)
        if not 0 < arl < 1e7:
            continue
        rows.append((f"case-{len(rows)}", str(n), number(k), number(steps / units), number(start / units), "above" if above else "at-or-above", number(p),
                     number(arl), "relative:1e-8", "independent", SP))
    write("binomial-cumulative-sums", "id,group_size,reference,limit,head_start,signal,rate,run_length", rows)


# --- cumulative sums of normal values -------------------------------------------------------------------------------------------------------

def clenshaw_curtis(count, high):
    theta = np.pi * np.arange(count + 1) / count
    weights = np.zeros(count + 1)
    for j in range(count + 1):
        total = 1.0
        for k in range(1, count // 2 + 1):
            total -= (1.0 if 2 * k == count else 2.0) * math.cos(2 * k * theta[j]) / (4 * k * k - 1)
        weights[j] = total * (1.0 if j in (0, count) else 2.0) / count
    return high * (np.cos(theta) + 1) / 2, weights * high / 2


def normal_side(k, h, shift, start):
    nodes, weights = clenshaw_curtis(160, h)
    points = np.concatenate([[0.0, start], nodes])
    kernel = np.zeros((len(points), len(points)))
    kernel[:, 0] = scipy.stats.norm.cdf(k - shift - points)
    kernel[:, 2:] = weights * scipy.stats.norm.pdf(nodes + k - shift - points[:, None])
    solved = np.linalg.solve(np.eye(len(points)) - kernel, np.ones(len(points)))
    return solved[0], solved[1]


def normal():
    rng = np.random.default_rng(1954)
    rows = []
    while len(rows) < 60:
        k = float(rng.choice([0.1, 0.25, 0.5, 0.75, 1.0, 1.5]))
        h = float(rng.uniform(0.2, 8))
        shift = float(rng.choice([0, 0.25, 0.5, 1, 2, 3, -0.5]))
        start = float(h * 0.5) if rng.uniform() < 0.4 else 0.0
        up, up_start = normal_side(k, h, shift, start)
        down, down_start = normal_side(k, h, -shift, start)
        two = (up_start * down + up * down_start - up * down) / (up + down)
        if up > 1e7 or down > 1e14 or not up > 0:
            continue
        rows.append((f"one-{len(rows)}", number(k), number(h), number(shift), "one", number(start), number(up_start), "relative:1e-7", "independent", SP))
        if down < 1e9:
            rows.append((f"two-{len(rows)}", number(k), number(h), number(shift), "two", number(start), number(two), "relative:1e-7", "independent", SP))
    write("normal-cumulative-sums", "id,reference,limit,shift,sides,head_start,run_length", rows)


# --- Wald's sequential test -----------------------------------------------------------------------------------------------------------------

def performance(p1, p2, alpha, beta, p):
    g = mp.log(mp.mpf(p2) * (1 - mp.mpf(p1)) / (mp.mpf(p1) * (1 - mp.mpf(p2))))
    h1, h2 = float(mp.log((1 - mp.mpf(alpha)) / mp.mpf(beta)) / g), float(mp.log((1 - mp.mpf(beta)) / mp.mpf(alpha)) / g)
    s = float(mp.log((1 - mp.mpf(p1)) / (1 - mp.mpf(p2))) / g)
    alive, accepted, rejected, asn, n = {0: 1.0}, 0.0, 0.0, 0.0, 0
    while sum(alive.values()) > 1e-16:
        asn += math.fsum(alive.values())
        n += 1
        following = {}
        for d, chance in alive.items():
            for to, probability in ((d + 1, p), (d, 1 - p)):
                if to >= h2 + s * n:
                    rejected += chance * probability
                elif to <= -h1 + s * n:
                    accepted += chance * probability
                else:
                    following[to] = following.get(to, 0.0) + chance * probability
        alive = following
    return h1, h2, s, accepted, rejected, asn


def wald(p1, p2, alpha, beta, p, h1, h2, s):
    """Chance of acceptance and average sample number by Wald's formulas, w found in the parametric form p(w)."""
    a, b = math.log((1 - beta) / alpha), math.log(beta / (1 - alpha))
    def rate(w):
        u, v = mp.mpf(p2) / mp.mpf(p1), (1 - mp.mpf(p2)) / (1 - mp.mpf(p1))
        return (1 - v ** w) / (u ** w - v ** w)
    if abs(p - s) < 1e-12:
        return a / (a - b), h1 * h2 / (s * (1 - s))
    w = mp.findroot(lambda x: rate(x) - p, (mp.mpf("1.3"), mp.mpf("0.7")) if p < s else (mp.mpf("-1.3"), mp.mpf("-0.7")), tol=1e-40, verify=False)
    l = (mp.e ** (w * a) - 1) / (mp.e ** (w * a) - mp.e ** (w * b))
    return float(l), float(((1 - l) * h2 - l * h1) / (p - s))


def sequential_test():
    rng = np.random.default_rng(1947)
    rows = []
    while len(rows) < 60:
        p1 = float(rng.choice([0.002, 0.005, 0.01, 0.05, 0.1, 0.3]))
        p2 = float(p1 * rng.choice([1.8, 3.0, 6.0]))
        if p2 >= 0.95:
            continue
        alpha, beta = (float(rng.choice([0.01, 0.05, 0.1, 0.2])) for _ in range(2))
        which = rng.integers(0, 4)
        h1, h2, s, *_ = performance(p1, p2, alpha, beta, 1.0)
        p = (p1, p2, s, float(rng.uniform(p1 / 2, min(0.95, p2 * 1.2))))[which]
        if which == 3 and abs(p - s) < 0.02 * s:
            continue
        h1, h2, s, accepted, rejected, asn = performance(p1, p2, alpha, beta, p)
        l, average = wald(p1, p2, alpha, beta, p, h1, h2, s)
        rows.append((f"case-{len(rows)}", number(p1), number(p2), number(alpha), number(beta), number(h1), number(h2), number(s), number(p),
                     number(accepted), number(rejected), number(asn), number(l), number(average), "relative:1e-9", "independent", MP))
    write("sequential-ratio-tests", "id,claimed,unacceptable,false_rejection,false_acceptance,h1,h2,slope,rate,acceptance,rejection,"
          "average_sample_number,wald_acceptance,wald_average_sample_number", rows)


# --- risk adjustment ------------------------------------------------------------------------------------------------------------------------

def weights(p, ra, r0=1):
    p, ra, r0 = mp.mpf(p), mp.mpf(ra), mp.mpf(r0)
    return (mp.log((1 - p + r0 * p) * ra / ((1 - p + ra * p) * r0)), mp.log((1 - p + r0 * p) / (1 - p + ra * p)))


def risk_weights():
    rng = np.random.default_rng(2000)
    rows = []
    for case in range(60):
        p = float(10 ** rng.uniform(-8, 0)) if case > 1 else float(case)
        ra = float(rng.choice([0.25, 0.5, 1.5, 2, 5]))
        r0 = float(rng.choice([1, 1, 0.8, 1.2]))
        event, none = weights(p, ra, r0)
        rows.append((f"case-{case}", number(p), number(ra), number(r0), number(event), number(none), "relative:1e-12", "independent", MP))
    write("likelihood-weights", "id,expected,to_find,in_order,event,no_event", rows)


def risk_run_lengths():
    """Mixtures on a fine lattice with weights rounded to it; and single rates whose weights lie on a lattice, exactly."""
    rng = np.random.default_rng(2018)
    rows = []
    while len(rows) < 45:
        m = int(rng.integers(5, 200))
        p0 = float(rng.uniform(0.25, 0.8) / m)
        p1 = scipy.optimize.brentq(lambda x: gamma(p0, x) - 1 / m, p0 * (1 + 1e-9), 1 - 1e-12, xtol=1e-16, rtol=1e-14)
        ra = p1 * (1 - p0) / (p0 * (1 - p1))
        unit = math.log(ra)
        steps = int(rng.integers(m, 4 * m)) + 0.5
        odds = float(rng.choice([1.0, 1.0, 2.0]))
        rate = odds * p0 / (1 - p0 + odds * p0)
        arl = chain([(m - 1, rate), (-1, 1 - rate)], int(steps + 0.5), 0)
        if arl > 1e7:
            continue
        rows.append((f"single-{len(rows)}", number(p0), "1", number(ra), number(steps / m * unit), number(odds), "0", number(arl), "relative:1e-2", "independent",
                     SP + "; exact on its own lattice where ours lays another across it"))
    for case in range(8):
        count = int(rng.integers(3, 12))
        rates = [float(x) for x in rng.uniform(0.01, 0.6, count)]
        shares = [int(x) for x in rng.integers(1, 300, count)]
        ra, odds, h = float(rng.choice([0.5, 2.0, 3.0])), float(rng.choice([1.0, 0.5, 2.0])), float(rng.uniform(1, 2))
        def at(scale):
            moves = {}
            for p, n in zip(rates, shares):
                event, none = weights(p, ra)
                rate = odds * p / (1 - p + odds * p)
                for w, chance in ((event, rate), (none, 1 - rate)):
                    key = int(mp.nint(w * scale))
                    moves[key] = moves.get(key, 0.0) + chance * n / sum(shares)
            states = int(round(h * scale))
            matrix = np.eye(states)
            for move, chance in moves.items():
                for s in range(states):
                    if s + move < states:
                        matrix[s, max(0, s + move)] -= chance
            return np.linalg.solve(matrix, np.ones(states))[0]
        arl = at(1500)
        rows.append((f"mix-{case}", " ".join(map(repr, rates)), " ".join(map(str, shares)), number(ra), number(h), number(odds), "0", number(arl),
                     "relative:5e-3", "independent", SP + "; weights rounded to 1/1500"))
    write("risk-adjusted-run-lengths", "id,rates,counts,to_find,limit,odds_ratio,head_start,run_length", rows)


PARTS = {"evidence": evidence, "discoveries": discoveries, "bernoulli": bernoulli, "binomial": binomial, "normal": normal,
         "test": sequential_test, "weights": risk_weights, "risk": risk_run_lengths}

if __name__ == "__main__":
    for part in sys.argv[1:] or PARTS:
        PARTS[part]()
