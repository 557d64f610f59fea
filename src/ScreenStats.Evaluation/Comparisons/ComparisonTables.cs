using System.Collections.Immutable;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Comparisons;

/// <summary>The tables of levels side by side.</summary>
internal static class ComparisonTables
{
    private const string Nothing = "nothing was counted";

    public static Table<ComparisonRow> Levels(ImmutableArray<ComparisonRow> rows) => new(
        "comparison",
        "Side by side",
        "Each site (or what else is compared) by positivity, unusable runs and refuted positives: as counted; with what would be expected of it had it the program's rate in each of its "
        + "periods, devices and specimens; at the program's mix of these; and where it lies in the funnel. Read the adjusted rate first: the rate as counted blames a site for having "
        + "tested when many were infected.",
        [
            .. First<ComparisonRow>(row => row.Measure, row => row.Basis, row => row.By),
            new("level", "Level", Unit.Text, "Name of the site, or of what else is compared.", row => Cell.Text(row.Level)),
            new("trials", "Of", Unit.Count, "Valid tests, runs, or positives that were confirmed or refuted.", row => Cell.Count(row.Share.Trials)),
            new("events", "Number", Unit.Count, "Positives, inconclusive and invalid runs, or refuted positives.", row => Cell.Count(row.Share.Events)),
            new("estimate", "As counted", Unit.Proportion, "Events divided by trials.", row => Number(row.Share.Estimate, row.Share.EstimateUndefined)),
            new("lower", "Lower", Unit.Proportion, "Lower limit as if all trials were independent.", row => Number(row.Share.Lower, row.Share.EstimateUndefined)),
            new("upper", "Upper", Unit.Proportion, "Upper limit as if all trials were independent.", row => Number(row.Share.Upper, row.Share.EstimateUndefined)),
            new("widened_lower", "Lower, widened", Unit.Proportion, "Lower limit widened because trials come in clusters.", row => Number(row.Share.WidenedLower, row.Share.EstimateUndefined)),
            new("widened_upper", "Upper, widened", Unit.Proportion, "Upper limit widened because trials come in clusters.", row => Number(row.Share.WidenedUpper, row.Share.EstimateUndefined)),
            new("expected", "Expected", Unit.Ratio, "Events it would have with the program's rate in each of its strata.", row => Number(row.Expected, row.Ratio.EstimateUndefined)) { Method = MethodNames.ExpectedAtProgramRates },
            new("ratio", "Times expected", Unit.Ratio, "Events observed over those expected.", row => Number(row.Ratio.Estimate, row.Ratio.EstimateUndefined)) { Method = MethodNames.ExpectedAtProgramRates },
            new("ratio_lower", "Lower", Unit.Ratio, "Lower limit of the ratio, widened for clusters.", row => Number(row.Ratio.Lower, row.Ratio.EstimateUndefined)) { Method = MethodNames.ExpectedAtProgramRates },
            new("ratio_upper", "Upper", Unit.Ratio, "Upper limit of the ratio, widened for clusters.", row => Number(row.Ratio.Upper, row.Ratio.EstimateUndefined)) { Method = MethodNames.ExpectedAtProgramRates },
            new("standardised", "Standardised", Unit.Proportion, "Its own rates in the strata, weighted as the program's strata; only where it has trials in all of them.", row => Number(row.Standardised.Estimate, row.Standardised.EstimateUndefined)) { Method = MethodNames.DirectStandardisation },
            new("standardised_lower", "Lower", Unit.Proportion, "Lower limit, widened for clusters.", row => Number(row.Standardised.Lower, row.Standardised.EstimateUndefined)) { Method = MethodNames.DirectStandardisation },
            new("standardised_upper", "Upper", Unit.Proportion, "Upper limit, widened for clusters.", row => Number(row.Standardised.Upper, row.Standardised.EstimateUndefined)) { Method = MethodNames.DirectStandardisation },
            new("adjusted", "Adjusted", Unit.Proportion, "Its rate at the program's mix by the model, drawn towards the others' as far as its own counts are few.", row => Number(row.Adjusted.Estimate, row.Adjusted.EstimateUndefined)) { Method = MethodNames.AdjustedRate },
            new("adjusted_lower", "Lower", Unit.Proportion, "Lower limit of the adjusted rate, clusters allowed for.", row => Number(row.Adjusted.Lower, row.Adjusted.EstimateUndefined)) { Method = MethodNames.AdjustedRate },
            new("adjusted_upper", "Upper", Unit.Proportion, "Upper limit of the adjusted rate, clusters allowed for.", row => Number(row.Adjusted.Upper, row.Adjusted.EstimateUndefined)) { Method = MethodNames.AdjustedRate },
            new("rank", "Rank", Unit.Count, "Its place by the adjusted rate, 1 the highest.", row => Count(row.Rank?.Place, row.Adjusted.EstimateUndefined)) { Method = MethodNames.Ranks },
            new("rank_lower", "Lower", Unit.Count, "The smallest rank that it may well have.", row => Count(row.Rank?.Lower, row.Adjusted.EstimateUndefined)) { Method = MethodNames.Ranks },
            new("rank_upper", "Upper", Unit.Count, "The largest rank that it may well have.", row => Count(row.Rank?.Upper, row.Adjusted.EstimateUndefined)) { Method = MethodNames.Ranks },
            new("probability_highest", "Probability highest", Unit.Proportion, "The probability that its adjusted rate is the highest of all.", row => Number(row.Rank?.ProbabilityHighest, row.Adjusted.EstimateUndefined)) { Method = MethodNames.Ranks },
            new("standing", "Standing", Unit.Text, "above, within or below the limits of the funnel once adjusted.", row => Word(ComparisonNames.Of(row.Place.Standing))),
            new("method", "Method", Unit.Text, "Method of the limits as if all trials were independent.", row => Cell.Text(row.Share.Method)),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of all limits of the row.", row => Cell.Number(row.Share.Confidence)),
            new("standing_limits", "Outside of", Unit.Text, "The outermost limits that it lies outside of: 95 or 99.8 per cent; empty within.", row => row.Place.Limits is { } limits ? Cell.Text(Figure.Percent(limits)) : Cell.Empty),
            new("raw_standing", "Standing as counted", Unit.Text, "above, within or below in a funnel of the rates as counted: unfair where levels tested at different times.", row => Word(ComparisonNames.Of(row.Place.RawStanding))),
            new("funnel_trials", "Size in the funnel", Unit.Count, "As many trials as would have the events expected of it at the program's rate.", row => row.Place.Rate is null ? Cell.Empty : Cell.Count(row.Place.Trials)),
            new("funnel_rate", "Rate in the funnel", Unit.Proportion, "The program's rate times observed over expected.", row => Number(row.Place.Rate, row.Ratio.EstimateUndefined)) { Method = MethodNames.ExpectedAtProgramRates },
            new("p_value", "p", Unit.PValue, "Probability of as large a distance from the program's rate if it were like the others, by the limits that are drawn.", row => Number(row.Place.P, row.Ratio.EstimateUndefined)) { Method = MethodNames.FunnelChance },
            new("p_value_holm", "p adjusted", Unit.PValue, "The same adjusted for the number of levels (Holm).", row => Number(row.Place.PHolm, row.Ratio.EstimateUndefined)) { Method = MethodNames.Holm },
            new("stands_out", "Stands out", Unit.Text, "yes where the adjusted probability is below what the confidence leaves.", row => row.Place.StandsOut ? Cell.Text("yes") : Cell.Empty),
            new("design_effect", "Design effect", Unit.Ratio, "How many times the clusters raise the variance of the rate as counted; at least 1.", row => Cell.Number(row.Share.DesignEffect)) { Method = MethodNames.DesignEffect },
            new("widened_method", "Method, widened", Unit.Text, "Method of the widened limits.", row => Cell.Text(WidenedInterval.MethodName)),
            new("adjusted_method", "Method, adjusted", Unit.Text, "The model of the adjusted rate.", row => row.Adjusted.Method is { } method ? Cell.Text(method) : Cell.Empty),
            new("remark", "Remark", Unit.Text, "few counts: fewer than 5 events or other trials.", row => row.Share.FewCounts ? Cell.Text("few counts") : Cell.Empty),
        ],
        rows);

