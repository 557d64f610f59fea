namespace ScreenStats.Evaluation.Comparisons.Rows;

/// <summary>Words of comparisons as tables print them.</summary>
public static class ComparisonNames
{
    /// <summary>The word of a measure.</summary>
    /// <param name="measure">The measure.</param>
    /// <returns>For instance <c>invalid-runs</c>.</returns>
    public static string Of(ComparisonMeasure measure) => measure switch
    {
        ComparisonMeasure.Positivity => "positivity",
        ComparisonMeasure.InvalidRuns => "invalid-runs",
        ComparisonMeasure.Refuted => "refuted",
        _ => throw Unknown(measure),
    };

    /// <summary>The word of a basis.</summary>
    /// <param name="basis">The basis.</param>
    /// <returns>For instance <c>without-flagged-lots</c>.</returns>
    public static string Of(ComparisonBasis basis) => basis switch
    {
        ComparisonBasis.All => "all",
        ComparisonBasis.WithoutFlaggedLots => "without-flagged-lots",
        ComparisonBasis.Routine => "routine",
        ComparisonBasis.RoutineWithoutFlaggedLots => "routine-without-flagged-lots",
        _ => throw Unknown(basis),
    };

    /// <summary>The word of a standing; empty where a level cannot be placed.</summary>
    /// <param name="standing">The standing.</param>
    /// <returns><c>above</c>, <c>within</c>, <c>below</c> or nothing.</returns>
    public static string Of(ComparisonStanding standing) => standing switch
    {
        ComparisonStanding.NotPlaced => "",
        ComparisonStanding.Within => "within",
        ComparisonStanding.Above => "above",
        ComparisonStanding.Below => "below",
        _ => throw Unknown(standing),
    };

    private static ArgumentOutOfRangeException Unknown(Enum value) => new(nameof(value), value, "Not a member of the enumeration.");
}
