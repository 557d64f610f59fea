using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Tables;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>What the rows and columns of one table stand for.</summary>
/// <param name="Id">Base name of the table's file.</param>
/// <param name="Keep">Which rows may be released at all; the others stand on counts that are too fine.</param>
/// <param name="Unit">The part of the program that a row speaks of.</param>
/// <param name="Columns">The rule of each column, and of figures that stand beside the row in findings.json; by name with underscores.</param>
internal sealed record TableRule(string Id, Func<Row, bool> Keep, Func<Row, CountUnit> Unit, Func<Row, IReadOnlyDictionary<string, ColumnRule>> Columns)
{
    /// <summary>Whether the release can do without the table, where it makes the others unprovable.</summary>
    public bool Optional { get; init; }
}
