using System.Collections.Immutable;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Methods for one proportion, its clusters and plain figures.</summary>
internal static class ProportionNotes
{
    public static ImmutableArray<MethodNote> All { get; } =
    [
        new(MethodNames.Share, "Share", "One count divided by another, without limits.", ["x / n"], "Definition."),
        new(MethodNames.Rate, "Rate", "A count for each thousand units of observation.", ["1,000 x / n, x cases, n person-weeks"], "Definition."),
        new(IntervalMethod.Wilson.Name(), "Wilson's interval",
            "All shares that the count seen does not speak against, by the normal approximation at each of those shares. It stays within 0 and 1, is never of width 0, and covers near the stated confidence also for small shares.",
            ["(p + z²/(2n) ± z √(p (1 − p)/n + z²/(4n²))) / (1 + z²/n)", "p = x/n; z: normal quantile, 1.96 at 95 % confidence"],
            "E. B. Wilson, 1927, Journal of the American Statistical Association 22:209–212."),
        new(WidenedInterval.MethodName, "Wilson's interval, widened for clusters",
            "Runs of the same person, site or week are alike, so they tell less than as many independent ones. The interval is that of so many independent runs as would tell as much.",
            ["Wilson's formula with x/d and n/d in place of x and n; d: the design effect", "fewer than 30 clusters: Student's quantile on clusters − 1 degrees of freedom in place of z",
             "fewer than 5 sites, or site-weeks: these do not widen the limits, which then speak of these sites and weeks; how far others differ from them so few cannot show"],
            "J. N. K. Rao, A. J. Scott, 1992, Biometrics 48:577–585; quantile after E. L. Korn, B. I. Graubard, 1998, Survey Methodology 24:193–201; few clusters: A. C. Cameron, D. L. Miller, 2015, Journal of Human Resources 50:317–372 (from memory), the number 5 by a simulation of our own."),
        new(MethodNames.DesignEffect, "Design effect",
            "How many times the variance of a share is larger than that of as many independent runs: 1 where runs of a cluster are no more alike than others. The largest over persons, and over sites and site-weeks where there are at least 5 of them, is used, and at least 1.",
            ["d = n v / (p (1 − p)), v = m / ((m − 1) n²) · Σ (xᵢ − nᵢ p)²", "m clusters with xᵢ events of nᵢ runs; p = x/n"],
            "J. N. K. Rao, A. J. Scott, 1992, Biometrics 48:577–585."),
        new(IntervalMethod.ClopperPearson.Name(), "Exact interval",
            "All shares under which the count seen would not be among the rarest; it covers at least as often as stated, mostly more often.",
            ["Σ (k ≥ x) C(n, k) l^k (1 − l)^(n − k) = α/2 = Σ (k ≤ x) C(n, k) u^k (1 − u)^(n − k)", "l, u: lower and upper limit; α = 1 − confidence"],
            "C. J. Clopper, E. S. Pearson, 1934, Biometrika 26:404–413."),
        new(IntervalMethod.Jeffreys.Name(), "Jeffreys' interval", "The middle of a beta distribution that stands for what the counts tell of the share.",
            ["quantiles α/2 and 1 − α/2 of Beta(x + ½, n − x + ½); 0 at x = 0, 1 at x = n"],
            "L. D. Brown, T. T. Cai, A. DasGupta, 2001, Statistical Science 16:101–133."),
        new(MethodNames.NearestRank, "Percentile by nearest rank",
            "The smallest of the values seen with at least that share of all values at or below it; always a value that was seen. Values that are not known yet are left out.",
            ["the value at rank ⌈f N⌉ of N values in order; f: 0.5 for the median, 0.9 for the 90th percentile"], "Usual definition."),
        new(MethodNames.Grid, "Chosen", "Not computed: values chosen to draw a curve or to lay out a table over.", ["evenly spaced on the logarithm"], "Definition."),
    ];
}
