using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Retests;

/// <summary>Whether a second run on the same day agreed with a positive one.</summary>
internal static class RetestAnalysis
{
    /// <summary>Retests with any device.</summary>
    public const string Any = "any";

    private const string Same = "same";
    private const string Other = "other";

    /// <summary>Counts retests of positive runs, for the program, its devices and its sites.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="settings">What the program file says.</param>
    /// <returns>The findings.</returns>
    /// <remarks>
    /// Pairs by <see cref="RetestRule"/>. Concordance is positive retests of the positive and negative ones; unusable retests are counted
    /// beside. Two runs on one person an hour apart are not independent: what made the first positive, an infection or something else in that
    /// person, sample or lot, is still there for the second. So concordance is no predictive value. Limits are widened for sites and
    /// site-weeks; a person rarely makes two pairs.
    /// </remarks>
    public static RetestFindings Of(Tally tally, ProgramSettings settings)
    {
        var (cells, screens) = (tally.Cells.Retests, tally.Cells.Screens);
        var confidence = settings.Report.Confidence;
        string Device(string lot) => DeviceRule.Of(lot, settings.Screens)?.Name ?? Levels.None;
        var positives = screens.Where(cell => cell.Outcome == Outcome.Positive).ToList();
        var program = Row("program", "", Any, positives.Sum(cell => cell.Runs), cells, confidence);
        var rows = ImmutableArray.CreateBuilder<RetestRow>();
        var ofDevice = positives.GroupBy(cell => Device(cell.Lot), StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Sum(cell => cell.Runs), StringComparer.Ordinal);
        foreach (var device in cells.GroupBy(cell => Device(cell.Lot), StringComparer.Ordinal).OrderBy(group => group.Key, Levels.Order))
        {
            if (settings.Screens.IsEmpty) break;
            rows.Add(Row("device", device.Key, Any, ofDevice[device.Key], [.. device], confidence));
            var same = device.Where(cell => Device(cell.RetestLot) == device.Key).ToList();
            if (same.Count == device.Count()) continue;
            rows.Add(Row("device", device.Key, Same, ofDevice[device.Key], same, confidence));
            rows.Add(Row("device", device.Key, Other, ofDevice[device.Key], [.. device.Except(same)], confidence));
        }

        var ofSite = positives.GroupBy(cell => cell.Site, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Sum(cell => cell.Runs), StringComparer.Ordinal);
        foreach (var site in cells.GroupBy(cell => cell.Site, StringComparer.Ordinal).OrderBy(group => group.Key, Levels.Order))
        {
            rows.Add(Row("site", site.Key, Any, ofSite[site.Key], [.. site], confidence));
        }

        var all = rows.ToImmutable();
        var findings = new RetestFindings(program, all, RetestTables.Table([program, .. all]), []);
        return findings with { Sentences = RetestSentences.Of(findings, tally.Cells.HasConfirmatory) };
    }

    private static RetestRow Row(string by, string level, string with, long positives, IReadOnlyCollection<RetestCell> cells, double confidence)
    {
        var counter = new ClusterCounter();
        var unusable = 0L;
        foreach (var cell in cells)
        {
            if (cell.Retest.IsUnusable()) unusable += cell.Pairs;
            else counter.Add(cell.Site, cell.Day, cell.Pairs, cell.Retest == Outcome.Positive ? cell.Pairs : 0);
        }

        long Count(Outcome retest, FollowUp followUp) => cells.Where(cell => cell.Retest == retest && cell.FollowUp == followUp).Sum(cell => cell.Pairs);
        return new RetestRow(
            by == "program" ? "" : $"{by}|{level}|{with}", by, level, with, positives, cells.Sum(cell => cell.Pairs), unusable,
            counter.Proportion(confidence).Because("no positive run was retested on the same day with a positive or negative result"),
            Count(Outcome.Positive, FollowUp.Confirmed), Count(Outcome.Positive, FollowUp.Refuted),
            Count(Outcome.Negative, FollowUp.Confirmed), Count(Outcome.Negative, FollowUp.Refuted));
    }
}
