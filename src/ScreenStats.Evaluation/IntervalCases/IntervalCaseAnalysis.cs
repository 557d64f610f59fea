using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.IntervalCases;

/// <summary>Positive confirmatory specimens between screens, by days since the negative run.</summary>
internal static class IntervalCaseAnalysis
{
    /// <summary>Counts the interval cases.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="confidence">Confidence of the limits.</param>
    /// <returns>The findings.</returns>
    public static IntervalCaseFindings Of(Tally tally, double confidence)
    {
        var detected = tally.Cells.Cases.GroupBy(cell => cell.Site, StringComparer.Ordinal).ToDictionary(site => site.Key, site => site.Sum(cell => cell.Cases), StringComparer.Ordinal);
        var screenDetected = detected.Values.Sum();
        var days = ImmutableArray.CreateBuilder<IntervalCaseFinding>();
        long cumulative = 0;
        foreach (var day in tally.Cells.IntervalCases.GroupBy(cell => cell.DaysSinceRun).OrderBy(day => day.Key))
        {
            var count = day.Sum(cell => cell.Count);
            cumulative += count;
            days.Add(new IntervalCaseFinding(day.Key, count, cumulative, Share(day.Key)));
        }

        var rows = days.ToImmutable();
        var median = Percentile.Median(rows.Select(row => ((double)row.DaysSinceRun, row.Specimens)));
        var findings = new IntervalCaseFindings(cumulative, median, screenDetected, Share(int.MaxValue), rows, IntervalCaseTables.Table(rows), []);
        return findings with { Sentences = Sentences(findings, tally.Cells.HasConfirmatory) };

        // A case is a person's, so people need no widening; sites may differ in how readily people go for a test.
        ProportionFinding Share(int days)
        {
            var between = tally.Cells.IntervalCases.Where(cell => cell.DaysSinceRun <= days).GroupBy(cell => cell.Site, StringComparer.Ordinal)
                .ToDictionary(site => site.Key, site => site.Sum(cell => cell.Count), StringComparer.Ordinal);
            var sites = detected.Keys.Union(between.Keys, StringComparer.Ordinal)
                .Select(site => (Trials: detected.GetValueOrDefault(site) + between.GetValueOrDefault(site), Events: detected.GetValueOrDefault(site)));
            return ClusteredProportion.Of(screenDetected, screenDetected + between.Values.Sum(), confidence, (ClusterLevel.Sites, ClusterSums.From(sites)))
                .Because("no case was found, by screening or between screens");
        }
    }

    private static ImmutableArray<Sentence> Sentences(IntervalCaseFindings findings, bool hasConfirmatory)
    {
        var (total, median, share) = (findings.Total, findings.MedianDays, findings.ProgramSensitivity);
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

        if (share.Trials > 0)
        {
            sentences.Add(new Sentence(
                $"Screening found {{0}} of the {{1}} cases that came to light at all, a program sensitivity of {{2}} ({{3}} interval {{4}} to {{5}}){ShareWords.Few(share)}. "
                + "It is too high as far as interval cases are missing: they are found only where people go for a test.",
                Figure.Count("intervalCases.screenDetected", findings.ScreenDetected), Figure.Count("intervalCases.programSensitivity.trials", share.Trials),
                Figure.Share("intervalCases.programSensitivity", share), Say.Confidence("intervalCases.programSensitivity.confidence", share.Confidence),
                Figure.Lower("intervalCases.programSensitivity", share), Figure.Upper("intervalCases.programSensitivity", share)));
        }

        sentences.Add(new Sentence(
            "Interval cases are never part of sensitivity, specificity or negative predictive value: a person may have been infected after the negative run."));
        return sentences.ToImmutable();
    }
}
