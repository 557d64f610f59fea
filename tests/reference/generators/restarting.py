"""Evidence averaged over starting points, by the double sum over starting points and multiples of the odds (mpmath, 50 digits).

python3 restarting.py > ../restarting-evidence-generated.csv
"""
import random

import mpmath as mp

mp.mp.dps = 50
random.seed(20261125)


def evidence(points, chances, hits, trials, multiples):
    """The sum over starting points j of 1/(j(j+1)) times the average over multiples of the product over observations from j on."""
    total = mp.mpf(0)
    last = max(points)
    for j in range(1, last + 1):
        weight = mp.mpf(1) / (j * (j + 1))
        for theta in multiples:
            theta = mp.mpf(theta)
            product = mp.mpf(1)
            for point, p, x, n in zip(points, chances, hits, trials):
                if point < j:
                    continue
                p = mp.mpf(p)
                q = theta * p / (1 - p + theta * p)
                product *= (q / p) ** x * ((1 - q) / (1 - p)) ** (n - x)
            total += weight * product / len(multiples)
    return mp.log(total + mp.mpf(1) / (last + 1))


print("id,points,probabilities,events,observations,multiples,log_evidence,tolerance,kind,source")
EXCESS = [2, 4, 8, 16, 32, 64]
LACK = [0.5, 0.25, 0.125, 0.0625, 0.03125, 0.015625]
for case in range(60):
    length = random.choice([1, 2, 5, 12, 30])
    low, high = random.choice([(0.01, 0.05), (0.05, 0.6), (0.6, 0.99), (1e-7, 1e-4)])
    grouped = case % 3 == 0
    multiples = LACK if case % 4 == 3 else [1.25, 1.5, 2, 4, 8, 16] if grouped else EXCESS
    points, at = [], 1 + random.choice([0, 0, 3])
    for _ in range(length):
        points.append(at)
        at += random.choice([0, 0, 0, 1, 1, 7])
    chances = [random.uniform(low, high) for _ in range(length)]
    late = random.randrange(length)
    trials = [random.choice([1, 10, 300]) if grouped else 1 for _ in range(length)]
    hits = []
    for i in range(length):
        chance = chances[i] if i < late else min(0.9, chances[i] * 5)
        hits.append(sum(random.random() < chance for _ in range(trials[i])))
    value = evidence(points, chances, hits, trials, multiples)
    join = lambda values: " ".join(repr(v) for v in values)
    print(
        f"case-{case},{join(points)},{join(chances)},{join(hits)},{join(trials)},{join(multiples)},{mp.nstr(value, 16)},"
        f"absolute:1e-10,independent,mpmath {mp.__version__} (generators/restarting.py)"
    )
