using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Rules;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Detection;
using ScreenStats.Statistics.Monitoring.Acceptance;

namespace ScreenStats.Evaluation.LotRecording;

/// <summary>How many runs have no lot, and how large a fault in them would have to be to be seen.</summary>
internal static class LotRecordingAnalysis
{
    private const double Wanted = 0.8;

    public static LotRecordingFindings Of(Tally tally, PlanOfFlags flags, double confidence)
    {
        var program = Row(Grouping.Program, "", tally.Cells.Screens, flags, confidence);
        var sites = tally.Cells.Screens.GroupBy(cell => cell.Site, StringComparer.Ordinal).OrderBy(site => site.Key, Levels.Order)
            .Select(site => Row(Grouping.Site, site.Key, [.. site], flags, confidence)).ToList();
        var findings = new LotRecordingFindings(program, [.. sites], LotRecordingTables.Table([program, .. sites]), []);
        return findings with { Sentences = LotRecordingSentences.Of(findings) };
    }

    private static LotRecordingRow Row(Grouping grouping, string level, IReadOnlyCollection<ScreenCell> cells, PlanOfFlags flags, double confidence)
    {
        var counter = new ClusterCounter();
        long tests = 0, all = 0, refuted = 0, refutedWithout = 0;
        foreach (var cell in cells)
        {
            var without = cell.Lot == Levels.None;
            counter.Add(cell.Site, cell.Day, cell.Runs, without ? cell.Runs : 0);
            var usable = !cell.Outcome.IsUnusable();
            if (usable) all += cell.Runs;
            if (usable && without) tests += cell.Runs;
            if (cell is not { Outcome: Outcome.Positive, FollowUp: FollowUp.Refuted }) continue;
            refuted += cell.Runs;
            if (without) refutedWithout += cell.Runs;
        }

        var (seen, seenWhy, recorded, recordedWhy) = Seen(grouping, tests, all, flags);
        return new LotRecordingRow(
            grouping == Grouping.Program ? "program" : "site|" + level, grouping, level, counter.Proportion(confidence), tests, refutedWithout, refuted, seen, seenWhy, recorded, recordedWhy);
    }

    // A lot that is not recorded is in no comparison of lots; its fault shows only as far as it lifts the rate of its site.
    private static (double?, string?, double?, string?) Seen(Grouping grouping, long tests, long all, PlanOfFlags flags)
    {
        if (grouping == Grouping.Program) return (null, "it is told by site", null, "it is told by site");
        if (tests == 0) return (null, "every valid test has a lot", null, "every valid test has a lot");
        if (flags.RefutedRate is not { } rate) return (null, flags.RefutedUndefined, null, flags.RefutedUndefined);
        double? site = flags.Sites > 1 && flags.AllTests > all
            ? FlagCurve.Ratio(new FlagRule { Rate = rate, OtherTrials = flags.AllTests - all, Lots = flags.Sites }, all, Wanted) : null;
        var ofRuns = site is { } ratio ? 1 + ((ratio - 1) * all / tests) : (double?)null;
        if (ofRuns * rate > 1) ofRuns = null;
        double? lot = flags.LotTests > 0 ? FlagCurve.Ratio(new FlagRule { Rate = rate, OtherTrials = flags.LotTests, Lots = flags.Lots + 1 }, tests, Wanted) : null;
        return (
            ofRuns, ofRuns is null ? "no fault of these runs would flag the site in four programs of five" : null,
            lot, lot is null ? "so few runs are never flagged in four programs of five" : null);
    }
}
