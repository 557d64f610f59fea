using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Comparisons;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Pages.Comparisons;

/// <summary>Sites, or what else is compared, side by side.</summary>
internal static class ComparisonPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings)
    {
        var found = findings.Comparison;
        var words = ComparedWords.Of(found.By);
        return new(
            "compared", $"{words.Title} compared", found,
            $"Why they differ. Adjustment takes out only what was recorded (when, and with what device and specimen); who was tested, what work they do and how a place follows up stay in. Within the limits is not the same as alike: with few runs nothing but a disaster lies outside. An order says more than is known; read the ranks with their limits.",
            $"Each {words.One} by positive of valid tests, unusable of all runs, and refuted of the positives that were confirmed or refuted. The adjusted rate is what its rate would be at the program's mix of periods, devices and specimens: a logistic model with a random term for each {words.One}, which draws a rate towards the others' as far as its own counts are few. " +
            "Times expected is its number over what the program's rates in the same periods, devices and specimens would have given. The funnel stands around the program's rate and judges that; where rates differ all over by more than chance, its limits allow for the usual difference between them. " +
            "Limits and tests allow for people who were tested again and again and for weeks that were alike. As counted, standardised, with every limit: in the files.")
        {
            Caution = words.Caution,
            Charts = ComparisonFigures.Of(findings),
            Tables = Tables(findings, found, words),
        };
    }

    private static ImmutableArray<TableView> Tables(Findings findings, ComparisonFindings found, ComparedWords words)
    {
        var leading = found.Summaries.Where(summary => summary.Leads).Select(summary => (summary.Measure, summary.Basis)).ToHashSet();
        bool Leads(ComparisonMeasure measure, ComparisonBasis basis) => leading.Contains((measure, basis));
        var views = ImmutableArray.CreateBuilder<TableView>();
        foreach (var table in found.Tables)
        {
            switch (table)
            {
                case Table<ComparisonRow> levels when !words.NamesPeople:
                    foreach (var measure in Enum.GetValues<ComparisonMeasure>()) views.Add(Levels(levels.Only(row => row.Measure == measure && Leads(row.Measure, row.Basis)), measure, words, ordered: findings.Disclosure is null));
                    break;
                case Table<ComparisonTestRow> tests:
                    views.Add(new(tests.Only(row => Leads(row.Measure, row.Basis)), "Whether they differ as a whole, and by how much",
                        ["test", "measure", "statistic", new("lower", "Limits", "upper"), "degrees_of_freedom", "p_value", ViewColumn.Remark]) { Folded = true });
                    break;
                case Table<ComparisonPairRow> pairs when !words.NamesPeople:
                    var apart = pairs.Only(row => Leads(row.Measure, row.Basis) && row.ToldApart);
                    views.Add(new(findings.Disclosure is null ? apart : pairs.Only(row => Leads(row.Measure, row.Basis)), findings.Disclosure is null ? "Pairs that can be told apart within the same periods, devices and specimens" : "Pairs",
                        ["level", "other", "measure", new("odds_ratio", "Odds ratio within strata"), new("odds_ratio_lower", "Limits, all pairs", "odds_ratio_upper"), new("difference", "Difference as counted"), new("simultaneous_lower", "Limits, all pairs", "simultaneous_upper")]) { Folded = true });
                    break;
                case Table<ComparisonModelRow> model:
                    views.Add(new(model.Only(row => Leads(row.Measure, row.Basis) && row.Term != found.By), "What the model says of periods, devices and specimens",
                        ["level", "term", "measure", "odds_ratio", new("lower", "Limits", "upper"), "p_value", ViewColumn.Remark]) { Folded = true });
                    break;
            }
        }

        return views.ToImmutable();
    }

    private static TableView Levels(Table<ComparisonRow> rows, ComparisonMeasure measure, ComparedWords words, bool ordered)
    {
        // The order gives away which is higher, so that of the file stands where figures are hidden.
        var table = ordered ? rows.Arranged(all => Outer(all.ToImmutableArray())) : rows;
        var adjusted = !ordered || rows.Any(row => row.Adjusted.Estimate is not null);
        var order = !ordered ? "" : rows.RowCount > TableView.FirstRows ? "; those that stand out and the highest first" : adjusted ? ", in order of the adjusted rate" : ", in order of times expected";
        var reason = adjusted ? "" : rows.Select(row => row.Adjusted.EstimateUndefined).FirstOrDefault(reason => reason is not null) is { } why ? $"; no adjusted rate: {why}" : "";
        ReadOnlySpan<ViewColumn> model = adjusted ? [new("adjusted", "Adjusted"), new("adjusted_lower", "Limits", "adjusted_upper"), new("rank_lower", "Ranks it may have", "rank_upper")] : [];
        return new(
            table, $"{words.Title} by {ComparedWords.Measure(measure)}{order}{reason}",
            [
                ViewColumn.Level(words.Singular), .. model, new("standing", "In the funnel"), new("standing_limits", "Outside of"), new("trials", ComparedWords.Trials(measure)), new("events", ComparedWords.Events(measure)), new("estimate", "As counted"),
                ViewColumn.Limits, new("ratio", "Times expected"), new("ratio_lower", "Limits", "ratio_upper"), ViewColumn.Remark,
            ]);
    }

    /// <summary>All in order of the adjusted rate; of too many those that stand out come first.</summary>
    private static IEnumerable<ComparisonRow> Outer(ImmutableArray<ComparisonRow> rows)
    {
        var order = rows.OrderByDescending(row => row.Adjusted.Estimate ?? row.Ratio.Estimate ?? -1).ThenBy(row => row.Level, StringComparer.Ordinal);
        return rows.Length <= TableView.FirstRows ? order : order.OrderByDescending(row => row.Place.StandsOut).ThenByDescending(row => row.Place.Limits is > 0.99);
    }
}
