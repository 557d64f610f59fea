using System.Globalization;
using System.Runtime.InteropServices;
using ScreenStats.Evaluation.Disclosure.Counts;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>The counts that stand in the tables of a release, by unit; those it hides; and those that two of its tables state differently.</summary>
internal sealed class ReleasedCounts
{
    private const string HiddenText = "hidden";
    private readonly Dictionary<CountUnit, Dictionary<string, long>> shown = [];

    /// <summary>Counts by unit, in the order in which they were met, with what follows from them within the unit.</summary>
    public IReadOnlyDictionary<CountUnit, Dictionary<string, long>> Shown => shown;

    /// <summary>Counts and figures that the tables speak of.</summary>
    public HashSet<(CountUnit, string)> Spoken { get; } = [];

    /// <summary>Counts that are hidden.</summary>
    public HashSet<(CountUnit, string)> Hidden { get; } = [];

    /// <summary>Counts that two tables state differently, so that they are not one count: always hidden.</summary>
    public HashSet<(CountUnit, string)> Ambiguous { get; } = [];

    /// <summary>Takes the counts of the tables.</summary>
    /// <param name="rows">The rows of a table by its identifier; empty where the release has none.</param>
    public static ReleasedCounts Of(Func<string, IEnumerable<Row>> rows)
    {
        var counts = new ReleasedCounts();
        foreach (var rule in TableRules.Ordered)
        {
            foreach (var row in rows(rule.Id).Where(rule.Keep)) counts.Add(rule, row);
        }

        foreach (var unit in counts.shown.Values) CountDefinitions.Complete(unit);
        return counts;
    }

    private void Add(TableRule rule, Row row)
    {
        var unit = rule.Unit(row);
        ref var counts = ref CollectionsMarshal.GetValueRefOrAddDefault(shown, unit, out _);
        counts ??= new(StringComparer.Ordinal);
        foreach (var (name, column) in rule.Columns(row))
        {
            foreach (var measure in column.Measures) Spoken.Add((unit, measure));
            if (column.Kind != ColumnRule.Content.Count) continue;
            var text = row[name];
            if (text == HiddenText) Hidden.Add((unit, column.Measures[0]));
            else if (long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && !counts.TryAdd(column.Measures[0], value) && counts[column.Measures[0]] != value)
            {
                Ambiguous.Add((unit, column.Measures[0]));
            }
        }
    }
}
