using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Controls;

/// <summary>Runs of control swabs: expected against observed, what failed ones leave in doubt, and starts without one.</summary>
/// <remarks>Limits are widened for sites and site-weeks. Lots and operators are compared with the others of the same site, sites with all others.</remarks>
internal static class ControlAnalysis
{
    public static ControlFindings Of(Tally tally, ProgramSettings settings)
    {
        var (controls, confidence) = (tally.Cells.Controls, settings.Report.Confidence);

        ControlRow Row(Grouping grouping, string level, ControlExpectation expected, IEnumerable<ControlCell> cells, LevelComparison? comparison)
        {
            var counter = new ClusterCounter();
            var observed = new long[4];
            foreach (var cell in cells)
            {
                counter.Add(cell.Site, cell.Day, cell.Runs, cell.IsPassed ? cell.Runs : 0);
                observed[(int)cell.Observed] += cell.Runs;
            }

            return new ControlRow(
                $"{LevelNames.Of(grouping)}|{level}|{LevelNames.Of(expected)}", grouping, level, LevelNames.Of(expected),
                observed[(int)Outcome.Negative], observed[(int)Outcome.Positive], observed[(int)Outcome.Inconclusive], observed[(int)Outcome.Invalid],
                counter.Proportion(confidence), comparison);
        }

        IEnumerable<ControlRow> Parts(Grouping grouping, Func<ControlCell, string> level)
        {
            IReadOnlyDictionary<string, LevelComparison> Compared(ControlExpectation expected)
            {
                var levels = new LevelCounts();
                foreach (var cell in controls)
                {
                    if (cell.Expected == expected) levels.Add(level(cell), grouping == Grouping.Site ? "" : cell.Site, cell.Runs, cell.IsPassed ? 0 : cell.Runs);
                }

                return LevelComparisons.Of(levels);
            }

            var comparisons = Enum.GetValues<ControlExpectation>().ToDictionary(expected => expected, expected => Compared(expected));
            return controls.GroupBy(cell => (Level: level(cell), cell.Expected))
                .OrderBy(part => part.Key.Level, Levels.Order).ThenBy(part => part.Key.Expected)
                .Select(part => Row(grouping, part.Key.Level, part.Key.Expected, part, comparisons[part.Key.Expected].At(part.Key.Level)));
        }

        ControlRow Program(ControlExpectation expected) => Row(Grouping.Program, "", expected, controls.Where(cell => cell.Expected == expected), null);

        var failedKits = controls.Where(cell => !cell.IsPassed && cell.Kit != Levels.None).Select(cell => cell.Kit).ToHashSet(StringComparer.Ordinal);
        var kits = controls.Where(cell => failedKits.Contains(cell.Kit)).GroupBy(cell => (cell.Kit, cell.Expected))
            .OrderBy(kit => kit.Key.Kit, Levels.Order).ThenBy(kit => kit.Key.Expected)
            .Select(kit => Row(Grouping.Kit, kit.Key.Kit, kit.Key.Expected, kit, null));
        var byOperator = controls.Any(cell => cell.Operator != Levels.None) ? Parts(Grouping.Operator, cell => cell.Operator) : [];
        var brackets = ControlBrackets.Of(controls, tally.Cells.Screens);
        var (duties, missed) = ControlDuties.Of(tally.Cells, settings.Policy, confidence);
        var findings = new ControlFindings
        {
            Runs = controls.Sum(cell => cell.Runs),
            Negative = Program(ControlExpectation.Negative),
            Positive = Program(ControlExpectation.Positive),
            Parts = [.. Parts(Grouping.Site, cell => cell.Site), .. Parts(Grouping.Lot, cell => cell.Lot), .. kits, .. byOperator],
            Brackets = brackets,
            Failed = brackets.Sum(bracket => bracket.Controls),
            Open = brackets.Where(bracket => bracket.IsOpen).Sum(bracket => bracket.Controls),
            RunsInDoubt = RunsInDoubt(brackets, tally.Cells.Screens),
            Duties = duties,
            Missed = missed,
            ControlTable = ControlTables.Controls([]),
            BracketTable = ControlTables.Brackets(brackets),
            StartTable = ControlTables.Starts(missed, settings.Policy),
            DutyTable = ControlTables.Duties(duties),
            Sentences = [],
        };
        return findings with
        {
            ControlTable = ControlTables.Controls(findings.Runs == 0 ? [] : [findings.Negative, findings.Positive, .. findings.Parts]),
            Sentences = ControlSentences.Of(findings),
        };
    }

    // Brackets overlap: a run between two failed controls and the passed ones around them is one run in doubt.
    private static long RunsInDoubt(IReadOnlyCollection<ControlBracket> brackets, IEnumerable<ScreenCell> screens)
    {
        var places = brackets.ToLookup(bracket => (bracket.Site, bracket.Lot));
        return screens.Where(cell => places[(cell.Site, cell.Lot)].Any(bracket =>
            !(cell.Day < bracket.LastPassedDay) && !(cell.Day > bracket.NextPassedDay))).Sum(cell => cell.Runs);
    }
}
