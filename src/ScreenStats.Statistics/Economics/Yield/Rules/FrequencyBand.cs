namespace ScreenStats.Statistics.Economics.Yield.Rules;

/// <summary>From which yield on how often people are screened.</summary>
public readonly record struct FrequencyBand
{
    /// <summary>Makes a band.</summary>
    /// <param name="from">The yield at which it begins, in [0, 1].</param>
    /// <param name="everyDays">Days from one screen to the next, from a millionth to a billion; null for no screening.</param>
    /// <param name="beginsAbove">Whether it begins above that yield, and not with it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public FrequencyBand(double from, double? everyDays, bool beginsAbove = false)
    {
        Guard.Probability(from);
        if (everyDays is { } days && !(days is >= 1e-6 and <= 1e9))
            throw new ArgumentOutOfRangeException(nameof(everyDays), everyDays, "The days between screens must be a number from a millionth to a billion.");
        From = from;
        EveryDays = everyDays;
        BeginsAbove = beginsAbove;
    }

    /// <summary>The yield at which it begins.</summary>
    public double From { get; }

    /// <summary>Days from one screen to the next; null for no screening.</summary>
    public double? EveryDays { get; }

    /// <summary>Whether it begins above <see cref="From"/>, and not with it.</summary>
    public bool BeginsAbove { get; }

    internal bool Holds(double share) => BeginsAbove ? share > From : share >= From;
}
