using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Rules;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>Which rows and cells of a release are hidden, by the counts they show or are drawn from.</summary>
/// <param name="model">The counts.</param>
/// <param name="ambiguous">Counts that two tables state differently.</param>
/// <param name="threshold">Counts from 1 to one less are hidden.</param>
/// <param name="without">Tables that are left out.</param>
/// <param name="coarse">The widened limits that may stand in coarse steps.</param>
internal sealed class HiddenCells(CountModel model, IReadOnlySet<(CountUnit, string)> ambiguous, long threshold, IReadOnlySet<string> without, CoarseLimits coarse)
{
    private readonly HashSet<(string By, string Measure)> partlyHidden =
        [.. model.Variables.Where(variable => variable.Hidden || !variable.Published).Select(variable => (variable.Unit.By, variable.Measure))];

    /// <summary>Whether a table may be released at all.</summary>
    public bool Keeps(string table) => TableRules.Of(table) is not null && !without.Contains(table);

    /// <summary>Whether a row may be released at all.</summary>
    public bool Keeps(string table, Row row) => Keeps(table) && TableRules.Of(table)!.Keep(row);

    /// <summary>Whether a figure of a row is hidden; one without a rule is.</summary>
    /// <param name="table">Table of the row.</param>
    /// <param name="row">The row.</param>
    /// <param name="name">Name of the column or figure, with underscores.</param>
    public bool Hides(string table, Row row, string name) =>
        without.Contains(table) || TableRules.Of(table) is not { } rule || !rule.Columns(row).TryGetValue(name, out var column) || Hides(column, rule.Unit(row));

    /// <summary>Whether a figure of a part of the program is hidden.</summary>
    public bool Hides(ColumnRule column, CountUnit unit) => column.Kind switch
    {
        ColumnRule.Content.Free => false,
        ColumnRule.Content.Finer or ColumnRule.Content.Widened => true,
        _ => column.Measures.Any(measure => Hides(measure, unit)) || (column.Beyond < 1 && Math.Floor(column.Beyond * Value(column.Measures[0], unit)) < threshold),
    };

    /// <summary>What stands in place of a widened limit of a row: the limit in coarse steps, or nothing.</summary>
    public double? Coarse(string table, Row row, string name) =>
        Keeps(table, row) && TableRules.Of(table)!.Columns(row).TryGetValue(name, out var column) && column.Kind == ColumnRule.Content.Widened
            ? Coarse(column, TableRules.Of(table)!.Unit(row), name, row) : null;

    /// <summary>What stands in place of a widened limit: the limit in coarse steps, or nothing.</summary>
    public double? Coarse(ColumnRule column, CountUnit unit, string name, Row row) =>
        column.Kind == ColumnRule.Content.Widened && !column.Measures.Any(measure => Hides(measure, unit)) ? coarse.Of(column, unit, name, row) : null;

    /// <summary>Whether a count is hidden; one that is not in the model is.</summary>
    public bool Hides(CountUnit unit, string measure) =>
        ambiguous.Contains((unit, measure)) || model.Find(unit, measure) is not { } variable || !variable.Published || variable.Hidden;

    /// <summary>The table as it may be seen.</summary>
    public ITable Veil(ITable table) => new VeiledTable(table, this);

    private bool Hides(Measure measure, CountUnit own)
    {
        var (unit, name) = measure.In(own);
        return unit.Level == Measure.AllLevels ? partlyHidden.Contains((unit.By, name)) : Hides(unit, name);
    }

    private long Value(Measure measure, CountUnit own)
    {
        var (unit, name) = measure.In(own);
        return model.Find(unit, name)?.Value ?? 0;
    }
}
