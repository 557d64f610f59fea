namespace ScreenStats.Statistics.Cadence.Intervals;

/// <summary>How often a person is screened, and with what sensitivity while an infection can be detected.</summary>
public sealed record ScreeningRoutine
{
    /// <summary>The shortest interval: a millionth of a day.</summary>
    public const double ShortestInterval = 1e-6;

    /// <summary>Makes a routine.</summary>
    /// <param name="everyDays">Days from one screen to the next, from <see cref="ShortestInterval"/> to a billion; a mean where screens come at random.</param>
    /// <param name="sensitivity">The chance that a screen within the detectable window is positive, in [0, 1], the same for each and independent of the others.</param>
    /// <param name="timing">How the screens lie in time.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, or an unknown timing.</exception>
    public ScreeningRoutine(double everyDays, double sensitivity, ScreenTiming timing = ScreenTiming.Regular)
    {
        if (!(everyDays is >= ShortestInterval and <= 1e9))
            throw new ArgumentOutOfRangeException(nameof(everyDays), everyDays, "The days between screens must be a number from a millionth to a billion.");
        Guard.Probability(sensitivity);
        if (timing is not (ScreenTiming.Regular or ScreenTiming.AtRandom))
            throw new ArgumentOutOfRangeException(nameof(timing), timing, "Not a timing this library knows.");
        EveryDays = everyDays;
        Sensitivity = sensitivity;
        Timing = timing;
    }

    /// <summary>Days from one screen to the next.</summary>
    public double EveryDays { get; }

    /// <summary>The chance that a screen within the detectable window is positive.</summary>
    public double Sensitivity { get; }

    /// <summary>How the screens lie in time.</summary>
    public ScreenTiming Timing { get; }
}
