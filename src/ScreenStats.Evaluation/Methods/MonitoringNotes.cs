using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Methods for watching rates over time and side by side.</summary>
internal static class MonitoringNotes
{
    public const string Exact = "binomial-limits";
    public const string ThreeSigma = "three-sigma-limits";
    public const string Widened = "widened-limits";
    public const string MovingAverage = "moving-average-limits";
    public const string Geometric = "geometric-limits";
    public const string Exponential = "exponential-limits";
    public const string Dispersion = "dispersion";
    public const string Runs = "runs-and-crossings";
    public const string RunLength = "average-run-length";

    public static ImmutableArray<MethodNote> All { get; } =
    [
        new(Exact, "Control chart with exact limits",
            "Limits within which a point of its size lies by chance, if the rate never changed: outside on either side it lies with a chance of at most 0.00135. Each point has limits of its own, wider where there were fewer runs. The centre comes from the points themselves, so this looks back; it does not say what the rate ought to be. Besides, three patterns of points inside the limits are looked for where points are in order of time.",
            ["p = Σ x / Σ n; a point is outside where P(X ≥ x) or P(X ≤ x) < 0.00135, X binomial with n and p",
             "patterns: two of three points in a row more than two standard errors from the centre, on one side; four of five more than one; eight on one side; distances as normal scores of the exact chances"],
            "W. A. Shewhart, 1931, Economic Control of Quality of Manufactured Product; exact limits: T. P. Ryan, 2011, Statistical Methods for Quality Improvement (from memory); patterns as in textbooks of quality control."),
        new(ThreeSigma, "Control chart with three-sigma limits",
            "As the chart with exact limits, but with the normal distribution in place of the binomial one. Where few events are expected at a point its upper limit is crossed far more often than it says, and the lower never.",
            ["p ± 3 √(p (1 − p) / n), within 0 and 1"], "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.2."),
        new(Widened, "Control chart with limits widened by the variation between points",
            "Where points vary all over by more than chance, exact limits would mark half of them and say nothing. The limits are then widened by how much points differ from one to the next, so that what lies outside stands out from that variation too. It is used only where the dispersion says so, points jump from one to the next, and not only a few of them lie far out.",
            ["p ± 3 σ √(p (1 − p) / n), σ = mean |zᵢ − zᵢ₋₁| / 1.128, z = (x/n − p) / √(p (1 − p) / n)"], "D. B. Laney, 2002, Quality Engineering 14:531–537."),
        new(Dispersion, "Dispersion of the points",
            "The chance that points of these sizes would vary as much or more if all had one rate, given the number of events.",
            ["X² = Σ (x − n p)² / (n p (1 − p)), by a gamma distribution with its exact mean and variance"], "R. B. Dawson, 1954, Biometrika 41:280 (formula from memory)."),
        new(MovingAverage, "Exponentially weighted moving average",
            "An average in which the newest point weighs a fifth and all before it the rest: a small lasting shift shows after some points, though no single point is outside. Where the limits of the shares are widened, those of the average are, by the same factor.",
            ["z = 0.2 x/n + 0.8 z of the point before, from z = p; limits p ± 2.962 √V, V = 0.8² V of the point before + 0.2² p (1 − p) / n"], "J. M. Lucas, M. S. Saccucci, 1990, Technometrics 32:1–12."),
        new(Geometric, "Control chart of the tests between rare events",
            "Where refuted positives are rare, most periods have none and their shares say little. Held against limits are the valid tests from one to the next: too few in between mean that they have become more frequent. Those of one day are spread evenly over its tests, since nothing tells after how many tests each came. What lies after the last one is not a point.",
            ["outside where P(G ≤ g) or P(G ≥ g) < 0.00135, P(G ≤ g) = 1 − (1 − p)^(g + 1), 1/p = 1 + mean"], "J. C. Benneyan, 2001, Health Care Management Science 4:305–318."),
        new(Exponential, "Control chart of the time between rare events",
            "As the chart of the tests between, with days: it also moves where more or fewer people are tested. Those of one day are spread evenly over the day.",
            ["limits −m ln(1 − 0.00135) and −m ln 0.00135, centre m ln 2; m: mean time"], "L. S. Nelson, 1994, Journal of Quality Technology 26:239–240 (from memory), with the exponential distribution itself."),
        new(Runs, "Runs and crossings",
            "Whether points shift or drift, by their order alone: a long run on one side of the median, or few crossings of it. The chance of such a signal where nothing is wrong is exact for points that lie on either side by the toss of a coin.",
            ["signal: longest run above log₂ n + 3, rounded, or crossings below the 0.05 quantile of a binomial distribution with n − 1 and ½; n: points off the median"], "J. Anhøj, A. V. Olesen, 2014, PLoS ONE 9(11):e113825 (limits from memory)."),
        new(RunLength, "Points between false alarms",
            "How many points pass, on average, from one false alarm to the next where nothing is wrong: small numbers mean that many alarms are false. By exact binomial chances for points of the median size; for widened limits and stretches of days by the normal distribution; for stretches of tests at least as long as that; for the moving average the length its limits are made for.",
            ["mean time to absorption of the Markov chain of what the rules remember of past points"], "C. W. Champ, W. H. Woodall, 1987, Technometrics 29:393–399."),
    ];
}
