namespace ScreenStats.Statistics.Cadence.Courses;

/// <summary>Who gets symptoms, when they begin, and who isolates then of their own accord.</summary>
/// <remarks>
/// Days from infection to the first symptoms are lognormal: their logarithm is normal with mean ln(median) and standard deviation
/// <see cref="LogSpread"/>. Onset is independent of screens, given the age of the infection.
/// </remarks>
public readonly record struct SymptomOnset
{
    /// <summary>Makes the onset.</summary>
    /// <param name="share">The share of infections that ever give symptoms, in [0, 1].</param>
    /// <param name="medianDays">The median of the days from infection to symptoms, above 0 and at most <see cref="InfectionCourse.LongestDays"/>.</param>
    /// <param name="logSpread">The standard deviation of the logarithm of these days, 0 to 2; at 0 all begin at the median.</param>
    /// <param name="isolationShare">The chance that a person with symptoms isolates at their onset, in [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public SymptomOnset(double share, double medianDays, double logSpread, double isolationShare)
    {
        Guard.Probability(share);
        if (!(medianDays is > 0 and <= InfectionCourse.LongestDays))
            throw new ArgumentOutOfRangeException(nameof(medianDays), medianDays, "The median days to symptoms must lie above 0, up to 3,660.");
        if (!(logSpread is >= 0 and <= 2))
            throw new ArgumentOutOfRangeException(nameof(logSpread), logSpread, "The standard deviation of the logarithm of the days to symptoms must lie between 0 and 2.");
        Guard.Probability(isolationShare);
        Share = share;
        MedianDays = medianDays;
        LogSpread = logSpread;
        IsolationShare = isolationShare;
    }

    /// <summary>The share of infections that ever give symptoms.</summary>
    public double Share { get; }

    /// <summary>The median of the days from infection to symptoms.</summary>
    public double MedianDays { get; }

    /// <summary>The standard deviation of the logarithm of these days.</summary>
    public double LogSpread { get; }

    /// <summary>The chance that a person with symptoms isolates at their onset.</summary>
    public double IsolationShare { get; }
}
