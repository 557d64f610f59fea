#!/usr/bin/python3
"""No reference: two tests in several populations by maximum likelihood; one and two tests with beta priors.

    /usr/bin/python3 tests/reference/generators/latent.py    writes hui-walter-generated.csv, latent-posteriors-generated.csv (three minutes)

Likelihood: numerical search from many starts on the logit scale, polished as a root of the complex-step gradient; information by complex-step
derivatives of the cell chances. Posteriors: one test, and two tests on few people, by tensor quadrature (Gauss-Jacobi) over prevalence and
accuracies, no latent counts; two tests on many people by enumeration with numpy and scipy's incomplete beta function.
"""
import csv
import itertools
import numpy as np
import scipy
from scipy import optimize, special

VERSION = f"scipy {scipy.__version__}"
np.seterr(all="ignore")  # searches step outside the domain and come back


def chances(t, k):
    """Cells ++, +-, -+, -- of each of k populations; t holds prevalences, Se1, Sp1, Se2, Sp2."""
    p, (s1, p1, s2, p2) = t[:k], t[k:]
    yes = np.array([s1 * s2, s1 * (1 - s2), (1 - s1) * s2, (1 - s1) * (1 - s2)])
    no = np.array([(1 - p1) * (1 - p2), (1 - p1) * p2, p1 * (1 - p2), p1 * p2])
    return np.outer(p, yes) + np.outer(1 - p, no)


def jacobian(t, k):
    step = 1e-30
    return np.array([chances(t + 1j * step * np.eye(len(t))[i], k).imag.ravel() / step for i in range(len(t))]).T


def loglik(t, n):
    with np.errstate(all="ignore"):
        q = chances(t, len(n))
        return np.where(n > 0, n * np.log(np.maximum(q, 1e-300)), 0).sum()


def loglik_full(n):
    return np.where(n > 0, n * np.log(np.maximum(n, 1) / n.sum(axis=1)[:, None]), 0).sum()


def fit(n, random):
    k = len(n)
    logistic = special.expit
    gradient = lambda t: jacobian(t, k).T @ (n / chances(t, k)).ravel()
    best = None
    for _ in range(25):
        start = special.logit(np.concatenate([random.uniform(0.05, 0.95, k), random.uniform(0.6, 0.99, 4)]))
        found = optimize.minimize(lambda u: -loglik(logistic(u), n), start, jac=lambda u: -gradient(logistic(u)) * logistic(u) * (1 - logistic(u)), method="BFGS", options=dict(gtol=1e-9))
        t = logistic(found.x)
        if t[k] + t[k + 1] <= 1 or t[k + 2] + t[k + 3] <= 1:
            continue
        if best is None or -found.fun > best[0] + 1e-12:
            best = (-found.fun, t)
    if best is None:
        return None
    t = best[1]
    if ((t < 1e-5) | (t > 1 - 1e-5)).any():
        # The edge: search again within [0, 1] itself, from where the first search went.
        found = optimize.minimize(lambda v: -loglik(v, n), np.clip(t, 1e-4, 1 - 1e-4), jac=lambda v: -gradient(v), method="L-BFGS-B", bounds=[(0, 1)] * len(t), options=dict(ftol=1e-15, gtol=1e-10, maxiter=5000))
        return (found.x if -found.fun > best[0] - 1e-9 else t), None
    polished = optimize.root(gradient, t, tol=1e-15).x
    if abs(polished - t).max() < 1e-3:
        t = polished
    j = jacobian(t, k)
    information = j.T @ np.diag(np.repeat(n.sum(axis=1), 4) / chances(t, k).ravel()) @ j
    return t, np.linalg.inv(information)


