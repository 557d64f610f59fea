using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Ledger;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Flow;

/// <summary>The way of every row and run, from the exports to what is known of it.</summary>
internal static class FlowAnalysis
{
    private const string Nothing = "nothing came this far";

    private static readonly (string Outcome, FollowUp FollowUp)[] Tested =
        [("confirmed", FollowUp.Confirmed), ("refuted", FollowUp.Refuted), ("unresolved", FollowUp.Unresolved)];

    private static readonly (string Outcome, FollowUp FollowUp)[] Untested = [("pending", FollowUp.Pending), ("unverified", FollowUp.Unverified)];

    private static readonly (string Outcome, FollowUp FollowUp)[] Audited =
        [("missed", FollowUp.Missed), ("agreed", FollowUp.Agreed), ("unresolved", FollowUp.Unresolved)];

    /// <summary>Counts every box.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="ledger">The ledger, where the flow begins.</param>
    /// <param name="settings">What the program file says.</param>
    /// <returns>The findings.</returns>
    /// <remarks>
    /// Boxes as the reporting standard for diagnostic accuracy asks (P. M. Bossuyt et al., 2015, BMJ 351:h5527, item 19): what was read, what was kept out and
    /// why, the screen's outcome, who got the confirmatory test, and its result. Boxes from one box add up to it. Outcomes of runs, and results among those
    /// with a confirmatory test, have limits, widened for sites and site-weeks; what became of rows and who was tested are plain shares: they are
    /// decisions and work done, no sample of anything. A tally without a ledger begins with the counted runs.
    /// </remarks>
    public static FlowFindings Of(Tally tally, LedgerFindings ledger, ProgramSettings settings)
    {
        var rows = new Boxes(settings.Report.Confidence);
        var cells = tally.Cells.Screens;
        if (ledger.Read > 0)
        {
            rows.Add(FlowKeys.Rows, "rows", ledger.Read);
            foreach (var (entry, count) in Entries(ledger, "screening")) rows.Add($"{FlowKeys.Rows}/{entry}", "rows", count);
        }
        else
        {
            rows.Add(FlowKeys.Runs, "rows", cells.Sum(cell => cell.Runs));
        }

        foreach (var outcome in (ReadOnlySpan<Outcome>)[Outcome.Positive, Outcome.Inconclusive, Outcome.Invalid, Outcome.Negative])
        {
            rows.Add($"{FlowKeys.Runs}/{LevelNames.Of(outcome)}", "runs", cells, cell => cell.Outcome == outcome);
        }

        foreach (var (outcome, key) in (ReadOnlySpan<(Outcome, string)>)[(Outcome.Positive, FlowKeys.Positive), (Outcome.Inconclusive, FlowKeys.Inconclusive)])
        {
            var some = cells.Where(cell => cell.Outcome == outcome).ToList();
            if (settings.Policy.FollowUp.Contains(outcome)) FollowedUp(rows, key, some);
            else rows.Add(key + "/not-followed-up", "confirmatory-test", some.Sum(cell => cell.Runs));
        }

        var negatives = cells.Where(cell => cell.Outcome == Outcome.Negative).ToList();
        rows.Add(FlowKeys.Tested(FlowKeys.Negative), "confirmatory-test", negatives.Where(cell => cell.FollowUp != FollowUp.None).Sum(cell => cell.Runs));
        Results(rows, FlowKeys.Tested(FlowKeys.Negative), negatives.Where(cell => cell.FollowUp != FollowUp.None), Audited);
        rows.Add(FlowKeys.Untested(FlowKeys.Negative), "confirmatory-test", negatives.Where(cell => cell.FollowUp == FollowUp.None).Sum(cell => cell.Runs));
        Specimens(rows, tally, ledger);
        var all = rows.All;
        var findings = new FlowFindings(all, FlowTables.Table(all), []);
        return findings with { Sentences = FlowSentences.Of(findings) };
    }

    private static void FollowedUp(Boxes rows, string key, List<ScreenCell> runs)
    {
        var tested = runs.Where(cell => Tested.Any(kind => kind.FollowUp == cell.FollowUp)).ToList();
        rows.Add(FlowKeys.Tested(key), "confirmatory-test", tested.Sum(cell => cell.Runs));
        Results(rows, FlowKeys.Tested(key), tested, Tested);
        rows.Add(FlowKeys.Untested(key), "confirmatory-test", runs.Sum(cell => cell.Runs) - tested.Sum(cell => cell.Runs));
        foreach (var (outcome, followUp) in Untested)
        {
            rows.Add($"{FlowKeys.Untested(key)}/{outcome}", "confirmatory-result", runs.Where(cell => cell.FollowUp == followUp).Sum(cell => cell.Runs));
        }
    }

    private static void Results(Boxes rows, string key, IEnumerable<ScreenCell> tested, (string Outcome, FollowUp FollowUp)[] kinds)
    {
        var all = tested.ToList();
        foreach (var (outcome, followUp) in kinds) rows.Add($"{key}/{outcome}", "confirmatory-result", all, cell => cell.FollowUp == followUp);
    }

    private static void Specimens(Boxes rows, Tally tally, LedgerFindings ledger)
    {
        if (!tally.Cells.HasConfirmatory) return;
        var specimens = tally.Cells.Specimens.Sum(cell => cell.Specimens * cell.Persons);
        var read = Entries(ledger, "confirmatory");
        if (read.Length > 0) rows.Add(FlowKeys.SpecimenRows, "specimen-rows", read.Sum(entry => entry.Rows));
        foreach (var (entry, count) in read) rows.Add($"{FlowKeys.SpecimenRows}/{entry}", "specimen-rows", count);
        if (read.Length == 0) rows.Add(FlowKeys.Specimens, "specimen-rows", specimens);
        if (tally.Cells.SettlingSpecimens is not { } settling) return;
        rows.Add(FlowKeys.Settling, "specimens", settling);
        rows.Add(FlowKeys.NotLinked, "specimens", specimens - settling);
    }

    private static ImmutableArray<(string Entry, long Rows)> Entries(LedgerFindings ledger, string export) =>
        [.. ledger.Rows.Where(row => row.Export == export && row.Entry != "read").Select(row => (row.Entry, row.Rows))];

    /// <summary>Boxes as they are counted, each with the one that it comes from before it.</summary>
    private sealed class Boxes(double confidence)
    {
        private readonly ImmutableArray<FlowRow>.Builder rows = ImmutableArray.CreateBuilder<FlowRow>();
        private readonly Dictionary<string, long> counts = new(StringComparer.Ordinal);

        public ImmutableArray<FlowRow> All => rows.ToImmutable();

        public void Add(string key, string stage, long count) => Add(key, stage, count, null);

        public void Add(string key, string stage, IReadOnlyCollection<ScreenCell> cells, Func<ScreenCell, bool> counts)
        {
            var counter = new ClusterCounter();
            foreach (var cell in cells) counter.Add(cell.Site, cell.Day, cell.Runs, counts(cell) ? cell.Runs : 0);
            Add(key, stage, counter.Events, counter.Proportion(confidence).Because(Nothing));
        }

        private void Add(string key, string stage, long count, ProportionFinding? share)
        {
            var parent = FlowKeys.Parent(key);
            var from = counts.TryGetValue(parent, out var before);
            rows.Add(new FlowRow(key, stage, FlowKeys.Outcome(key), from ? parent : "", count, from ? before : null, share));
            counts.Add(key, count);
        }
    }
}
