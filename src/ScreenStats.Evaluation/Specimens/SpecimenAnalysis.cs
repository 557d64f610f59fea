using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Specimens;

/// <summary>Confirmatory specimens by why they were taken.</summary>
internal static class SpecimenAnalysis
{
    private static readonly SpecimenReason[] Order = [SpecimenReason.FollowUp, SpecimenReason.Audit, SpecimenReason.Other, SpecimenReason.NotRecorded];

    /// <summary>Counts the counted specimens of each reason by result.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="settings">What the program file says.</param>
    /// <returns>The findings.</returns>
    /// <remarks>
    /// Every counted specimen, whether or not it settles a run. Limits are widened for people with several specimens of one reason; sites are not
    /// recorded for specimens. All reasons together are not widened: a person may have specimens of several.
    /// </remarks>
    public static SpecimenFindings Of(Tally tally, ProgramSettings settings)
    {
        var cells = tally.Cells.Specimens;
        var confidence = settings.Report.Confidence;
        ImmutableArray<SpecimenFinding> reasons =
        [
            .. Order.Select(reason => (Reason: reason, Cells: cells.Where(cell => cell.Reason == reason).ToList()))
                .Where(group => group.Cells.Count > 0).Select(group => Finding(LevelNames.Of(group.Reason), group.Cells, confidence, true)),
        ];
        var all = Finding("all", cells, confidence, reasons.Length == 1);
        var findings = new SpecimenFindings(all, reasons, SpecimenTables.Table(reasons.Length > 1 ? [all, .. reasons] : reasons), []);
        return findings with { Sentences = SpecimenSentences.Of(findings, tally.Cells.HasConfirmatory) };
    }

    private static SpecimenFinding Finding(string reason, IReadOnlyCollection<SpecimenCell> cells, double confidence, bool people)
    {
        ClusterSums sums = default;
        long specimens = 0, persons = 0, indeterminate = 0, rejected = 0;
        foreach (var cell in cells)
        {
            specimens += cell.Specimens * cell.Persons;
            persons += cell.Persons;
            indeterminate += cell.Indeterminate * cell.Persons;
            rejected += cell.Rejected * cell.Persons;
            sums = With(sums, cell);
        }

        var share = ClusteredProportion.Of(sums.Events, sums.Trials, confidence, people ? [(ClusterLevel.Persons, sums)] : [])
            .Because("there is no specimen with a conclusive result");
        return new SpecimenFinding(reason, specimens, people ? persons : null, indeterminate, rejected, share);
    }

    private static ClusterSums With(ClusterSums sums, SpecimenCell cell)
    {
        long n = cell.Conclusive, x = cell.Positive;
        return n == 0 ? sums : new ClusterSums(
            sums.Clusters + cell.Persons, sums.Trials + (n * cell.Persons), sums.Events + (x * cell.Persons),
            sums.TrialsSquared + (n * n * cell.Persons), sums.TrialsTimesEvents + (n * x * cell.Persons), sums.EventsSquared + (x * x * cell.Persons));
    }
}
