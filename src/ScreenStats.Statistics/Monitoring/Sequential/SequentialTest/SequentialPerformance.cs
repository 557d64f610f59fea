namespace ScreenStats.Statistics.Monitoring.Sequential.SequentialTest;

/// <summary>What a sequential test does at a true rate, exactly.</summary>
public sealed record SequentialPerformance
{
    internal SequentialPerformance(double rate, double acceptance, double rejection, double undecided, double average, long last)
    {
        Rate = rate;
        Acceptance = acceptance;
        Rejection = rejection;
        Undecided = undecided;
        AverageSampleNumber = average;
        LastObservation = last;
    }

    /// <summary>The true rate.</summary>
    public double Rate { get; }

    /// <summary>The chance of acceptance.</summary>
    public double Acceptance { get; }

    /// <summary>The chance of rejection.</summary>
    public double Rejection { get; }

    /// <summary>The chance that nothing is decided by <see cref="LastObservation"/>: below 1e-15 unless that is the largest number asked for.</summary>
    public double Undecided { get; }

    /// <summary>The average number of observations to the decision, or to <see cref="LastObservation"/> where there is none by then.</summary>
    public double AverageSampleNumber { get; }

    /// <summary>The observation with which the sum was ended.</summary>
    public long LastObservation { get; }
}
