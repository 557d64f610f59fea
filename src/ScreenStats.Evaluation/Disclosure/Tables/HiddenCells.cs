using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>Which rows and cells of a release are hidden, by the counts they show or are drawn from.</summary>
internal sealed class HiddenCells(CountModel model, IReadOnlySet<(CountUnit, string)> ambiguous)
{
    /// <summary>Whether a row may be released at all.</summary>
    public static bool Keeps(string table, Row row) => TableRules.Of(table) is { } rule && rule.Keep(row);

    /// <summary>Whether a figure of a row is hidden; one without a rule is.</summary>
    /// <param name="table">Table of the row.</param>
    /// <param name="row">The row.</param>
    /// <param name="name">Name of the column or figure, with underscores.</param>
    public bool Hides(string table, Row row, string name)
    {
        if (TableRules.Of(table) is not { } rule || !rule.Columns(row).TryGetValue(name, out var column)) return true;
        return column.Kind switch
        {
            ColumnRule.Content.Free => false,
            ColumnRule.Content.Finer => true,
            _ => column.Measures.Any(measure => Hides(rule.Unit(row), measure)),
        };
    }

    /// <summary>Whether a count is hidden; one that is not in the model is.</summary>
    public bool Hides(CountUnit unit, string measure) =>
        ambiguous.Contains((unit, measure)) || model.Find(unit, measure) is not { } variable || !variable.Published || variable.Hidden;

    /// <summary>The table as it may be seen.</summary>
    public ITable Veil(ITable table) => new VeiledTable(table, this);
}
