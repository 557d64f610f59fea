using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Methods of the alarms that may be looked at every day.</summary>
internal static class AlarmNotes
{
    public static ImmutableArray<MethodNote> All { get; } =
    [
        new(MethodNames.LotEvidence, "Evidence against a lot, valid at any look",
            "Each refuted positive, when it is first reported, could have fallen on any lot in use at its site on its day. If it falls on one lot more often than that lot's share of the tests, evidence grows; else it sinks. It is averaged over multiples of the odds and over the weeks in which a fault may have begun. However often one looks, a faultless program ever raises an alarm on any lot with at most the chance stated.",
            ["p = w / Σ w over the lots of the site and day; w: valid tests not yet drawn × (c + 10 f)/(s + 10), c conclusive of s settled positives of the lot by the day before, f the program's share (C + 1)/(S + 2); one lot alone drops out",
             "× q/p on the lot, × (1 − q)/(1 − p) elsewhere, q = θp/(1 − p + θp), θ = 2, 4, …, 64 (for too few confirmed: 1/2, …, 1/64); started afresh in week j of the lot's use with weight 1/(j (j + 1))",
             "alarm of the k-th lot by first use at (k + 9)(k + 10)/(10 α): the shares 10/((k + 9)(k + 10)) add up to 1. K/α with the number K of lots so far would hold α (1 + 1/2 + … + 1/K) only"],
            "J. Ville, 1939, Étude critique de la notion de collectif; R. Wang, A. Ramdas, 2022, Journal of the Royal Statistical Society B 84:822–852; W. Hoeffding, 1963, Journal of the American Statistical Association 58:13–30 (several of one stratum at once)."),
        new(MethodNames.InvalidEvidence, "Proof that the invalid-run rate is above the limit",
            "The same evidence run by run, with the limit as the chance of an unusable run: a site at or below the limit ever raises an alarm with at most the chance stated. One invalid run of ten is no proof. It takes runs as independent: a few people whose runs fail again and again make it come sooner.",
            ["× θ^x / (1 + (θ − 1) L)^n for x unusable of n runs of a day, L the limit, θ = 1.25, 1.5, 2, 4, 8, 16; starting points and thresholds as for lots; sites and lots each hold α",
             "stands while the last 28 days are above the limit; lots without the runs of sites that have such an alarm"],
            "J. Ville, 1939, Étude critique de la notion de collectif."),
        new(MethodNames.InvalidRise, "Cumulative sum of unusable runs",
            "Each unusable run adds to a sum, each usable one takes a little away; the sum is held at 0 or above. It signals a rise to twice the rate that is ordinary at the site: its own in the first days, no less than the program's and no more than twice it, so that sites may differ and a site poor from the start is still found.",
            ["S = max(0, S + x − γ n), γ = −ln((1 − p₁)/(1 − p₀)) / ln(p₁(1 − p₀)/(p₀(1 − p₁))) on a lattice, p₁ = 2 p₀; p₀ = (x + 5)/(n + 5/p) of the site's first days, held between p and 2 p; p = (x₀ + ½)/(n₀ + 1) of the program's, at least 1 in 2,000",
             "limit by the exact average run length (Markov chain): one false alarm of the k-th place in 2 D (k + 9)(k + 10)/10 days, so that all together make one in D days; sum held at the limit, alarm ends at 0"],
            "M. R. Reynolds, Z. G. Stoumbos, 1999, Journal of Quality Technology 31:87–108."),
        new(MethodNames.RefutedRise, "Faster than before at the same site",
            "Compares the refuted positives of a site with its own past, whatever its rate was. It finds a bad lot where no other lot is in use beside it, and cannot tell lot from site. Lots with an alarm of their own are left out.",
            ["Σⱼ 1/(j (j + 1)) mean over θ of θ^(n − j) (T/(a + θ (T − a)))^n + 1/n, θ = 4, 8, 16, 32, 64", "n refuted positives, a: valid tests before the day of the j-th, T: valid tests up to now; thresholds as for lots, over sites"],
            "Likelihood ratio of a change of rate with the rate as unknown unit of time; J. Ville, 1939, Étude critique de la notion de collectif."),
    ];
}
