#!/usr/bin/python3
"""Reference values for repeated misses from tables of serial tests.

Run from the repository root with Debian's python3, python3-numpy and python3-scipy:

    /usr/bin/python3 tests/reference/generators/serial.py

1. serial-fits-generated.csv: the likelihood by writing out every sequence of results, recoveries and stays, integrated over the person effect by
   Gauss-Legendre panels; maximised by scipy's L-BFGS-B over all parameters, limits by Brent's method on the profile. Nothing of the library's scoring or sums.
2. serial-tables-generated.csv: tables of simulated people with a known correlation.
"""
import csv
import itertools
import math
import random

import numpy as np
import scipy
from scipy import optimize, special, stats

random.seed(20261127)
rng = np.random.default_rng(20261127)
HIGHEST = 0.99
CELLS = {
    "without symptoms": {0: [(9, 97), (35, 89), (44, 78)], 2: [(17, 34), (23, 34), (25, 32)], 4: [(16, 21), (15, 20), (13, 15)],
                         6: [(20, 28), (21, 27), (16, 18)], 8: [(13, 23), (13, 22), (4, 11)], 10: [(5, 9), (5, 8)]},
    "with symptoms": {0: [(34, 57), (47, 51), (44, 47)], 2: [(58, 62), (59, 60), (43, 43)], 4: [(55, 58), (53, 54), (39, 40)],
                      6: [(27, 34), (26, 33), (22, 27)], 8: [(12, 17), (12, 17), (7, 11)], 10: [(4, 9), (3, 7)]},
}


def tool(how):
    return f"scipy {scipy.__version__} and numpy {np.__version__}: {how} (generators/serial.py)"


def out(name, header, rows):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header.split())
        writer.writerows(rows)


def text(table):
    return ";".join(f"{group}@{day}:" + "|".join(f"{x}/{n}" for x, n in columns) for group, rows in table.items() for day, columns in rows.items())


NODES, WEIGHTS = np.polynomial.legendre.leggauss(8)


def levels(rho):
    width = min(0.5, math.sqrt((1 - rho) / max(rho, 1e-9)))
    edges = np.linspace(-7, 7, int(math.ceil(14 / width)) + 1)
    half = (edges[1] - edges[0]) / 2
    z = (edges[:-1, None] + half * (NODES[None, :] + 1)).ravel()
    return z, np.tile(WEIGHTS, len(edges) - 1) * half * np.exp(-z * z / 2) / math.sqrt(2 * math.pi)


