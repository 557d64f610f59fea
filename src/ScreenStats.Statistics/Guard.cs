using System.Runtime.CompilerServices;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics;

/// <summary>Checks of arguments that are the caller's to get right.</summary>
internal static class Guard
{
    public static void Finite(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!double.IsFinite(value)) throw new ArgumentOutOfRangeException(name, value, $"The {name} must be a finite number.");
    }

    public static void Confidence(double confidence, [CallerArgumentExpression(nameof(confidence))] string name = "")
    {
        if (!(confidence > 0 && confidence < 1))
            throw new ArgumentOutOfRangeException(name, confidence, "A confidence lies strictly between 0 and 1, for instance 0.95.");
    }

    public static void Confidence(double confidence, IntervalSide side, [CallerArgumentExpression(nameof(confidence))] string name = "")
    {
        if (side is not (IntervalSide.Both or IntervalSide.Lower or IntervalSide.Upper))
            throw new ArgumentOutOfRangeException(nameof(side), side, "Not a side this library knows.");
        Confidence(confidence, name);
        if (side != IntervalSide.Both && confidence <= 0.5)
            throw new ArgumentOutOfRangeException(name, confidence, "The confidence of a one-sided limit lies strictly between 0.5 and 1, for instance 0.95.");
    }

    public static void Probability(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= 0 && value <= 1))
            throw new ArgumentOutOfRangeException(name, value, $"The {name} must lie between 0 and 1.");
    }

    public static void NotNegative(long value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (value < 0) throw new ArgumentOutOfRangeException(name, value, $"The {name} must be 0 or more.");
    }

    public static void Counts(long successes, long trials)
    {
        if (trials < 0) throw new ArgumentOutOfRangeException(nameof(trials), trials, "The number of trials must be 0 or more.");
        if (successes < 0 || successes > trials)
            throw new ArgumentOutOfRangeException(nameof(successes), successes, "The number of successes must lie between 0 and the number of trials.");
    }

    public static void Counts(double successes, double trials)
    {
        if (!(trials >= 0) || !double.IsFinite(trials))
            throw new ArgumentOutOfRangeException(nameof(trials), trials, "The number of trials must be a finite number, 0 or more.");
        if (!(successes >= 0 && successes <= trials))
            throw new ArgumentOutOfRangeException(nameof(successes), successes, "The number of successes must lie between 0 and the number of trials.");
    }

    public static void DesignEffect(double designEffect, [CallerArgumentExpression(nameof(designEffect))] string name = "")
    {
        if (!(designEffect >= 1) || !double.IsFinite(designEffect))
            throw new ArgumentOutOfRangeException(name, designEffect, "A design effect must be a finite number, 1 or more.");
    }

    /// <summary>A time in days, from 0 to a billion: no sum or quotient of such times overflows.</summary>
    public static void Days(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value is >= 0 and <= 1e9)) throw new ArgumentOutOfRangeException(name, value, $"The {name} must be days from 0 to a billion.");
    }

    /// <summary>A finite amount of either sign.</summary>
    public static void SignedAmount(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value is >= -1e15 and <= 1e15)) throw new ArgumentOutOfRangeException(name, value, $"The {name} must be a number from -1e15 to 1e15.");
    }

    /// <summary>A finite amount, 0 or more.</summary>
    public static void Amount(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value is >= 0 and <= 1e15)) throw new ArgumentOutOfRangeException(name, value, $"The {name} must be a number from 0 to 1e15.");
    }
}
