using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>What a column of a table, or a figure of its rows, stands for.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Measures">The count itself, or the counts of the row's unit that the figure is drawn from.</param>
internal sealed record ColumnRule(ColumnRule.Content Kind, ImmutableArray<string> Measures)
{
    /// <summary>Names, dates, words and stated figures: no count of people or runs is in them.</summary>
    public static ColumnRule Free { get; } = new(Content.Free, []);

    /// <summary>Drawn from counts that are shown nowhere (by person, by site and week, by the pool that was judged): hidden wherever small counts are.</summary>
    public static ColumnRule Finer { get; } = new(Content.Finer, []);

    /// <summary>What a column holds.</summary>
    public enum Content
    {
        /// <summary>No count.</summary>
        Free = 0,

        /// <summary>A count.</summary>
        Count = 1,

        /// <summary>A figure drawn from counts of the same unit.</summary>
        Drawn = 2,

        /// <summary>A figure drawn from finer counts.</summary>
        Finer = 3,
    }

    /// <summary>A count.</summary>
    public static ColumnRule Count(string measure) => new(Content.Count, [measure]);

    /// <summary>A figure drawn from counts of the same unit.</summary>
    public static ColumnRule Drawn(params ImmutableArray<string> measures) => new(Content.Drawn, measures);
}
