using System.Globalization;
using System.Runtime.InteropServices;
using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Rules;

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

    /// <summary>Of each table the parts that have a row, and what is counted in its rows.</summary>
    public Dictionary<string, (HashSet<CountUnit> Units, HashSet<string> Measures)> Listed { get; } = new(StringComparer.Ordinal);

    /// <summary>The least that a reader knows a count to be because there is a row at all.</summary>
    public Dictionary<(CountUnit, string), long> AtLeast { get; } = [];

    /// <summary>Takes the counts of the tables.</summary>
    /// <param name="rows">The rows of a table by its identifier; empty where the release has none.</param>
    /// <param name="without">Tables that are left out; null for none.</param>
    public static ReleasedCounts Of(Func<string, IEnumerable<Row>> rows, IReadOnlySet<string>? without = null)
    {
        var counts = new ReleasedCounts();
        foreach (var rule in TableRules.Ordered.Where(rule => without?.Contains(rule.Id) != true))
        {
            foreach (var row in rows(rule.Id).Where(rule.Keep)) counts.Add(rule, row);
        }

        foreach (var unit in counts.shown.Values) CountDefinitions.Complete(unit);
        return counts;
    }

    /// <summary>Takes a count that sentences or findings.json state, and no table.</summary>
    public void Add(CountUnit unit, string measure, long value)
    {
        Spoken.Add((unit, measure));
        ref var counts = ref CollectionsMarshal.GetValueRefOrAddDefault(shown, unit, out _);
        counts ??= new(StringComparer.Ordinal);
        if (!counts.TryAdd(measure, value) && counts[measure] != value) Ambiguous.Add((unit, measure));
    }

    private void Add(TableRule rule, Row row)
    {
        var own = rule.Unit(row);
        if (!Listed.TryGetValue(rule.Id, out var listed)) Listed.Add(rule.Id, listed = ([], new(StringComparer.Ordinal)));
        listed.Units.Add(own);
        foreach (var (name, column) in rule.Columns(row))
        {
            foreach (var measure in column.Measures) Spoken.Add(measure.In(own));
            if (column.Kind != ColumnRule.Content.Count) continue;
            if (column.Measures[0].Of is null) listed.Measures.Add(column.Measures[0].Name);
            var text = row[name];
            var (unit, count) = column.Measures[0].In(own);
            if (text == HiddenText) Hidden.Add((unit, count));
            else if (long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value)) Add(unit, count, value);
            if (column.AtLeast > 0) AtLeast[(unit, count)] = column.AtLeast;
        }
    }
}
