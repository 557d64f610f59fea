using System.Collections.Immutable;
using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Methods for comparing lots, sites and devices.</summary>
internal static class ComparisonNotes
{
    public static ImmutableArray<MethodNote> All { get; } =
    [
        new(MethodNames.Hypergeometric, "Exact chance of so many events",
            "How likely one lot or site would have at least its events, if all events had fallen on the runs by lot. Small values call for a look; they are no proof of a fault.",
            ["P(K ≥ k) = Σ (j ≥ k) C(X, j) C(N − X, n − j) / C(N, n)", "X events of N runs in the pool, k of n in the lot or site"],
            "R. A. Fisher, 1935, Journal of the Royal Statistical Society 98:39–82 (the distribution)."),
        new(MethodNames.StepDown, "Adjusted for the number compared, stepping down",
            "Many lots are looked at, and the smallest of many chances is small by chance. Each is adjusted for their number. If the smallest adjusted one is below 0.01 that lot is flagged, leaves the pool with its runs, and the rest are judged afresh, so that one bad lot hides no other and makes none look good. Sites differ, and some people have the same result again and again: a flag needs the widened chance, times the number compared, below 0.01 too. It compares lots within their sites and divides the normal score by the square root of the design effect over people. In 2,000 drawn programs with such sites and people the first chance alone flagged a sound lot in about one of three, both together in fewer than one of a hundred.",
            ["adjusted p of rank i = max (j ≤ i) of min(1, (m − j + 1) p₍ⱼ₎); m compared, p₍ⱼ₎ in order", "widened p = 1 − Φ(Φ⁻¹(1 − p within sites) / √d), d ≥ 1 the larger of the lot's own and the common design effect"],
            "S. Holm, 1979, Scandinavian Journal of Statistics 6:65–70; within sites J. J. Gart, 1970, Biometrika 57:471–475; design effect J. N. K. Rao, A. J. Scott, 1992, Biometrics 48:577–585; the widening is ours."),
        new(MethodNames.WithinSites, "Exact chance of so many events, within sites",
            "How likely one would have at least its events if it were like the others. Lots and operators are compared with the others of the same site, so that what sites differ by makes none look bad; sites are compared with all others. Runs of one person, week or outbreak are alike, which makes small chances smaller than they are: they call for a look and prove nothing.",
            ["P(K ≥ k), K = Σ Kₛ, Kₛ hypergeometric: Xₛ events of Nₛ trials in site s, nₛ of them its own; expected Σ nₛ Xₛ / Nₛ", "sites with only one lot or operator, without events, or with nothing but events drop out"],
            "J. J. Gart, 1970, Biometrika 57:471–475; C. R. Mehta, N. R. Patel, R. Gray, 1985, Journal of the American Statistical Association 80:969–973 (both from memory)."),
        new(MethodNames.Holm, "Adjusted for the number compared",
            "The smallest of many chances is small by chance. Adjusted below 0.01, at most one family in a hundred would have any that stands out where none differs. The family is one measure in one breakdown of one table: all sites, all lots or all operators that could be compared.",
            ["adjusted p of rank i = max (j ≤ i) of min(1, (m − j + 1) p₍ⱼ₎); m compared, p₍ⱼ₎ in order"],
            "S. Holm, 1979, Scandinavian Journal of Statistics 6:65–70."),
        new(ContrastMethod.Newcombe.Name(), "Newcombe's difference of two shares",
            "Limits of a difference from the limits of each share: square-and-add. The limits that are widened use each share's widened limits.",
            ["d − √((p₁ − l₁)² + (u₂ − p₂)²) to d + √((u₁ − p₁)² + (p₂ − l₂)²), d = p₁ − p₂", "l, u: Wilson's limits of each"],
            "R. G. Newcombe, 1998, Statistics in Medicine 17:873–890, method 10; with other limits G. Y. Zou, A. Donner, 2008, Statistics in Medicine 27:1693–1702."),
        new(MethodNames.EarlierValue, "Figure as it was evaluated",
            "Of two evaluations that are compared, each figure as that evaluation has it. How it was made stands in the table of its analysis, in the report of its evaluation. Two evaluations of one program share runs: the difference beside it compares only what shares none, by Newcombe's limits.",
            ["added since: x = x₂ − x₁ of n = n₂ − n₁, against x₁ of n₁; whole values differ by n / n₂ of that", "widened limits name their own method"],
            "The counts that are compared are disjoint, so the limits for independent groups hold: R. G. Newcombe, 1998, Statistics in Medicine 17:873–890."),
        new(MethodNames.PairedSites, "Difference over sites that stand on both sides",
            "The same sites stand on both sides of the difference, so what a site always has more or less of cancels; only that sites change unlike one another widens the limits. At least 5 sites must have trials on both sides. Never inside of the limits as if all trials were independent.",
            ["d ± t √(k/(k − 1) · Σ Zᵢ²), d = p₂ − p₁", "Zᵢ = (x₂ᵢ − p₂ n₂ᵢ)/n₂ − (x₁ᵢ − p₁ n₁ᵢ)/n₁ of site i; k sites", "t: Student's quantile on k − 1 degrees of freedom below 30 sites, else the normal one"],
            "Linearisation: D. A. Binder, 1983, International Statistical Review 51:279–292 (from memory)."),
        new(MethodNames.ScaledEffect, "Newcombe's difference, widened by a design effect",
            "As if other people and other sites stood on each side: too wide where they are the same, as in two evaluations of one program. Such limits may show a difference; that they hold none says little. For what is not counted by site on both sides.",
            ["square-and-add of each side's limits widened by its design effect", "a part of n of the N trials of an evaluation with design effect d: 1 + (d − 1) n/N, of the evaluation with the larger d"],
            "R. G. Newcombe, 1998, Statistics in Medicine 17:873–890, with the limits of J. N. K. Rao, A. J. Scott, 1992, Biometrics 48:577–585; scaling the effect to a part is ours."),
        new(ContrastMethod.MiettinenNurminen.Name(), "Miettinen and Nurminen's difference",
            "All differences that the counts do not speak against, by the score test with the shares estimated under each difference.",
            ["(p₁ − p₂ − δ)² / V(δ) ≤ z², V(δ) = (q₁(1 − q₁)/n₁ + q₂(1 − q₂)/n₂) · N/(N − 1), q: likeliest shares with difference δ"],
            "O. Miettinen, M. Nurminen, 1985, Statistics in Medicine 4:213–226."),
        new(StratifiedDifference.MethodName, "Difference within site-weeks",
            "Devices are compared only where and when both were used, so that what sites and weeks differ by drops out. Site-weeks with many tests of both weigh most. The limits that are widened allow for people who are tested again and again.",
            ["d = Σ wₖ (x₁ₖ/n₁ₖ − x₂ₖ/n₂ₖ) / Σ wₖ, wₖ = n₁ₖ n₂ₖ / Nₖ", "variance (d Σ Pₖ + Σ Qₖ) / (Σ wₖ)²; limits d ± z times its root", "Pₖ = (n₁ₖ² x₂ₖ − n₂ₖ² x₁ₖ + n₁ₖ n₂ₖ (n₂ₖ − n₁ₖ)/2) / Nₖ², Qₖ = (x₁ₖ (n₂ₖ − x₂ₖ) + x₂ₖ (n₁ₖ − x₁ₖ)) / (2 Nₖ)", "x events of n trials of device 1 and 2 in site-week k; Nₖ = n₁ₖ + n₂ₖ"],
            "N. Mantel, W. Haenszel, 1959, Journal of the National Cancer Institute 22:719–748; as a risk difference S. Greenland, J. M. Robins, 1985, Biometrics 41:55–68; variance T. Sato, 1989, Biometrics 45:1323–1324."),
    ];
}
