namespace ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

/// <summary>How seldom an alarm may be false: once in so many observations, on average.</summary>
public sealed record FalseAlarmTarget
{
    private FalseAlarmTarget(double runs, double? days, double? runsPerDay)
    {
        Runs = runs;
        Days = days;
        RunsPerDay = runsPerDay;
    }

    /// <summary>The average number of observations to a false alarm that is wanted at least.</summary>
    public double Runs { get; }

    /// <summary>The same in days; null where it was not stated in days.</summary>
    public double? Days { get; }

    /// <summary>Observations a day; null where it was not stated in days.</summary>
    public double? RunsPerDay { get; }

    /// <summary>One false alarm in so many observations.</summary>
    /// <param name="runs">Observations, 1 or more, finite.</param>
    /// <returns>The target.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1.</exception>
    public static FalseAlarmTarget OnceInRuns(double runs)
    {
        if (!(runs >= 1) || !double.IsFinite(runs)) throw new ArgumentOutOfRangeException(nameof(runs), runs, "One false alarm in 1 run or more.");
        return new FalseAlarmTarget(runs, null, null);
    }

    /// <summary>One false alarm in so many days at a volume.</summary>
    /// <param name="days">Days, above 0, finite.</param>
    /// <param name="runsPerDay">Observations a day, above 0, finite.</param>
    /// <returns>The target.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number not above 0, or their product below 1.</exception>
    public static FalseAlarmTarget OnceInDays(double days, double runsPerDay)
    {
        if (!(days > 0) || !double.IsFinite(days)) throw new ArgumentOutOfRangeException(nameof(days), days, "The number of days must be finite and above 0.");
        if (!(runsPerDay > 0) || !(days * runsPerDay >= 1) || !double.IsFinite(days * runsPerDay))
            throw new ArgumentOutOfRangeException(nameof(runsPerDay), runsPerDay, "There must be at least one run in the days of the target.");
        return new FalseAlarmTarget(days * runsPerDay, days, runsPerDay);
    }
}