    public static Table<ComparisonTestRow> Tests(ImmutableArray<ComparisonTestRow> rows) => new(
        "comparison-tests",
        "Whether they differ as a whole",
        "Tests of whether the levels have one rate, and figures of how much they differ. The one to read is association-within-strata: after adjustment, with people and weeks that are alike allowed for.",
        [
            .. First<ComparisonTestRow>(row => row.Measure, row => row.Basis, row => row.By),
            new("test", "Test", Unit.Text, "Which test or figure.", row => Cell.Text(row.Test)),
            new("statistic", "Statistic", Unit.Ratio, "The statistic of a test, or the figure; rates as fractions, variances on the logit scale.", row => Figures(row, row.Statistic)),
            new("degrees_of_freedom", "Degrees of freedom", Unit.Count, "Of a chi-square.", row => row.DegreesOfFreedom is { } degrees ? Cell.Count(degrees) : Cell.Empty),
            new("p_value", "p", Unit.PValue, "Probability of as large a statistic if no level differs; empty where the row is no test.", row => Figures(row, row.P)),
            new("method", "Method", Unit.Text, "The method.", row => Cell.Text(row.Method)),
            new("lower", "Lower", Unit.Ratio, "Lower limit of the figure, where it has limits.", row => Figures(row, row.Lower)),
            new("upper", "Upper", Unit.Ratio, "Upper limit likewise.", row => Figures(row, row.Upper)),
            new("remark", "Remark", Unit.Text, "What must be known of it.", row => Word(row.Remark)),
        ],
        rows);

