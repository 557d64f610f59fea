using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Evaluation.Participation;

/// <summary>How often people were tested.</summary>
internal static class ParticipationAnalysis
{
    public static ParticipationFindings Of(Tally tally)
    {
        var runs = Distribution(tally.Cells.Participation.Select(cell => (cell.Runs, cell.Persons)));
        var gaps = Distribution(tally.Cells.Gaps.Select(cell => (cell.Days, cell.Count)));
        var persons = runs.Sum(entry => entry.Count);
        var rows = Rows("runs-per-person", runs).AddRange(Rows("days-between-runs", gaps));
        var findings = new ParticipationFindings
        {
            Persons = persons,
            Runs = runs.Sum(entry => entry.Value * entry.Count),
            MedianRuns = Percentile.Median(Real(runs)),
            TenthPercentileRuns = Percentile.NearestRank(Real(runs), 0.1),
            NinetiethPercentileRuns = Percentile.NearestRank(Real(runs), 0.9),
            MedianRunsUndefined = persons == 0 ? "nobody was tested" : null,
            OneRunOnly = runs.Where(entry => entry.Value == 1).Sum(entry => entry.Count),
            Gaps = gaps.Sum(entry => entry.Count),
            MedianGapDays = Percentile.Median(Real(gaps)),
            NinetiethPercentileGapDays = Percentile.NearestRank(Real(gaps), 0.9),
            MedianGapDaysUndefined = gaps.Count == 0 ? "nobody was tested twice" : null,
            Rows = rows,
            Tables = [ParticipationTables.Participation(rows)],
            Sentences = [],
        };
        return findings with { Sentences = ParticipationSentences.Of(findings) };
    }

    private static List<(int Value, long Count)> Distribution(IEnumerable<(int Value, long Count)> cells) =>
        [.. cells.GroupBy(cell => cell.Value).OrderBy(value => value.Key).Select(value => (value.Key, value.Sum(cell => cell.Count)))];

    private static IEnumerable<(double, long)> Real(List<(int Value, long Count)> values) => values.Select(entry => ((double)entry.Value, entry.Count));

    private static ImmutableArray<ParticipationRow> Rows(string measure, List<(int Value, long Count)> values)
    {
        var total = values.Sum(entry => entry.Count);
        return [.. values.Select(entry => new ParticipationRow(
            $"{measure}:{entry.Value.ToString(CultureInfo.InvariantCulture)}", measure, entry.Value, entry.Count, (double)entry.Count / total))];
    }
}
