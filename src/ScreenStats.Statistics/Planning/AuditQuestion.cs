namespace ScreenStats.Statistics.Planning;

/// <summary>What is expected of a program, and how well its sensitivity shall be known.</summary>
public sealed record AuditQuestion
{
    /// <summary>The expected sensitivity, in (0, 1).</summary>
    public required double Sensitivity { get; init; }

    /// <summary>The expected specificity, in (0, 1).</summary>
    public required double Specificity { get; init; }

    /// <summary>The expected prevalence among those screened, in (0, 1).</summary>
    public required double Prevalence { get; init; }

    /// <summary>Upper minus lower limit of the sensitivity, in (0, 1).</summary>
    public required double Width { get; init; }

    /// <summary>How many screens the program makes in the time in question, 1 or more.</summary>
    public required long Screens { get; init; }

    /// <summary>Confidence in (0, 1), two-sided.</summary>
    public double Confidence { get; init; } = 0.95;

    internal void Check()
    {
        Inside(Sensitivity, nameof(Sensitivity));
        Inside(Specificity, nameof(Specificity));
        Inside(Prevalence, nameof(Prevalence));
        Inside(Width, nameof(Width));
        Inside(Confidence, nameof(Confidence));
        if (Screens is < 1 or > SampleSize.Largest)
            throw new ArgumentOutOfRangeException(nameof(Screens), Screens, "The number of screens must be at least 1 and at most a million million.");
    }

    private static void Inside(double value, string name)
    {
        if (!(value is > 0 and < 1)) throw new ArgumentOutOfRangeException(name, value, $"The {name} lies strictly between 0 and 1.");
    }
}
