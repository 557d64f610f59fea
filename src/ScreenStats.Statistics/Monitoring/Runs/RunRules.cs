namespace ScreenStats.Statistics.Monitoring.Runs;

/// <summary>Names and words of the run rules.</summary>
public static class RunRules
{
    /// <summary>All rules, in the order of the enumeration.</summary>
    public static IReadOnlyList<RunRule> All { get; } = [RunRule.OutsideLimits, RunRule.TwoOfThreeFar, RunRule.FourOfFiveOff, RunRule.EightOnOneSide];

    /// <summary>The rule's name.</summary>
    /// <param name="rule">The rule.</param>
    /// <returns>For instance <c>outside-limits</c>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public static string Name(this RunRule rule) => rule switch
    {
        RunRule.OutsideLimits => "outside-limits",
        RunRule.TwoOfThreeFar => "two-of-three-far",
        RunRule.FourOfFiveOff => "four-of-five-off",
        RunRule.EightOnOneSide => "eight-on-one-side",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not a rule this library knows."),
    };

    /// <summary>What the rule says.</summary>
    /// <param name="rule">The rule.</param>
    /// <returns>A clause without capital or full stop.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public static string Describe(this RunRule rule) => rule switch
    {
        RunRule.OutsideLimits => "a point outside the limits",
        RunRule.TwoOfThreeFar => "two of three points in a row more than two standard errors from the centre, on one side",
        RunRule.FourOfFiveOff => "four of five points in a row more than one standard error from the centre, on one side",
        RunRule.EightOnOneSide => "eight points in a row on one side of the centre",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not a rule this library knows."),
    };
}
