using System.Runtime.InteropServices;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Comparisons.Strata;

/// <summary>The program cut by what is compared and by what is adjusted for, in one pass over a cube.</summary>
internal sealed class ComparedCells
{
    private readonly Dictionary<Key, ComparedCell> cells = [];

    /// <summary>Names of what is compared, of sites, and of what is adjusted for beside the period.</summary>
    public Vocabulary Levels { get; } = new();

    public Vocabulary Sites { get; } = new();

    public Vocabulary Firsts { get; } = new();

    public Vocabulary Seconds { get; } = new();

    /// <summary>What the first and second adjustment are: <c>kit</c>, <c>specimen</c> or <c>site</c>; empty for none.</summary>
    public string First { get; }

    public string Second { get; }

    public string By { get; }

    /// <summary>Cells in the order in which they came. Runs whose level is not recorded are not in them.</summary>
    public IReadOnlyList<ComparedCell> All { get; }

    /// <summary>Counted runs whose level is not recorded.</summary>
    public long NotRecorded { get; private set; }

    public long OutbreakRuns { get; private set; }

    /// <summary>Cuts a tally.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="settings">What the program file says: devices, and what is compared.</param>
    /// <param name="refutedLots">Lots flagged for refuted positives.</param>
    /// <param name="invalidLots">Lots flagged for unusable runs.</param>
    public ComparedCells(Tally tally, ProgramSettings settings, IReadOnlyCollection<string> refutedLots, IReadOnlyCollection<string> invalidLots)
    {
        var by = settings.Report.CompareBy;
        By = ComparisonWords.Of(by);
        (First, Second) = by switch
        {
            CompareBy.Operator => ("site", ""),
            CompareBy.Kit => ("site", "specimen"),
            CompareBy.Specimen => ("site", "kit"),
            _ => ("kit", "specimen"),
        };
        if (by == CompareBy.Operator) Operators(tally);
        else Screens(tally, by, settings, refutedLots, invalidLots);
        All = [.. cells.Values];
    }

    private void Operators(Tally tally)
    {
        var none = Seconds.Of("");
        foreach (var cell in tally.Cells.Operators)
        {
            if (cell.Operator == ScreenStats.Counting.Cubes.Levels.None)
            {
                NotRecorded += cell.Runs;
                continue;
            }

            var site = Sites.Of(cell.Site);
            Add(At(new Key(Levels.Of(cell.Operator), site, cell.Day.DayNumber / 7, Firsts.Of(cell.Site), none, Mark(cell.Occasion))), cell.Outcome, cell.FollowUp, cell.Runs);
        }
    }

    private void Screens(Tally tally, CompareBy by, ProgramSettings settings, IReadOnlyCollection<string> refutedLots, IReadOnlyCollection<string> invalidLots)
    {
        var specimens = Enum.GetValues<Specimen>().ToDictionary(specimen => specimen, specimen => LevelNames.Of(specimen));
        var lots = new Dictionary<string, (string Device, int Marks)>(StringComparer.Ordinal);
        (string Lot, string Device, int Marks) lot = ("", "", 0);
        var regions = tally.Cells.Sites.ToDictionary(site => site.Site, site => site.Region, StringComparer.Ordinal);
        var cellBefore = (Key: default(Key), Cell: (ComparedCell?)null);
        foreach (var cell in tally.Cells.Screens)
        {
            if (!ReferenceEquals(cell.Lot, lot.Lot))
            {
                if (!lots.TryGetValue(cell.Lot, out var known))
                {
                    known = (DeviceRule.Of(cell.Lot, settings.Screens)?.Name ?? ScreenStats.Counting.Cubes.Levels.None, (refutedLots.Contains(cell.Lot) ? 1 : 0) | (invalidLots.Contains(cell.Lot) ? 2 : 0));
                    lots.Add(cell.Lot, known);
                }

                lot = (cell.Lot, known.Device, known.Marks);
            }

            var specimen = specimens[cell.Specimen];
            var name = by switch { CompareBy.Kit => lot.Device, CompareBy.Specimen => specimen, CompareBy.Region => regions.GetValueOrDefault(cell.Site, ScreenStats.Counting.Cubes.Levels.None), _ => cell.Site };
            if (name == ScreenStats.Counting.Cubes.Levels.None)
            {
                NotRecorded += cell.Runs;
                continue;
            }

            var (first, second) = by switch { CompareBy.Kit => (cell.Site, specimen), CompareBy.Specimen => (cell.Site, lot.Device), _ => (lot.Device, specimen) };
            var key = new Key(Levels.Of(name), Sites.Of(cell.Site), cell.Day.DayNumber / 7, Firsts.Of(first), Seconds.Of(second), lot.Marks | Mark(cell.Occasion));
            if (cellBefore.Cell is null || cellBefore.Key != key) cellBefore = (key, At(key));
            Add(cellBefore.Cell, cell.Outcome, cell.FollowUp, cell.Runs);
        }
    }

    private static int Mark(Occasion occasion) => occasion == Occasion.Outbreak ? 4 : 0;

    private ComparedCell At(Key key)
    {
        ref var cell = ref CollectionsMarshal.GetValueRefOrAddDefault(cells, key, out _);
        return cell ??= new ComparedCell(key.Level, key.Site, key.Week, key.First, key.Second, (key.Marks & 1) != 0, (key.Marks & 2) != 0, (key.Marks & 4) != 0);
    }

    private void Add(ComparedCell cell, Outcome outcome, FollowUp followUp, long runs)
    {
        cell.Runs += runs;
        if (cell.Outbreak) OutbreakRuns += runs;
        if (outcome is not (Outcome.Negative or Outcome.Positive)) return;
        cell.Tests += runs;
        if (outcome != Outcome.Positive) return;
        cell.Positives += runs;
        if (followUp is not (FollowUp.Confirmed or FollowUp.Refuted)) return;
        cell.Conclusive += runs;
        if (followUp == FollowUp.Refuted) cell.Refuted += runs;
    }

    private readonly record struct Key(int Level, int Site, int Week, int First, int Second, int Marks);
}