def hui_walter():
    random = np.random.default_rng(51)
    names = ["first_sensitivity", "first_specificity", "second_sensitivity", "second_specificity"]
    head = ["id", "counts", "prevalences", *names, "prevalence_errors", *[f"{m}_error" for m in names], "cov_sensitivities", "cov_first", "log_likelihood", "deviance", "p_value", "tolerance", "kind", "source"]
    sets = [np.array([[14, 4, 9, 528], [887, 31, 37, 367]], float)]
    while len(sets) < 90:
        k = 2 if len(sets) < 60 else int(random.integers(3, 6))
        p = random.uniform(0.02, 0.9, k)
        t = np.concatenate([p, random.uniform(0.55, 0.98, 4)])
        size = (10 ** random.uniform(2, 5, k)).astype(int)
        n = np.array([random.multinomial(s, q) for s, q in zip(size, chances(t, k))], float)
        shares = np.array([(n[:, 0] + n[:, 1]) / n.sum(axis=1), (n[:, 0] + n[:, 2]) / n.sum(axis=1)])
        if (shares.max(axis=1) - shares.min(axis=1)).min() > 0.15:
            sets.append(n)
    with open("tests/reference/hui-walter-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(head)
        inner = edge = 0
        for n in sets:
            found = fit(n, random)
            if found is None:
                continue
            t, cov = found
            k = len(n)
            text = lambda v: " ".join(f"{w:.15g}" for w in v)
            log = loglik(t, n)
            if cov is None and k == 2 and 2 * (loglik_full(n) - log) < 1e-6:
                continue  # an exact fit a hair inside the edge: the search cannot tell
            if cov is None:
                edge += 1
                out.writerow([f"edge-{edge:02}", text(n.ravel()), text(t[:k]), *(f"{v:.15g}" for v in t[k:]), "", *["undefined"] * 4, "", "", "", "", "", "absolute:3e-4", "independent",
                              f"{VERSION} L-BFGS-B within [0, 1], flat near the edge (generators/latent.py)"])
                continue
            inner += 1
            s = np.sqrt(np.diag(cov))
            with np.errstate(all="ignore"):
                deviance = 2 * np.where(n > 0, n * np.log(n / (n.sum(axis=1)[:, None] * chances(t, k))), 0).sum()
            fits = [f"{deviance:.12g}", f"{special.gammaincc(k - 2, deviance / 2):.12g}"] if k > 2 else ["undefined", "undefined"]
            out.writerow([f"inner-{inner:02}", text(n.ravel()), text(t[:k]), *(f"{v:.15g}" for v in t[k:]), text(s[:k]), *(f"{v:.15g}" for v in s[k:]), f"{cov[k, k + 2]:.12g}", f"{cov[k, k + 1]:.12g}",
                          f"{log:.15g}", *fits, "relative:1e-6", "independent", f"{VERSION} BFGS from 25 starts, root of the gradient, expected information (generators/latent.py)"])
    print(inner, "inside,", edge, "on an edge")


# Posteriors: figures are prevalence, then Se and Sp of each test; cells as in the counts.
def cell_chance(values, tests):
    p, rest = values[0], values[1:]
    for signs in itertools.product((1, 0), repeat=tests):
        yes, no = p, 1 - p
        for i, sign in enumerate(signs):
            se, sp = rest[2 * i], rest[2 * i + 1]
            yes = yes * (se if sign else 1 - se)
            no = no * ((1 - sp) if sign else sp)
        yield yes + no


def quadrature(counts, priors):
    """Mean, 2.5 %, 50 %, 97.5 % of each figure."""
    tests = {2: 1, 4: 2}[len(counts)]
    total = sum(counts)
    order = total // 2 + 2  # exact for the likelihood, a polynomial of that degree in each figure

    def rule(a, b, n):
        x, w = special.roots_jacobi(n, b - 1, a - 1)
        return (1 + x) / 2, w / w.sum()

    rules = [rule(a, b, order) for a, b in priors]

    def likelihood(values):
        result = 1.0
        for c, q in zip(counts, cell_chance(values, tests)):
            result = result * q ** c
        return result

    def given(k, ts):
        """The likelihood at each t of figure k, all others integrated out."""
        others = [r for i, r in enumerate(rules) if i != k]
        grids = np.meshgrid(*[x for x, _ in others], indexing="ij")
        weight = 1.0
        for axis, (_, w) in enumerate(others):
            shape = [1] * len(others)
            shape[axis] = -1
            weight = weight * w.reshape(shape)
        out = []
        for t in ts:
            values = list(grids)
            values.insert(k, t)
            out.append((weight * likelihood(values)).sum())
        return np.array(out)

    results = []
    for k, (a, b) in enumerate(priors):
        x, w = rules[k]
        dense = given(k, x)
        mean = (w * x * dense).sum() / (w * dense).sum()
        # The density on panels that narrow towards 0 and 1, eight Gauss-Legendre nodes each; a panel cut at q is taken afresh.
        ends = np.concatenate([[0], 2.0 ** np.arange(-30, -6), np.arange(1, 64) / 64])
        ends = np.unique(np.concatenate([ends, 1 - ends]))
        legendre, share = np.polynomial.legendre.leggauss(8)

        def mass(low, high):
            t = low + (high - low) * (1 + legendre) / 2
            return (high - low) / 2 * (share * t ** (a - 1) * (1 - t) ** (b - 1) * given(k, t)).sum()

        running = np.concatenate([[0], np.cumsum([mass(low, high) for low, high in zip(ends, ends[1:])])])

        def below(q):
            panel = np.searchsorted(ends, q, side="right") - 1
            return (running[panel] + mass(ends[panel], q)) / running[-1]

        results.append((mean, *(optimize.brentq(lambda q: below(q) - p, 1e-9, 1 - 1e-9, xtol=1e-12) for p in (0.025, 0.5, 0.975))))
    return results


def enumeration(counts, priors):
    y = np.array(np.meshgrid(*[np.arange(c + 1) for c in counts], indexing="ij")).reshape(4, -1)
    n = np.array(counts)[:, None]
    z = n - y
    terms = [(y.sum(axis=0), z.sum(axis=0)), (y[0] + y[1], y[2] + y[3]), (z[2] + z[3], z[0] + z[1]), (y[0] + y[2], y[1] + y[3]), (z[1] + z[3], z[0] + z[2])]
    log = (special.gammaln(n + 1) - special.gammaln(y + 1) - special.gammaln(z + 1)).sum(axis=0)
    for (a, b), (s, f) in zip(priors, terms):
        log = log + special.betaln(a + s, b + f)
    w = np.exp(log - log.max())
    w /= w.sum()
    results = []
    for (a, b), (s, f) in zip(priors, terms):
        key = s.astype(np.int64) * (sum(counts) + 1) + f
        pairs, where = np.unique(key, return_inverse=True)
        weight = np.bincount(where, w)
        keep = weight > 1e-16
        weight, pairs = weight[keep], pairs[keep]
        s, f = pairs // (sum(counts) + 1), pairs % (sum(counts) + 1)
        below = lambda q: (weight * special.betainc(a + s, b + f, q)).sum()
        mean = (weight * (a + s) / (a + b + s + f)).sum()
        results.append((mean, *(optimize.brentq(lambda q: below(q) - p, 1e-9, 1 - 1e-9, xtol=1e-12) for p in (0.025, 0.5, 0.975))))
    return results


FIGURES = ["prevalence", "first_sensitivity", "first_specificity", "second_sensitivity", "second_specificity"]


def posteriors():
    random = np.random.default_rng(52)
    prior = lambda: (float(round(random.uniform(1, 30), 2)), float(round(random.uniform(1, 30), 2)))
    good = lambda: (float(round(random.uniform(5, 60), 2)), float(round(random.uniform(1, 6), 2)))
    uniform = (1.0, 1.0)
    jobs = [("quadrature", (40, 122), [uniform, (4.44, 13.31), (71.25, 3.75)]), ("quadrature", (0, 0), [uniform, (3.0, 2.0), (5.0, 2.0)]), ("quadrature", (0, 60), [uniform, good(), good()]),
            ("quadrature", (60, 0), [uniform, good(), good()]), ("enumeration", (38, 87, 2, 35), [uniform, (21.96, 5.49), (4.1, 1.76), (4.44, 13.31), (71.25, 3.75)])]
    for _ in range(52):
        n = int(random.integers(1, 120))
        x = int(random.integers(0, n + 1))
        jobs.append(("quadrature", (x, n - x), [prior(), good(), good()]))
    for _ in range(26):
        jobs.append(("quadrature", tuple(int(v) for v in random.multinomial(int(random.integers(1, 13)), random.dirichlet([1] * 4))), [prior(), good(), good(), good(), good()]))
    for _ in range(30):
        jobs.append(("enumeration", tuple(int(v) for v in random.multinomial(int(random.integers(20, 140)), random.dirichlet([1] * 4))), [prior(), good(), good(), good(), good()]))
    with open("tests/reference/latent-posteriors-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["id", "counts", "priors"] + [f"{m}_{s}" for m in FIGURES for s in ("mean", "lower", "median", "upper")] + ["infected_means", "tolerance", "kind", "source"])
        for number, (how, counts, priors) in enumerate(jobs, 1):
            results = quadrature(counts, priors) if how == "quadrature" else enumeration(counts, priors)
            values = [f"{v:.12g}" for r in results for v in r] + [""] * (20 - 4 * len(results))
            method = "tensor Gauss-Jacobi quadrature" if how == "quadrature" else "enumeration with betaln and betainc"
            out.writerow([f"{'one' if len(counts) == 2 else 'two'}-{number:03}", " ".join(map(str, counts)), " ".join(f"{v:g}" for p in priors for v in p), *values, "", "absolute:2e-8", "independent", f"{VERSION} {method} (generators/latent.py)"])


if __name__ == "__main__":
    hui_walter()
    posteriors()
