using System.Collections.Immutable;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.LotTests;

/// <summary>The tables of lots within site-weeks and of sites within lot-weeks.</summary>
internal static class PlaceTestTables
{
    public static Table<PlaceTestRow> Table(string by, ImmutableArray<PlaceTestRow> rows)
    {
        var lot = by == "lot";
        var (strata, others) = lot ? ("site-weeks", "lots") : ("lot-weeks", "sites");
        return new Table<PlaceTestRow>(
            by + "-tests",
            lot ? "Lots within sites and weeks" : "Sites within lots and weeks",
            lot
                ? "Each named lot against the other lots of the same sites and weeks: refuted positives, unusable runs, cases found and failed positive control swabs (these within sites). What sites and weeks differ by cannot make a lot look bad. Runs without a lot are not compared."
                : "Each site against the other sites that used the same lots in the same weeks. What lots and weeks differ by cannot make a site look bad; lots that stand out by refuted positives are left out of that comparison. Runs without a lot are compared with one another.",
            [
                new(by, lot ? "Lot" : "Site", Unit.Text, lot ? "Name of the lot." : "Name of the site.", row => Cell.Text(row.Place)),
                new("measure", "Measure", Unit.Text, "What is compared: refuted positives, inconclusive and invalid runs" + (lot ? ", cases found, or positive control swabs that failed." : "."), row => Cell.Text(row.Measure)),
                new("direction", "Looked for", Unit.Text, "more: too many; fewer: too few.", row => Cell.Text(row.Direction)),
                new("strata", lot ? "Site-weeks" : "Lot-weeks", Unit.Count, $"{strata} that can tell it from other {others}: used beside another, with an event.", row => Cell.Count(row.Strata)),
                new("observed", "Observed", Unit.Count, $"Its events in these {strata}.", row => Cell.Count(row.Observed)),
                new("expected", "Expected", Unit.Ratio, $"Its events there if all {others} were alike; of refuted positives and cases, runs count as far as positives are followed up.", row => row.Strata > 0 ? Cell.Number(row.Expected) : Cell.Undefined(row.PUndefined ?? "")) { Method = MethodNames.WithinStrata },
                new("ratio", "Times the others", Unit.Ratio, $"Its rate as a multiple of the other {others}' in the same {strata}; of {(lot ? "unusable runs and failed controls" : "unusable runs")} its odds, which say somewhat more than the rate where events are not rare.", row => Cell.NumberOr(row.Ratio.Estimate, row.Ratio.EstimateUndefined ?? "")) { Method = MethodNames.RatioWithinStrata },
                new("lower", "Lower", Unit.Ratio, "Lower limit of the ratio, with the variance between strata in it.", row => Cell.NumberOr(row.Ratio.Lower, row.Ratio.EstimateUndefined ?? "")),
                new("upper", "Upper", Unit.Ratio, "Upper limit likewise; none where the others have no event.", row => Cell.NumberOr(row.Ratio.Upper, row.Ratio.EstimateUndefined ?? "")),
                new("method", "Method", Unit.Text, "Method of the limits.", row => row.Ratio.Method is { } method ? Cell.Text(method) : Cell.Empty),
                new("confidence", "Confidence", Unit.Proportion, "Confidence of all limits of the row.", row => row.Ratio.Confidence is { } confidence ? Cell.Number(confidence) : Cell.Empty),
                new("overdispersion", "Variance factor", Unit.Ratio, "How many times that of chance the variance is that these limits hold; at least 1.", row => Cell.Number(row.Overdispersion)) { Method = MethodNames.VarianceWithinStrata },
                new("p", "p", Unit.PValue, "Exact one-sided chance of at least as many events (where fewer are looked for: at most as many).", row => Cell.NumberOr(row.P, row.PUndefined ?? "")) { Method = MethodNames.WithinStrata },
                new("p_holm", "p, adjusted", Unit.PValue, $"The same adjusted for the number of {others} compared by this measure.", row => Cell.NumberOr(row.PHolm, row.PUndefined ?? "")) { Method = MethodNames.StepDown },
                new("material", "Material", Unit.Text, "yes where the adjusted p is below 0.01 and the lower limit of the ratio is at least 1.5.", row => row.Material ? Cell.Text("yes") : Cell.Empty),
                new("low_yield", "Low yield", Unit.Text, "yes where it may miss infected people: fewer cases than the others, or more failed positive controls.", row => row.LowYield ? Cell.Text("yes") : Cell.Empty),
                new("rate", "Rate, drawn together", Unit.Proportion, $"Its rate per run (of refuted positives: per valid test) at the program's mix of {(lot ? "sites" : "lots")}, drawn towards the others' as far as its counts are few.", row => Cell.NumberOr(row.Rate.Estimate, row.Rate.EstimateUndefined ?? "")) { Method = MethodNames.EmpiricalBayes },
                new("rate_lower", "Rate, lower limit", Unit.Proportion, "Lower end of the interval that holds that rate with the stated probability.", row => Cell.NumberOr(row.Rate.Lower, row.Rate.EstimateUndefined ?? "")),
                new("rate_upper", "Rate, upper limit", Unit.Proportion, "Upper end likewise.", row => Cell.NumberOr(row.Rate.Upper, row.Rate.EstimateUndefined ?? "")),
                new("rate_method", "Method of the rate", Unit.Text, "Method of the rate and its interval.", row => row.Rate.Method is { } method ? Cell.Text(method) : Cell.Empty),
                new("chance_above_twice", "Probability of more than twice", Unit.Proportion, "The probability that this rate is more than twice the program's.", row => Cell.NumberOr(row.ChanceAboveTwice, row.ChanceAboveTwiceUndefined ?? "")) { Method = MethodNames.EmpiricalBayes },
            ],
            rows);
    }
}
