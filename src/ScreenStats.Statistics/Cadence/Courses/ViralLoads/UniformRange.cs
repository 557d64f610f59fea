namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>A figure that lies anywhere between two ends with the same chance; equal ends: the same for everybody.</summary>
public readonly record struct UniformRange
{
    /// <summary>Makes a range.</summary>
    /// <param name="lower">The lower end, from -1e6 to 1e6.</param>
    /// <param name="upper">The upper end, not below <paramref name="lower"/>, to 1e6.</param>
    /// <exception cref="ArgumentOutOfRangeException">An end outside, or the upper one below the lower one.</exception>
    public UniformRange(double lower, double upper)
    {
        if (!(lower is >= -1e6 and <= 1e6)) throw new ArgumentOutOfRangeException(nameof(lower), lower, "The lower end must be a number from -1e6 to 1e6.");
        if (!(upper >= lower && upper <= 1e6)) throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper end must not lie below the lower end, nor above 1e6.");
        Lower = lower;
        Upper = upper;
    }

    /// <summary>The lower end.</summary>
    public double Lower { get; }

    /// <summary>The upper end.</summary>
    public double Upper { get; }

    internal double At(double share) => Lower + ((Upper - Lower) * share);
}
