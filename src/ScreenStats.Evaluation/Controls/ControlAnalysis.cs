using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Controls;

/// <summary>Runs of control swabs: expected against observed. Limits are widened for sites and site-weeks.</summary>
internal static class ControlAnalysis
{
    public static ControlFindings Of(Tally tally, double confidence)
    {
        ControlRow Row(Grouping grouping, string level, ControlExpectation expected, IReadOnlyCollection<ControlCell> cells)
        {
            var wanted = expected == ControlExpectation.Positive ? Outcome.Positive : Outcome.Negative;
            var counter = new ClusterCounter();
            foreach (var cell in cells) counter.Add(cell.Site, cell.Day, cell.Runs, cell.Observed == wanted ? cell.Runs : 0);
            long Observed(Outcome outcome) => cells.Where(cell => cell.Observed == outcome).Sum(cell => cell.Runs);
            return new ControlRow(
                $"{LevelNames.Of(grouping)}|{level}|{LevelNames.Of(expected)}", grouping, level, LevelNames.Of(expected),
                Observed(Outcome.Negative), Observed(Outcome.Positive), Observed(Outcome.Inconclusive), Observed(Outcome.Invalid),
                counter.Proportion(confidence));
        }

        IEnumerable<ControlRow> Parts(Grouping grouping, Func<ControlCell, string> level) => tally.Cells.Controls
            .GroupBy(cell => (Level: level(cell), cell.Expected))
            .OrderBy(part => part.Key.Level, Levels.Order).ThenBy(part => part.Key.Expected)
            .Select(part => Row(grouping, part.Key.Level, part.Key.Expected, [.. part]));

        ControlRow Program(ControlExpectation expected) => Row(Grouping.Program, "", expected, [.. tally.Cells.Controls.Where(cell => cell.Expected == expected)]);

        var findings = new ControlFindings
        {
            Runs = tally.Cells.Controls.Sum(cell => cell.Runs),
            Negative = Program(ControlExpectation.Negative),
            Positive = Program(ControlExpectation.Positive),
            Parts = [.. Parts(Grouping.Site, cell => cell.Site), .. Parts(Grouping.Lot, cell => cell.Lot)],
            Tables = [],
            Sentences = [],
        };
        return findings with
        {
            Tables = [ControlTables.Controls(findings.Runs == 0 ? [] : [findings.Negative, findings.Positive, .. findings.Parts])],
            Sentences = ControlSentences.Of(findings),
        };
    }
}
