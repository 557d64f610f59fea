using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Audits;

/// <summary>What audited negative runs say about the negatives.</summary>
internal static class AuditAnalysis
{
    private const string NoAudit = "no negative run was verified by an audit with a conclusive result";

    /// <summary>Counts audits.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="settings">What the program file says.</param>
    /// <returns>The findings.</returns>
    /// <remarks>
    /// Only an audit verifies a negative run: without audits there is no sensitivity, no specificity and no negative predictive value. The share
    /// that agreed is of the audited runs alone; <see cref="Accuracy.AccuracyAnalysis"/> weights it.
    /// </remarks>
    public static AuditFindings Of(Tally tally, ProgramSettings settings)
    {
        var cells = tally.Cells.Audits;
        var confidence = settings.Report.Confidence;
        var rows = ImmutableArray.CreateBuilder<AuditFinding>();
        rows.Add(Of(Grouping.Program, "", cells, confidence));
        foreach (var site in cells.GroupBy(cell => cell.Site, StringComparer.Ordinal).OrderBy(group => group.Key, Levels.Order))
        {
            rows.Add(Of(Grouping.Site, site.Key, site, confidence));
        }

        foreach (var lot in cells.GroupBy(cell => cell.Lot, StringComparer.Ordinal).OrderBy(group => group.Key, Levels.Order))
        {
            rows.Add(Of(Grouping.Lot, lot.Key, lot, confidence));
        }

        var all = rows.ToImmutable();
        var program = all[0];
        var negatives = tally.Cells.Screens.Where(cell => cell.Outcome == Outcome.Negative).Sum(cell => cell.Runs);
        var findings = new AuditFindings(program, all[1..], negatives, AuditTables.Table(all), []);
        return findings with { Sentences = AuditSentences.Of(findings, confidence) };
    }

    private static AuditFinding Of(Grouping by, string level, IEnumerable<AuditCell> cells, double confidence)
    {
        long missed = 0, agreed = 0, unresolved = 0;
        var counter = new ClusterCounter();
        foreach (var cell in cells)
        {
            switch (cell.Result)
            {
                case FollowUp.Missed:
                    missed += cell.Runs;
                    counter.Add(cell.Site, cell.Day, cell.Runs, 0);
                    break;
                case FollowUp.Agreed:
                    agreed += cell.Runs;
                    counter.Add(cell.Site, cell.Day, cell.Runs, cell.Runs);
                    break;
                default:
                    unresolved += cell.Runs;
                    break;
            }
        }

        return new AuditFinding(
            by == Grouping.Program ? "" : $"{LevelNames.Of(by)}|{level}", by, level, missed, agreed, unresolved, counter.Proportion(confidence).Because(NoAudit));
    }
}