    public static Table<ComparisonPairRow> Pairs(ImmutableArray<ComparisonPairRow> rows) => new(
        "comparison-pairs",
        "Every two of them",
        "First minus second: the difference as counted, and the ratio of odds within the strata that are adjusted for. Simultaneous limits hold for all pairs, and all other contrasts, at once, so that they find "
        + "less than adjusted probabilities: all together may differ and no two be told apart. Up to 12 levels.",
        [
            .. First<ComparisonPairRow>(row => row.Measure, row => row.Basis, row => row.By),
            new("level", "First", Unit.Text, "The first level.", row => Cell.Text(row.Level)),
            new("other", "Second", Unit.Text, "The second level.", row => Cell.Text(row.Other)),
            new("difference", "Difference", Unit.Difference, "First minus second, as counted.", row => Number(row.Difference.Estimate, row.Difference.EstimateUndefined)) { Method = Pair },
            new("lower", "Lower", Unit.Difference, "Lower limit of this pair alone, widened for clusters.", row => Number(row.Difference.Lower, row.Difference.EstimateUndefined)) { Method = Pair },
            new("upper", "Upper", Unit.Difference, "Upper limit likewise.", row => Number(row.Difference.Upper, row.Difference.EstimateUndefined)) { Method = Pair },
            new("p_value", "p", Unit.PValue, "Fisher's exact two-sided probability, as if all trials were independent.", row => Number(row.P, row.Difference.EstimateUndefined)) { Method = MethodNames.FisherPairs },
            new("p_value_holm", "p adjusted", Unit.PValue, "The same adjusted for the number of pairs (Holm).", row => Number(row.PHolm, row.Difference.EstimateUndefined)) { Method = MethodNames.Holm },
            new("simultaneous_lower", "Lower, all pairs", Unit.Difference, "Lower limit that holds for all pairs at once, widened for clusters.", row => Number(row.SimultaneousLower, row.Difference.EstimateUndefined)) { Method = MethodNames.Marascuilo },
            new("simultaneous_upper", "Upper, all pairs", Unit.Difference, "Upper limit likewise.", row => Number(row.SimultaneousUpper, row.Difference.EstimateUndefined)) { Method = MethodNames.Marascuilo },
            new("odds_ratio", "Odds ratio", Unit.Ratio, "Odds of the first over those of the second within the strata that are adjusted for.", row => Number(row.Odds.Estimate, row.Odds.EstimateUndefined)) { Method = MethodNames.OddsWithinStrata },
            new("odds_ratio_lower", "Lower", Unit.Ratio, "Lower limit that holds for all pairs at once, widened for clusters.", row => Number(row.Odds.Lower, row.Odds.EstimateUndefined ?? NoLimit)) { Method = MethodNames.OddsWithinStrata },
            new("odds_ratio_upper", "Upper", Unit.Ratio, "Upper limit likewise.", row => Number(row.Odds.Upper, row.Odds.EstimateUndefined ?? NoLimit)) { Method = MethodNames.OddsWithinStrata },
            new("odds_p_value", "p within strata", Unit.PValue, "Probability of as much within the strata if the two do not differ, widened for clusters.", row => Number(row.OddsP, row.Odds.EstimateUndefined)) { Method = MethodNames.OddsWithinStrata },
            new("odds_p_value_holm", "p within strata, adjusted", Unit.PValue, "The same adjusted for the number of pairs (Holm).", row => Number(row.OddsPHolm, row.Odds.EstimateUndefined)) { Method = MethodNames.Holm },
            new("told_apart", "Told apart", Unit.Text, "yes where the simultaneous limits within the strata leave out that the two are alike.", row => row.ToldApart ? Cell.Text("yes") : Cell.Empty),
            new("method", "Method", Unit.Text, "Method of the difference and its limits.", row => Cell.Text(Pair)),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of all limits of the row.", row => row.Difference.Confidence is { } confidence ? Cell.Number(confidence) : Cell.Empty),
        ],
        rows);

