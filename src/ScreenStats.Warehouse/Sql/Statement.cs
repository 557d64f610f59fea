using System.Collections.Immutable;

namespace ScreenStats.Warehouse.Sql;

/// <summary>One query.</summary>
/// <param name="Text">Its text; parameters are <c>$1</c>, <c>$2</c> and so on.</param>
/// <param name="Parameters">Their values: lists of texts or of whole numbers.</param>
internal sealed record Statement(string Text, ImmutableArray<object> Parameters)
{
    public Statement(string text)
        : this(text, [])
    {
    }

    /// <summary>What the query is for, in words for messages.</summary>
    public string What { get; init; } = "";

    /// <summary>True where shards have to group by themselves: what moves is counts, or lines of people.</summary>
    public bool Grouped { get; init; }
}
