using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Methods for lots within site-weeks, bursts, and what the flag rule sees.</summary>
internal static class StrataNotes
{
    public static ImmutableArray<MethodNote> All { get; } =
    [
        new(MethodNames.WithinStrata, "Exact test within strata",
            "A lot is compared only with lots used at the same site in the same week, a site only with sites that used the same lot in the same week, so what sites, weeks and lots differ by cannot be laid at the wrong door. Strata with one lot, or without an event, say nothing. Each measure (refuted, invalid, cases, failed controls) is one family: adjusted for the number compared, stepping down, the probability that any lot or site of it is found wrongly is at most 0.01 where runs are independent.",
            ["number of the lot = Σ over strata of independent numbers, given each stratum's events: hypergeometric (n of N runs, X events), or for refuted positives and cases binomial with the lot's share w of the weights; distribution by convolution; p = P(at least as many), for cases P(at most as many)",
             "weights: runs times follow-through. Of a site (conclusive + 10 f)/(positives + 10), f the program's; of a lot (conclusive + 10)/(those expected by its sites + 10); positives that are pending left out",
             "failed positive control swabs: strata are sites"],
            "J. J. Gart, 1970, Biometrika 57:471–475; C. R. Mehta, N. R. Patel, R. Gray, 1985, Journal of the American Statistical Association 80:969–973; the weights are our own."),
        new(MethodNames.RatioWithinStrata, "Ratio to the others within strata",
            "How many times the others' rate a lot's rate is, taken as the same in every stratum, with exact limits. They hold the variance between strata: its factor f makes them as far as a normal quantile times √f. An excess is material where the lower limit is at least 1.5, so that a trivial one of a large lot is none.",
            ["r with Σ E(number at r) = number seen; limits: r at which P(number as large, or small) = Φ(−z √f)", "odds ratio with whole runs, ratio of rates with weights"],
            "J. J. Gart, 1970, Biometrika 57:471–475 (f = 1); the widening is our own."),
        new(MethodNames.VarianceWithinStrata, "Variance between strata",
            "How many times more the counts of lots in single site-weeks vary than chance makes them, without the lots that were found; or how many times more the counts of people do, who are tested again and again with one lot. The larger is used, and at least 1.",
            ["Σ (x − e)² / Σ v over lots and strata, e and v: expectation and variance of x given the stratum's events", "people: Σ (xᵢ − nᵢ p)² / Σ n p (1 − p) over the people of each lot, added up over lots"],
            "Pearson's statistic as a ratio of sums; J. N. K. Rao, A. J. Scott, 1992, Biometrics 48:577–585."),
        new(MethodNames.EmpiricalBayes, "Rates drawn together",
            "What the counts of a lot tell of its rate, given how much the lots of this program differ: a rate from few counts is drawn towards the others', one from many is left. Sites are allowed for (of sites: lots) by counting the events that their rates expect for trials. Where lots differ no more than by chance there is nothing to draw, and no figure.",
            ["Beta(α + x, β + n − x); x events, n = e/p: e the events expected at the rates of the sites where the lot was used, (events + 5)/(runs + 5/p) there, p over all; both without lots that were found", "α, β: most likely beta-binomial distribution over all lots; twice: 2 Σ x/Σ n"],
            "D. A. Griffiths, 1973, Biometrics 29:637–648; B. Efron, C. Morris, 1975, Journal of the American Statistical Association 70:311–319."),
        new(MethodNames.BurstScan, "Scan for bursts",
            "Looks at every stretch of at most 28 days of one lot at one site, of one lot, of one site and of the whole program for the one that a rate of its own explains best. Each site has its own rate, so a site with many events on every day is no burst.",
            ["ln LR = c ln(c/e) + (C − c) ln((C − c)/(C − e)) for c > e, c of C events seen and e expected in the stretch (Bernoulli model, rare events)", "rate of a site: (events + 5)/(runs + 5/p), p the program's rate"],
            "M. Kulldorff, 1997, Communications in Statistics: Theory and Methods 26:1481–1496; the site rates are our own."),
        new(MethodNames.BurstSimulation, "Chance under no burst",
            "All events are thrown on all runs anew, each site at its own rate, and everything is searched again: the share of these programs, the real one among them, whose strongest burst is at least as strong. It allows for all stretches that were looked at, and not for people who are positive together.",
            ["(1 + simulated ones at least as strong)/(1 + simulated); generator SplitMix64, one stream for each simulated program", "99 to 999 programs, fewer the more events there are; 39 where more than a fifth of the first 39 are as strong; number and seed stand in the table"],
            "M. Dwass, 1957, Annals of Mathematical Statistics 28:181–187."),
        new(MethodNames.FlagCurve, "What the flag rule would see",
            "The chance that the rule in force flags a lot whose rate is a given multiple of the others': exact test against all, adjusted for the number compared, flagged below 0.01. Summed over everything that the lot and the others may show. The second, widened chance that a flag needs too is left out: where sites or people differ it makes the true chance lower. Where a rate is asked for, the one that is flagged in four programs of five.",
            ["Σ over y of P(y events of the others) · P(the lot has at least k(y)), k(y): fewest events that are flagged beside y", "both binomial; runs independent, all others alike, a flag in a later round not counted"],
            "Operating characteristic of the exact test; D. C. Montgomery, Introduction to Statistical Quality Control, chapters on acceptance sampling (from memory)."),
    ];
}
