using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Evaluation.IntervalCases;

/// <summary>Positive confirmatory specimens between screens, by days since the negative run.</summary>
internal static class IntervalCaseAnalysis
{
    /// <summary>Counts the interval cases.</summary>
    /// <param name="tally">The tally.</param>
    /// <returns>The findings.</returns>
    public static IntervalCaseFindings Of(Tally tally)
    {
        var days = ImmutableArray.CreateBuilder<IntervalCaseFinding>();
        long cumulative = 0;
        foreach (var day in tally.Cells.IntervalCases.GroupBy(cell => cell.DaysSinceRun).OrderBy(day => day.Key))
        {
            var count = day.Sum(cell => cell.Count);
            cumulative += count;
            days.Add(new IntervalCaseFinding(day.Key, count, cumulative));
        }

        var rows = days.ToImmutable();
        var median = Percentile.Median(rows.Select(row => ((double)row.DaysSinceRun, row.Specimens)));
        return new IntervalCaseFindings(cumulative, median, rows, IntervalCaseTables.Table(rows), Sentences(cumulative, median, tally.Cells.HasConfirmatory));
    }

    private static ImmutableArray<Sentence> Sentences(long total, double? median, bool hasConfirmatory)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        if (!hasConfirmatory)
        {
            sentences.Add(new Sentence("There is no confirmatory export, so interval cases cannot be seen."));
        }
        else if (total == 0)
        {
            sentences.Add(new Sentence("No positive confirmatory specimen, taken for another reason than audit, was seen of a person whose latest run was negative."));
        }
        else
        {
            sentences.Add(new Sentence(
                "{0} positive confirmatory " + Figure.Plural(total, "specimen, taken for another reason than audit, was", "specimens, taken for another reason than audit, were")
                + " seen of people whose latest run was negative; the median time since that run was {1} days.",
                Figure.Count("intervalCases.total", total), Say.Days("intervalCases.medianDays", median)));
        }

        sentences.Add(new Sentence(
            "Interval cases are never part of sensitivity, specificity or negative predictive value: a person may have been infected after the negative run."));
        return sentences.ToImmutable();
    }
}
