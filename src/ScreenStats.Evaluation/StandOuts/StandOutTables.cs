using System.Collections.Immutable;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.StandOuts;

/// <summary>The ranked list as a table.</summary>
internal static class StandOutTables
{
    public static Table<StandOutRow> StandOuts(ImmutableArray<StandOutRow> rows) => new(
        "stand-outs",
        "What stands out, and what does not",
        "Every named lot and every site by every measure: those that stand out first, ranked, then the rest. Verdicts join the flags (against all lots or sites) and the tests within the same sites, lots and weeks.",
        [
            new("rank", "Rank", Unit.Count, "Its place among those that stand out; empty where it does not.", row => row.Rank is { } rank ? Cell.Count(rank) : Cell.Empty),
            new("by", "By", Unit.Text, "lot or site.", row => Cell.Text(row.By)),
            new("level", "Level", Unit.Text, "Name of the lot or site.", row => Cell.Text(row.Level)),
            new("measure", "Measure", Unit.Text, "refuted positives, invalid (with inconclusive) runs, cases found, or failed positive control swabs.", row => Cell.Text(row.Measure)),
            new("verdict", "Verdict", Unit.Text,
                "may-miss-infections; stands-out: material within its sites and weeks; stands-out-over-all-only: flagged among all, not material or not comparable there; "
                + "not-material: more than chance, perhaps little; does-not-stand-out; not-compared.", row => Cell.Text(StandOutNames.Of(row.Verdict))),
            new("flagged", "Flagged", Unit.Text, "yes where the lot or site is flagged among all of them.", row => row.Flagged ? Cell.Text("yes") : Cell.Empty),
            new("material", "Material", Unit.Text, "yes where the excess within its strata is material.", row => row.Material ? Cell.Text("yes") : Cell.Empty),
            new("strata", "Strata", Unit.Count, "Site-weeks (of sites: lot-weeks) that can tell it from the others.", row => Cell.Count(row.Strata)),
            new("observed", "Observed", Unit.Count, "Its events in these strata.", row => Cell.Count(row.Observed)),
            new("expected", "Expected", Unit.Ratio, "Its events there if all were alike.", row => Cell.NumberOr(row.Expected, row.ExpectedUndefined ?? "")) { Method = MethodNames.WithinStrata },
            new("ratio", "Times the others", Unit.Ratio, "Its rate as a multiple of the others' in the same strata; of unusable runs and failed controls its odds, which say somewhat more than the rate where events are not rare.", row => Cell.NumberOr(row.Ratio.Estimate, row.Ratio.EstimateUndefined ?? "")) { Method = MethodNames.RatioWithinStrata },
            new("lower", "Lower", Unit.Ratio, "Lower limit of the ratio.", row => Cell.NumberOr(row.Ratio.Lower, row.Ratio.EstimateUndefined ?? "")),
            new("upper", "Upper", Unit.Ratio, "Upper limit of the ratio; none where the others have no event.", row => Cell.NumberOr(row.Ratio.Upper, row.Ratio.EstimateUndefined ?? "")),
            new("method", "Method", Unit.Text, "Method of the limits.", row => row.Ratio.Method is { } method ? Cell.Text(method) : Cell.Empty),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of the limits.", row => row.Ratio.Confidence is { } confidence ? Cell.Number(confidence) : Cell.Empty),
            new("p_holm", "p, adjusted", Unit.PValue, "Exact chance within the strata, adjusted for the number compared by this measure.", row => Cell.NumberOr(row.PHolm, row.PHolmUndefined ?? "")) { Method = MethodNames.StepDown },
        ],
        rows);
}
