using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Repeats;

/// <summary>Whether inconclusive and invalid runs were repeated on the same day. Limits are widened for sites.</summary>
internal static class RepeatAnalysis
{
    private const string Both = "both";

    public static RepeatFindings Of(Tally tally, double confidence)
    {
        RepeatRow Row(Grouping grouping, string level, string outcome, IReadOnlyCollection<RepeatCell> cells)
        {
            var sites = ClusterSums.From(cells
                .GroupBy(cell => cell.Site, StringComparer.Ordinal)
                .Select(site => (site.Sum(cell => cell.Due), site.Sum(cell => cell.Done))));
            return new RepeatRow(
                $"{LevelNames.Of(grouping)}|{level}|{outcome}", grouping, level, outcome,
                ClusteredProportion.Of(sites.Events, sites.Trials, confidence, (ClusterLevel.Sites, sites)));
        }

        IEnumerable<RepeatRow> Rows(Grouping grouping, string level, IReadOnlyCollection<RepeatCell> cells) =>
        [
            Row(grouping, level, Both, cells),
            Row(grouping, level, LevelNames.Of(Outcome.Inconclusive), [.. cells.Where(cell => cell.Outcome == Outcome.Inconclusive)]),
            Row(grouping, level, LevelNames.Of(Outcome.Invalid), [.. cells.Where(cell => cell.Outcome == Outcome.Invalid)]),
        ];

        var all = tally.Cells.Repeats;
        RepeatRow[] rows =
        [
            .. Rows(Grouping.Program, "", all),
            .. all.GroupBy(cell => cell.Site, StringComparer.Ordinal).OrderBy(site => site.Key, Levels.Order).SelectMany(site => Rows(Grouping.Site, site.Key, [.. site])),
        ];
        return new RepeatFindings
        {
            Program = rows[0],
            Rows = [.. rows],
            Tables = [RepeatTables.Repeats([.. rows])],
            Sentences = [RepeatSentences.Of(rows[0])],
        };
    }
}
