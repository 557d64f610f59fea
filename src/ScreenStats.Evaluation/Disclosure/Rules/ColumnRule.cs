using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>What a column of a table, or a figure of its rows, stands for.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Measures">The count itself, or the counts that the figure is drawn from.</param>
internal sealed record ColumnRule(ColumnRule.Content Kind, ImmutableArray<Measure> Measures)
{
    /// <summary>Names, dates, words and stated figures: no count of people or runs is in them.</summary>
    public static ColumnRule Free { get; } = new(Content.Free, []);

    /// <summary>Drawn from counts that are shown nowhere (by person, by site and week, by the pool that was judged): hidden wherever small counts are.</summary>
    public static ColumnRule Finer { get; } = new(Content.Finer, []);

    /// <summary>The least that a reader knows the count to be because there is a row at all.</summary>
    public long AtLeast { get; init; }

    /// <summary>For an order statistic, the share of the values that lies beyond it, on its smaller side; else 1.</summary>
    public double Beyond { get; init; } = 1;

    /// <summary>For a widened limit, what it is a limit of.</summary>
    public Shape Of { get; init; }

    /// <summary>What a widened limit is a limit of.</summary>
    public enum Shape
    {
        /// <summary>A share, by Wilson's method.</summary>
        Share = 0,

        /// <summary>Trials for each event: one divided by a share.</summary>
        Ratio = 1,

        /// <summary>The least specificity that positivity alone proves.</summary>
        Proof = 2,

        /// <summary>Another figure between 0 and 1.</summary>
        Other = 3,
    }

    /// <summary>What a column holds.</summary>
    public enum Content
    {
        /// <summary>No count.</summary>
        Free = 0,

        /// <summary>A count.</summary>
        Count = 1,

        /// <summary>A figure drawn from counts.</summary>
        Drawn = 2,

        /// <summary>A figure drawn from finer counts.</summary>
        Finer = 3,

        /// <summary>A limit that rests on finer counts too, and may stand in coarse steps (see <see cref="Tables.CoarseLimits"/>).</summary>
        Widened = 4,
    }

    /// <summary>A count.</summary>
    public static ColumnRule Count(Measure measure) => new(Content.Count, [measure]);

    /// <summary>A count that cannot be none, or the row would not be there.</summary>
    public static ColumnRule Present(Measure measure) => Count(measure) with { AtLeast = 1 };

    /// <summary>A figure drawn from counts.</summary>
    public static ColumnRule Drawn(params ImmutableArray<Measure> measures) => new(Content.Drawn, measures);

    /// <summary>The value below or above which a share of all counted ones lies: shown where at least the threshold of them lie beyond it.</summary>
    public static ColumnRule Rank(double beyond, Measure measure) => new(Content.Drawn, [measure]) { Beyond = beyond };

    /// <summary>A widened limit of a share: its trials, its events.</summary>
    public static ColumnRule Widened(Measure trials, Measure events, Shape of = Shape.Share) => new(Content.Widened, [trials, events]) { Of = of };

    /// <summary>A widened limit of another figure, drawn from counts.</summary>
    public static ColumnRule WidenedOther(params ImmutableArray<Measure> measures) => new(Content.Widened, measures) { Of = Shape.Other };
}
