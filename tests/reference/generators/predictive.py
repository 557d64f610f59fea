#!/usr/bin/python3
"""Reference values for Wald limits of predictive values, the prevalence at which a share of positives is real, and several
tests of one person taken together.

Run from the repository root with Debian's python3 and python3-mpmath:

    /usr/bin/python3 tests/reference/generators/predictive.py

It writes predictive-values-wald-generated.csv, prevalence-for-share-generated.csv and serial-testing-generated.csv in
tests/reference. Every limit is the delta method with derivatives taken numerically at 40 digits from the definition of
the figure itself over the two or four measured rates with their binomial variances (the library combines variances of
logarithms in closed form).
"""
import csv
import itertools

import mpmath as mp

mp.mp.dps = 40
TOOL = f"mpmath {mp.__version__} at 40 digits: delta method by numerical derivatives (generators/predictive.py)"


def out(name, header, rows):
    with open(f"tests/reference/{name}-generated.csv", "w", newline="\n", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header.split())
        writer.writerows(rows)


def num(value):
    return mp.nstr(mp.mpf(value), 17)


def rate(text):
    if "/" in text:
        x, n = (mp.mpf(part) for part in text.split("/"))
        return x / n, x * (n - x) / n ** 3
    return mp.mpf(float(text)), mp.mpf(0)


def z(confidence):
    return mp.sqrt(2) * mp.erfinv(mp.mpf(float(confidence)))


def spread(function, rates):
    """Standard deviation of function(rates) by the delta method."""
    total = mp.mpf(0)
    for index, (_, variance) in enumerate(rates):
        if variance == 0:
            continue

        def along(v):
            return function(*[v if index == k else other for k, (other, _) in enumerate(rates)])
        total += mp.diff(along, rates[index][0], h=mp.mpf(10) ** -12) ** 2 * variance
    return mp.sqrt(total)


def logit(p):
    return mp.log(p / (1 - p))


def expit(u):
    return 1 / (1 + mp.exp(-u))


def logit_limits(function, rates, confidence):
    centre = logit(function(*[value for value, _ in rates]))
    half = z(confidence) * spread(lambda *v: logit(function(*v)), rates)
    return expit(centre - half), expit(centre + half)


def positive(se, sp, p):
    return se * p / (se * p + (1 - sp) * (1 - p))


def negative(se, sp, p):
    return sp * (1 - p) / (sp * (1 - p) + (1 - se) * p)


STUDIES = [("240/418", "288/375"), ("44/123", "2465/2469"), ("32/40", "185/187"), ("7/17", "840/854"), ("231/258", "54/86"), ("61/97", "2391/2400"),
           ("152/169", "802/822"), ("0.8", "2391/2400"), ("61/97", "0.998"), ("1/3", "2/3")]

rows = []
for (se, sp), p, confidence in itertools.product(STUDIES, ("0.001", "0.03", "0.4"), ("0.9", "0.95")):
    for measure, function in (("positive", positive), ("negative", negative)):
        rates = [rate(se), rate(sp)]
        prior = mp.mpf(float(p))
        value = function(rates[0][0], rates[1][0], prior)
        half = z(confidence) * spread(lambda a, b: function(a, b, prior), rates)
        rows.append([f"{measure}-{se}-{sp}-{p}-{confidence}", measure, se, sp, p, confidence, num(value), num(max(0, value - half)), num(min(1, value + half)),
                     "absolute:1e-12", "independent", TOOL])
out("predictive-values-wald", "id measure sensitivity specificity prevalence confidence value lower upper tolerance kind source", rows)

rows = []
for (se, sp), share, confidence in itertools.product(STUDIES, ("0.1", "0.5", "0.95"), ("0.9", "0.95")):
    rates = [rate(se), rate(sp)]
    s = mp.mpf(float(share))

    def prevalence(a, b):
        return s * (1 - b) / (s * (1 - b) + (1 - s) * a)
    value = prevalence(rates[0][0], rates[1][0])
    lower, upper = logit_limits(prevalence, rates, confidence)
    rows.append([f"share-{share}-{se}-{sp}-{confidence}", share, se, sp, confidence, num(value), num(lower), num(upper), "relative:1e-10", "independent", TOOL])
out("prevalence-for-share", "id share sensitivity specificity confidence value lower upper tolerance kind source", rows)

rows = []


def both(rule, ses, sps):
    """Sensitivity and specificity of several together."""
    if rule == "All":
        return mp.fprod(ses), 1 - mp.fprod([1 - sp for sp in sps])
    return 1 - mp.fprod([1 - se for se in ses]), mp.fprod(sps)


def serial(identity, rule, times, screens, p, confidence, expand):
    rates = [rate(text) for pair in screens for text in pair]
    prior = mp.mpf(float(p))

    def figure(pick):
        def function(*values):
            ses, sps = expand(values)
            se, sp = both(rule, ses, sps)
            return pick(se, sp)
        return function
    values = [value for value, _ in rates]
    row = [identity, rule, times, ";".join("|".join(pair) for pair in screens), p, confidence]
    row += [num(figure(lambda se, sp: se)(*values)), num(figure(lambda se, sp: sp)(*values))]
    for pick in (lambda se, sp: positive(se, sp, prior), lambda se, sp: negative(se, sp, prior)):
        row.append(num(figure(pick)(*values)))
        if any(variance for _, variance in rates):
            row += [num(end) for end in logit_limits(figure(pick), rates, confidence)]
        else:
            row += ["", ""]
    rows.append(row + ["relative:1e-9", "independent", TOOL])


for (se, sp), times, rule, p in itertools.product(STUDIES, (2, 3), ("All", "Any"), ("0.004", "0.05")):
    serial(f"repeated-{times}-{rule}-{se}-{sp}-{p}", rule, times, [(se, sp)], p, "0.95", lambda v, t=times: ([v[0]] * t, [v[1]] * t))
for (se, sp), (se2, sp2), rule, p in itertools.product(STUDIES, (("95/100", "398/400"), ("0.95", "0.995")), ("All", "Any"), ("0.004", "0.05")):
    serial(f"in-a-row-{rule}-{se}-{sp}-{se2}-{sp2}-{p}", rule, 1, [(se, sp), (se2, sp2)], p, "0.95", lambda v: (list(v[0::2]), list(v[1::2])))
out("serial-testing", "id rule times screens prevalence confidence sensitivity specificity positive positive_lower positive_upper negative negative_lower negative_upper "
    "tolerance kind source", rows)