class Fit:
    def __init__(self, table, ends, leavers, gap=2):
        self.table, self.ends, self.leavers, self.gap = table, ends, leavers, gap
        self.names = sorted({(g, d + gap * k) for g, rows in table.items() for d, columns in rows.items() for k in range(len(columns)) if columns[k][1] > 0})
        self.index = {name: i for i, name in enumerate(self.names)}
        self.widest = max(len(columns) for rows in table.values() for columns in rows.values())
        total = lambda day, tests: sum(rows[day][tests - 1][1] for rows in table.values() if day in rows and len(rows[day]) >= tests)
        known, self.still = 1.0, {}
        last = max(d + gap * len(c) for rows in table.values() for d, c in rows.items())
        for day in range(last + 1):
            if ends == "SomeRecover" and total(day, 2) > 0 and any(day + gap in rows for rows in table.values()):
                known = min(1.0, total(day + gap, 1) / total(day, 2))
            self.still[day] = known

    def minus_log(self, theta, rho):
        z, w = levels(rho)
        if rho == 0:
            z, w = np.zeros(1), np.ones(1)
        extra = theta[len(self.names):]

        def stay(k, positive):
            return 1.0 if self.leavers != "Estimated" else special.expit(extra[k - 1] + (extra[-1] if positive else 0.0))

        person = [special.ndtr((b + math.sqrt(rho) * z) / math.sqrt(1 - rho)) for b in theta[:len(self.names)]]
        total = 0.0
        for group, rows in self.table.items():
            for day, columns in rows.items():
                for tests, (x, n) in enumerate(columns, 1):
                    if n == 0:
                        continue
                    found = others = 0.0
                    for infected in range(1, tests + 1):
                        chance = 1.0
                        for k in range(1, infected):
                            chance *= self.still[day + self.gap * (k - 1)]
                        if infected < tests:
                            chance *= 1 - self.still[day + self.gap * (infected - 1)]
                        if chance == 0:
                            continue
                        for results in itertools.product((0, 1), repeat=infected):
                            path = np.full_like(z, chance)
                            any_positive = False
                            for k in range(tests):
                                if k > 0:
                                    path = path * stay(k, any_positive)
                                if k < infected:
                                    p = person[self.index[group, day + self.gap * k]]
                                    path = path * (p if results[k] else 1 - p)
                                    any_positive = any_positive or bool(results[k])
                            if any_positive:
                                found += float(np.sum(w * path))
                            else:
                                others += float(np.sum(w * path))
                    share = min(max(found / (found + others), 1e-300), 1 - 1e-16)
                    xx, nn = (x + columns[0][1] - n, columns[0][1]) if self.leavers == "AllFound" else (x, n)
                    total += special.xlogy(xx, share) + special.xlog1py(nn - xx, -share)
                    if self.leavers == "Estimated" and tests < len(columns):
                        staying = (found * stay(tests, True) + others * stay(tests, False)) / (found + others)
                        m = columns[tests][1]
                        total += special.xlogy(m, staying) + special.xlog1py(n - m, -staying)
        return -total

    def climb(self, rho, start=None, fresh=False):
        size = len(self.names) + (self.widest if self.leavers == "Estimated" else 0)
        bounds = [(-4, 4)] * len(self.names) + [(-12, 12)] * (size - len(self.names))
        settings = {"ftol": 1e-13, "gtol": 1e-7, "maxfun": 100000, "maxcor": 30}
        begins = [np.concatenate([np.full(len(self.names), b), np.full(max(size - len(self.names) - 1, 0), 1.5), [e] if self.leavers == "Estimated" else []]) for b, e in ((0.0, -1.5), (0.0, 1.5), (0.7, 0.0))]
        if start is not None:
            begins = [start] + (begins[:2] if self.leavers == "Estimated" and fresh else [])
        best = None
        for begin in begins:
            o = optimize.minimize(self.minus_log, begin, args=(rho,), method="L-BFGS-B", bounds=bounds, options=settings)
            for _ in range(3):  # begun anew: it stops early along flat directions
                again = optimize.minimize(self.minus_log, o.x, args=(rho,), method="L-BFGS-B", bounds=bounds, options=settings)
                gain, o = o.fun - again.fun, again
                if gain < 1e-6:
                    break
            if best is None or o.fun < best.fun:
                best = o
        return best

    def of(self, confidence=0.95, with_limits=True):
        grid = [0, 0.1, 0.3, 0.5, 0.7, 0.85, 0.95, HIGHEST]
        points, last = [], None
        for rho in grid:
            last = self.climb(rho, None if last is None else last.x, fresh=True)
            points.append(last)
        top = min(range(len(grid)), key=lambda i: points[i].fun)
        low, high = grid[max(top - 1, 0)], grid[min(top + 1, len(grid) - 1)]
        # from the best point of the grid, so that it climbs the right hill
        at = lambda rho: min(self.climb(rho, points[i].x).fun for i in {top, min(range(len(grid)), key=lambda i: abs(grid[i] - rho))})
        o = optimize.minimize_scalar(at, bounds=(low, high), method="bounded", options={"xatol": 1e-5})
        best, height = (o.x, o.fun) if o.fun < points[top].fun else (grid[top], points[top].fun)
        if not with_limits:
            return best, -height, None, None
        need = stats.chi2.ppf(confidence, 1) / 2
        excess = lambda rho: at(rho) - height - need
        lower = 0.0 if excess(0) <= 0 else optimize.brentq(excess, 0, best, xtol=1e-6)
        upper = HIGHEST if excess(HIGHEST) <= 0 else optimize.brentq(excess, best, HIGHEST, xtol=1e-6)
        return best, -height, lower, upper


def drawn_table():
    table = {}
    for group in ["first", "second"][: random.choice([1, 1, 2])]:
        table[group] = {}
        for day in range(0, random.choice([2, 4]) + 1, 2):
            columns = random.choice([2, 3]) if day or table[group] else 3
            rho, s = random.choice([0.0, 0.4, 0.8]), random.uniform(0.2, 0.8)
            n = random.choice([30, 120, 600])
            z = rng.standard_normal(n)
            positive = np.zeros(n, bool)
            row = []
            for k in range(columns):
                positive |= rng.random(n) < special.ndtr((special.ndtri(s) + math.sqrt(rho) * z) / math.sqrt(1 - rho))
                row.append((int(positive.sum()), len(positive)))
                keep = rng.random(len(positive)) < random.choice([0.8, 0.9])
                z, positive, n = z[keep], positive[keep], int(keep.sum())
            table[group][day] = row
    return table


