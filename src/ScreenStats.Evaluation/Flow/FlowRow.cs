using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Flow;

/// <summary>One box of the flow: so many rows, runs or specimens, which came from another box.</summary>
/// <param name="Key">Name of the box, its origin before it, such as <c>rows/counted/positive/tested/confirmed</c>.</param>
/// <param name="Stage">Where in the flow it stands: <c>rows</c>, <c>runs</c>, <c>confirmatory-test</c>, <c>confirmatory-result</c>, <c>specimen-rows</c> or <c>specimens</c>.</param>
/// <param name="Outcome">What became of them, such as <c>set-aside</c> or <c>confirmed</c>.</param>
/// <param name="ComesFrom">The box that they come from; empty where something begins.</param>
/// <param name="Count">Number of rows, runs or specimens.</param>
/// <param name="FromCount">Number in the box that they come from; null where something begins.</param>
/// <param name="Proportion">The share with its limits, where it says something of more than these rows; null for a plain share.</param>
public sealed record FlowRow(string Key, string Stage, string Outcome, string ComesFrom, long Count, long? FromCount, ProportionFinding? Proportion)
{
    /// <summary>This box's share of the one that it comes from, in [0, 1]; null where something begins, or came from nothing.</summary>
    public double? Share => FromCount is > 0 ? (double)Count / FromCount.Value : null;
}
