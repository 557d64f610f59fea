using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.FollowThrough;

/// <summary>How many of the runs that called for a confirmatory test got a conclusive one.</summary>
internal static class FollowUpAnalysis
{
    private static readonly ImmutableArray<Outcome> Outcomes = [Outcome.Positive, Outcome.Inconclusive];

    /// <summary>Counts the follow-up of positive and of inconclusive runs, apart.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="settings">What the program file says.</param>
    /// <returns>The findings.</returns>
    /// <remarks>
    /// Due are the runs of an outcome that the policy follows up: confirmed, refuted, unresolved, pending and unverified ones, which add up.
    /// Follow-through is conclusive (confirmed or refuted) of due, pending runs included: it can still rise.
    /// </remarks>
    public static FollowUpFindings Of(Tally tally, ProgramSettings settings)
    {
        var cells = tally.Cells;
        var confidence = settings.Report.Confidence;
        var rows = ImmutableArray.CreateBuilder<FollowUpFinding>();
        foreach (var outcome in Outcomes)
        {
            rows.Add(Of(Grouping.Program, "", outcome, Cells(cells.Screens, outcome), confidence));
        }

        AddGroups(rows, Grouping.Site, cells.Screens.GroupBy(cell => cell.Site, StringComparer.Ordinal), confidence);
        AddGroups(rows, Grouping.Lot, cells.Screens.GroupBy(cell => cell.Lot, StringComparer.Ordinal), confidence);
        foreach (var group in cells.Operators.GroupBy(cell => cell.Operator, StringComparer.Ordinal).OrderBy(group => group.Key, Levels.Order))
        {
            foreach (var outcome in Outcomes)
            {
                var some = group.Where(cell => cell.Outcome == outcome)
                    .Select(cell => (cell.Site, cell.Day, cell.FollowUp, cell.Runs)).ToList();
                AddUnlessNoneDue(rows, Of(Grouping.Operator, group.Key, outcome, some, confidence));
            }
        }

        var all = rows.ToImmutable();
        return new FollowUpFindings(
            all[0], all[1], [.. all.Where(row => row.Grouping != Grouping.Program)],
            cells.HasConfirmatory, settings.Policy.ConfirmWithinHours, cells.ReportingLagHours, cells.ReportingLagFromData,
            FollowUpTables.Table(all), FollowUpSentences.Of(all[0], all[1], tally, settings));
    }

    private static void AddGroups(
        ImmutableArray<FollowUpFinding>.Builder rows, Grouping by, IEnumerable<IGrouping<string, ScreenCell>> groups, double confidence)
    {
        foreach (var group in groups.OrderBy(group => group.Key, Levels.Order))
        {
            foreach (var outcome in Outcomes) AddUnlessNoneDue(rows, Of(by, group.Key, outcome, Cells(group, outcome), confidence));
        }
    }

    private static void AddUnlessNoneDue(ImmutableArray<FollowUpFinding>.Builder rows, FollowUpFinding finding)
    {
        if (finding.Due > 0) rows.Add(finding);
    }

    private static List<(string Site, DateOnly Day, FollowUp FollowUp, long Runs)> Cells(IEnumerable<ScreenCell> cells, Outcome outcome) =>
        [.. cells.Where(cell => cell.Outcome == outcome).Select(cell => (cell.Site, cell.Day, cell.FollowUp, cell.Runs))];

    private static FollowUpFinding Of(
        Grouping by, string level, Outcome outcome, List<(string Site, DateOnly Day, FollowUp FollowUp, long Runs)> cells, double confidence)
    {
        var counts = new long[8];
        foreach (var cell in cells) counts[(int)cell.FollowUp] += cell.Runs;
        var followThrough = new ClusterCounter();
        foreach (var cell in cells.Where(cell => cell.FollowUp != FollowUp.None))
        {
            followThrough.Add(cell.Site, cell.Day, cell.Runs, cell.FollowUp is FollowUp.Confirmed or FollowUp.Refuted ? cell.Runs : 0);
        }

        return new FollowUpFinding(
            Key: by == Grouping.Program ? LevelNames.Of(outcome) : $"{LevelNames.Of(by)}|{level}|{LevelNames.Of(outcome)}",
            Grouping: by, Level: level, Outcome: outcome,
            Confirmed: counts[(int)FollowUp.Confirmed], Refuted: counts[(int)FollowUp.Refuted], Unresolved: counts[(int)FollowUp.Unresolved],
            Pending: counts[(int)FollowUp.Pending], Unverified: counts[(int)FollowUp.Unverified],
            FollowThrough: followThrough.Proportion(confidence).Because("no run was due for a confirmatory test"));
    }
}
