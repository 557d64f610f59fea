namespace ScreenStats.Statistics.Accuracy;

/// <summary>Several tests of one person taken together, as if each erred by itself.</summary>
/// <remarks>
/// <para>Conditional independence: within people with the condition, and within people without, one result says nothing about the next. All
/// positive: sensitivities multiply, Sp = 1 - (1 - Sp1)(1 - Sp2)...; any positive: Se = 1 - (1 - Se1)(1 - Se2)..., specificities multiply.
/// Limits come by the delta method, those of a repeated test from one and the same statement.</para>
/// <para>Misses repeat within a person, and false positives may: what is computed here is the best that repeating can do. In a serial antigen
/// study (letter of the US Food and Drug Administration, 1 November 2022) independence gives a sensitivity of 54.6 % for two and 89.2 % for
/// three tests of infected people without symptoms from the first day; 39.3 % and 56.4 % were seen, part of which is drop-out.</para>
/// </remarks>
public static class SerialTesting
{
    /// <summary>The same test repeated.</summary>
    /// <param name="screen">Its accuracy.</param>
    /// <param name="times">How often it is taken, 1 to 100.</param>
    /// <param name="rule">When the results count as positive together.</param>
    /// <returns>The accuracy of all together.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Times outside 1 to 100, or an unknown rule.</exception>
    public static ScreenAccuracy Repeated(ScreenAccuracy screen, int times, PositiveRule rule)
    {
        ArgumentNullException.ThrowIfNull(screen);
        if (times is < 1 or > 100) throw new ArgumentOutOfRangeException(nameof(times), times, "A test is repeated 1 to 100 times.");
        return times == 1
            ? screen
            : Apply(rule, screen.Sensitivity, screen.Specificity, statement => Power(statement, times));
    }

    /// <summary>Different tests in a row, with accuracies from different studies.</summary>
    /// <param name="screens">At least one; for instance a screen, then its confirmatory test.</param>
    /// <param name="rule">When the results count as positive together; <see cref="PositiveRule.All"/> for a confirmed positive.</param>
    /// <returns>The accuracy of all together.</returns>
    /// <exception cref="ArgumentException">No test.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An unknown rule.</exception>
    public static ScreenAccuracy InARow(IReadOnlyList<ScreenAccuracy> screens, PositiveRule rule)
    {
        ArgumentNullException.ThrowIfNull(screens);
        if (screens.Count == 0) throw new ArgumentException("At least one test is needed.", nameof(screens));
        var together = screens[0];
        foreach (var next in screens.Skip(1))
        {
            var before = together;
            together = rule switch
            {
                PositiveRule.All => new ScreenAccuracy(
                    Product(before.Sensitivity, next.Sensitivity), Product(before.Specificity.Complement(), next.Specificity.Complement()).Complement()),
                PositiveRule.Any => new ScreenAccuracy(
                    Product(before.Sensitivity.Complement(), next.Sensitivity.Complement()).Complement(), Product(before.Specificity, next.Specificity)),
                _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not a rule this library knows."),
            };
        }

        return together;
    }

    private static ScreenAccuracy Apply(
        PositiveRule rule, AccuracyStatement sensitivity, AccuracyStatement specificity, Func<AccuracyStatement, AccuracyStatement> power) => rule switch
        {
            PositiveRule.All => new ScreenAccuracy(power(sensitivity), power(specificity.Complement()).Complement()),
            PositiveRule.Any => new ScreenAccuracy(power(sensitivity.Complement()).Complement(), power(specificity)),
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not a rule this library knows."),
        };

    private static AccuracyStatement Power(AccuracyStatement rate, int times)
    {
        var slope = times * Math.Pow(rate.AdjustedValue, times - 1);
        return AccuracyStatement.Combined(Math.Pow(rate.Value, times), Math.Pow(rate.AdjustedValue, times), rate.Variance * slope * slope);
    }

    private static AccuracyStatement Product(AccuracyStatement one, AccuracyStatement other) => AccuracyStatement.Combined(
        one.Value * other.Value,
        one.AdjustedValue * other.AdjustedValue,
        (one.Variance * other.AdjustedValue * other.AdjustedValue) + (other.Variance * one.AdjustedValue * one.AdjustedValue));
}
