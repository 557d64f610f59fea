namespace ScreenStats.Evaluation.Changes.Differences;

/// <summary>How the days of two evaluations lie.</summary>
public enum SpanRelation
{
    /// <summary>No day in common, the earlier one first.</summary>
    Separate = 0,

    /// <summary>The later one has every day of the earlier one, and more.</summary>
    Grown = 1,

    /// <summary>Some days in common, and each has days of its own.</summary>
    Overlapping = 2,

    /// <summary>The same days.</summary>
    SameDays = 3,

    /// <summary>The earlier one has every day of the later one, and more before it.</summary>
    Shortened = 4,
}
