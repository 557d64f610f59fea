using System.Globalization;

namespace ScreenStats.Statistics.Prevalence;

/// <summary>What is known of one share after the counts.</summary>
public sealed record PosteriorSummary
{
    internal PosteriorSummary(double mean, double standardDeviation, double median, Interval equalTailed, Interval shortest, double confidence)
    {
        Mean = mean;
        StandardDeviation = standardDeviation;
        Median = median;
        EqualTailed = equalTailed;
        Shortest = shortest;
        Confidence = confidence;
    }

    /// <summary>The mean.</summary>
    public double Mean { get; }

    /// <summary>The standard deviation; 0 for a share taken as exact.</summary>
    public double StandardDeviation { get; }

    /// <summary>The share that is as likely too high as too low.</summary>
    public double Median { get; }

    /// <summary>The interval that leaves the same probability below and above.</summary>
    public Interval EqualTailed { get; }

    /// <summary>The shortest interval of that probability; it ends at 0 or 1 where the density is highest there.</summary>
    public Interval Shortest { get; }

    /// <summary>The probability inside either interval, in (0, 1).</summary>
    public double Confidence { get; }

    /// <summary>The summary in one line, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"mean {Mean}, median {Median}, {EqualTailed}, shortest {Shortest}");

    internal static PosteriorSummary Exact(double value, double confidence) =>
        new(value, 0, value, new Interval(value, value), new Interval(value, value), confidence);

    internal PosteriorSummary Complement() => new(
        1 - Mean, StandardDeviation, 1 - Median, new Interval(1 - EqualTailed.Upper, 1 - EqualTailed.Lower),
        new Interval(1 - Shortest.Upper, 1 - Shortest.Lower), Confidence);
}
