namespace ScreenStats.Statistics.Comparison;

/// <summary>Names of measures and methods for two proportions, as they stand in tables and on the command line.</summary>
public static class ContrastMethods
{
    /// <summary>The measures, in the order of the enumeration.</summary>
    public static IReadOnlyList<ContrastMeasure> Measures { get; } = [ContrastMeasure.Difference, ContrastMeasure.Ratio, ContrastMeasure.OddsRatio];

    /// <summary>The methods of a measure for two independent groups, the one to prefer first.</summary>
    /// <param name="measure">The measure.</param>
    /// <returns>Its methods.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public static IReadOnlyList<ContrastMethod> Of(ContrastMeasure measure) => measure switch
    {
        ContrastMeasure.Difference => [ContrastMethod.Newcombe, ContrastMethod.NewcombeContinuity, ContrastMethod.MiettinenNurminen],
        ContrastMeasure.Ratio => [ContrastMethod.Koopman, ContrastMethod.MiettinenNurminen, ContrastMethod.Katz],
        ContrastMeasure.OddsRatio => [ContrastMethod.Woolf, ContrastMethod.ConditionalExact],
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure this library knows."),
    };

    /// <summary>The measure's name.</summary>
    /// <param name="measure">The measure.</param>
    /// <returns>For instance <c>odds-ratio</c>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public static string Name(this ContrastMeasure measure) => measure switch
    {
        ContrastMeasure.Difference => "difference",
        ContrastMeasure.Ratio => "ratio",
        ContrastMeasure.OddsRatio => "odds-ratio",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure this library knows."),
    };

    /// <summary>The method's name.</summary>
    /// <param name="method">The method.</param>
    /// <returns>For instance <c>miettinen-nurminen</c>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public static string Name(this ContrastMethod method) => method switch
    {
        ContrastMethod.Newcombe => "newcombe",
        ContrastMethod.NewcombeContinuity => "newcombe-continuity",
        ContrastMethod.MiettinenNurminen => "miettinen-nurminen",
        ContrastMethod.Katz => "katz",
        ContrastMethod.Koopman => "koopman",
        ContrastMethod.Woolf => "woolf",
        ContrastMethod.ConditionalExact => "conditional-exact",
        ContrastMethod.NewcombePaired => "newcombe-paired",
        _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method this library knows."),
    };
}