def fits():
    rows = []

    def add(name, table, ends, leavers, with_limits):
        rho, height, lower, upper = Fit(table, ends, leavers).of(with_limits=with_limits)
        rows.append([name, text(table), ends, leavers, f"{rho:.6f}", f"{height:.7f}", "" if lower is None else f"{lower:.5f}", "" if upper is None else f"{upper:.5f}",
                     "independent", tool("every sequence of results, recoveries and stays written out, L-BFGS-B, profile by Brent's method; the correlation to 1e-3, the likelihood to 1e-5")])
        print(rows[-1][0], rows[-1][2:8], flush=True)

    for ends in ("NobodyRecovers", "SomeRecover"):
        for leavers in ("AsStayers", "AllFound", "Estimated"):
            add(f"antigen-letter-{ends}-{leavers}", CELLS, ends, leavers, leavers != "Estimated")
    for number in range(54):
        add(f"drawn-{number}", drawn_table(), random.choice(["NobodyRecovers", "SomeRecover"]), ["AsStayers", "AllFound", "Estimated"][number % 3], number % 4 == 0)
    header = "id table ends leavers correlation likelihood lower upper tolerance kind source"
    out("serial-fits", header, [row[:8] + ["absolute:1e-3"] + row[8:] for row in rows])


def simulated_table(rho, people, sensitivities, still, stay, odds, nested):
    """People infected on day 0, tested every second day; a row starts with those infected on its day."""
    days = len(sensitivities)

    def cohort():
        z = rng.standard_normal(people)
        results = np.array([rng.random(people) < special.ndtr((special.ndtri(s) + math.sqrt(rho) * z) / math.sqrt(1 - rho)) for s in sensitivities])
        infected = np.ones((days, people), bool)
        for k in range(1, days):
            infected[k] = infected[k - 1] & (rng.random(people) < still)
        return results & infected, infected

    shared = cohort()
    here = np.ones(people, bool)
    table = {"all": {}}
    for first in range(days - 1):
        results, infected = shared if nested else cohort()
        row, present = [], (here if nested else np.ones(people, bool)) & infected[first]
        positive = np.zeros(people, bool)
        for k in range(first, min(first + 3, days)):
            positive |= results[k]
            row.append((int((positive & present).sum()), int(present.sum())))
            if nested:
                if len(stays) <= k:
                    stays.append(rng.random(people) < stay)
                present = present & stays[k]
            else:
                base = math.log(stay / (1 - stay))
                present = present & (rng.random(people) < special.expit(base + np.where(positive, math.log(odds), 0.0)))
        table["all"][2 * first] = row
        if nested:
            here = here & stays[first]
    return table


stays = []


def tables():
    rows = []
    for rho in (0.0, 0.3, 0.6, 0.9):
        for name, people, number, ends, leavers, still, stay, odds, nested in [
            ("large-stayers", 40000, 1, "NobodyRecovers", "AsStayers", 1.0, 0.9, 1.0, False),
            ("large-recover", 40000, 1, "SomeRecover", "AsStayers", 0.8, 0.9, 1.0, True),
            ("large-leave", 40000, 1, "NobodyRecovers", "Estimated", 1.0, 0.85, 0.5, False),
            ("small-shared", 150, 60, "SomeRecover", "AsStayers", 0.8, 0.93, 1.0, True),
            ("small-stay", 150, 60, "NobodyRecovers", "AsStayers", 1.0, 0.93, 1.0, True),
        ]:
            for k in range(number):
                stays.clear()
                table = simulated_table(rho, people, [0.25, 0.55, 0.75, 0.65], still, stay, odds, nested)
                rows.append([f"{name}-{rho}-{k}", text(table), ends, leavers, rho, odds, "exact", "independent",
                             tool("tables of simulated people with a known correlation" + ("; the same people in all rows" if nested else ""))])
    out("serial-tables", "id table ends leavers truth odds tolerance kind source", rows)


if __name__ == "__main__":
    tables()
    fits()