    public static Table<ComparisonModelRow> Model(ImmutableArray<ComparisonModelRow> rows) => new(
        "comparison-model",
        "What the model says of periods, devices and specimens",
        "How many times the odds of an event are those of the level of reference, everything else alike. What is compared has terms of its own only where its levels are few.",
        [
            .. First<ComparisonModelRow>(row => row.Measure, row => row.Basis, row => row.By),
            new("term", "Term", Unit.Text, "What the term is of.", row => Cell.Text(row.Term)),
            new("level", "Level", Unit.Text, "Its level.", row => Cell.Text(row.Level)),
            new("odds_ratio", "Odds ratio", Unit.Ratio, "Odds of an event over those of the level of reference.", row => Number(row.Odds.Estimate, row.Odds.EstimateUndefined)) { Method = MethodNames.LogisticTerms },
            new("lower", "Lower", Unit.Ratio, "Lower limit, clusters allowed for.", row => Number(row.Odds.Lower, row.Odds.EstimateUndefined ?? NoLimit)) { Method = MethodNames.LogisticTerms },
            new("upper", "Upper", Unit.Ratio, "Upper limit likewise.", row => Number(row.Odds.Upper, row.Odds.EstimateUndefined ?? NoLimit)) { Method = MethodNames.LogisticTerms },
            new("p_value", "p", Unit.PValue, "Probability of as much if the term does nothing.", row => Number(row.P, row.Odds.EstimateUndefined ?? NoLimit)) { Method = MethodNames.LogisticTerms },
            new("method", "Method", Unit.Text, "Method of the row.", row => row.Odds.Method is { } method ? Cell.Text(method) : Cell.Empty),
            new("remark", "Remark", Unit.Text, "What must be known of it.", row => Word(row.Remark)),
        ],
        rows);

    public static Table<ComparisonFunnelRow> Funnel(ImmutableArray<ComparisonFunnelRow> rows) => new(
        "comparison-funnel",
        "Limits of the funnel",
        "Between which rates a level of a size would lie if it were like the others, 95 and 99.8 times in a hundred. Where levels differ more than chance makes them, the limits allow for what they usually differ by.",
        [
            .. First<ComparisonFunnelRow>(row => row.Measure, row => row.Basis, row => row.By),
            new("trials", "Size", Unit.Count, "Trials of the level.", row => Cell.Count(row.Trials)),
            new("centre", "Program", Unit.Proportion, "The program's rate.", row => Cell.Number(row.Centre)) { Method = MethodNames.Share },
            new("lower_95", "Lower, 95 %", Unit.Proportion, "Lower inner limit.", row => Cell.Number(row.Lower95)),
            new("upper_95", "Upper, 95 %", Unit.Proportion, "Upper inner limit.", row => Cell.Number(row.Upper95)),
            new("lower_998", "Lower, 99.8 %", Unit.Proportion, "Lower outer limit.", row => Cell.Number(row.Lower998)),
            new("upper_998", "Upper, 99.8 %", Unit.Proportion, "Upper outer limit.", row => Cell.Number(row.Upper998)),
            new("model", "Model", Unit.Text, "exact: chance alone, widened for clusters; additive: what levels usually differ by too.", row => Cell.Text(row.Model == MethodNames.FunnelAdditive ? "additive" : "exact")),
            new("method", "Method", Unit.Text, "Method of the limits.", row => Cell.Text(row.Model)),
        ],
        rows);

    private const string NoLimit = "the counts set no limit";
    private static readonly string Pair = Statistics.Comparison.ContrastMethods.Name(Statistics.Comparison.ContrastMethod.Newcombe);

    private static ImmutableArray<Column<TRow>> First<TRow>(Func<TRow, ComparisonMeasure> measure, Func<TRow, ComparisonBasis> basis, Func<TRow, string> by) =>
    [
        new("measure", "Measure", Unit.Text, "positivity; invalid-runs: inconclusive and invalid of all runs; refuted: of the positives that were confirmed or refuted.", row => Cell.Text(ComparisonNames.Of(measure(row)))),
        new("basis", "Basis", Unit.Text, "all runs; without-flagged-lots: without runs of lots that are flagged by the measure; routine: without runs taken because of an outbreak.", row => Cell.Text(ComparisonNames.Of(basis(row)))),
        new("by", "By", Unit.Text, "What is compared.", row => Cell.Text(by(row))),
    ];

    private static Cell Number(double? value, string? undefined) => Cell.NumberOr(value, undefined ?? Nothing);

    private static Cell Count(int? value, string? undefined) => value is { } some ? Cell.Count(some) : Cell.Undefined(undefined ?? Nothing);

    private static Cell Word(string word) => word.Length == 0 ? Cell.Empty : Cell.Text(word);

    private static Cell Figures(ComparisonTestRow row, double? value) => value is { } some ? Cell.Number(some) : row.Undefined is { } reason ? Cell.Undefined(reason) : Cell.Empty;
}
