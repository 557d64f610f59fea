namespace ScreenStats.Statistics.Trends.SlopeChanges;

/// <summary>How changes of slope are sought, and what their limits allow for.</summary>
public sealed record SlopeChangeOptions
{
    /// <summary>The most changes there may be, 0 to 4.</summary>
    public int MostChanges { get; init; } = 3;

    /// <summary>The fewest periods of a segment, 2 or more; a period on a change counts to both sides.</summary>
    public int LeastPeriods { get; init; } = 4;

    /// <summary>How the number of changes is chosen.</summary>
    public SlopeChangeSelection Selection { get; init; } = SlopeChangeSelection.Permutation;

    /// <summary>The chance, in (0, 1), of finding more changes than there are that the permutation tests allow together.</summary>
    public double Significance { get; init; } = 0.05;

    /// <summary>Permutations of each test, 99 to 1,000,000.</summary>
    public int Permutations { get; init; } = 999;

    /// <summary>
    /// A permutation test stops once so many permutations were at least as large, 0 (never) to 1,000,000, though never while it might still reject: the
    /// choice is that of all permutations. Its p-value is then so many over those drawn. Source: Besag J, Clifford P, Biometrika 1991;78:301-304 (from memory).
    /// </summary>
    public int EnoughAsLarge { get; init; }

    /// <summary>What the permutations start from: the same seed gives the same choice.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>What the standard errors allow for.</summary>
    public DispersionScale Scale { get; init; } = DispersionScale.PearsonAtLeastOne;

    /// <summary>The confidence of all limits, in (0, 1).</summary>
    public double Confidence { get; init; } = 0.95;

    internal void Check()
    {
        if (MostChanges is < 0 or > 4) throw new ArgumentOutOfRangeException(nameof(MostChanges), MostChanges, "The most changes must lie between 0 and 4.");
        if (LeastPeriods < 2) throw new ArgumentOutOfRangeException(nameof(LeastPeriods), LeastPeriods, "A segment has at least 2 periods.");
        if (!Enum.IsDefined(Selection)) throw new ArgumentOutOfRangeException(nameof(Selection), Selection, "Not a selection this library knows.");
        if (!(Significance > 0 && Significance < 1)) throw new ArgumentOutOfRangeException(nameof(Significance), Significance, "A significance lies strictly between 0 and 1, for instance 0.05.");
        if (Permutations is < 99 or > 1_000_000) throw new ArgumentOutOfRangeException(nameof(Permutations), Permutations, "The permutations must lie between 99 and 1,000,000.");
        if (EnoughAsLarge is < 0 or > 1_000_000) throw new ArgumentOutOfRangeException(nameof(EnoughAsLarge), EnoughAsLarge, "Enough permutations as large must lie between 0 and 1,000,000.");
        if (!Enum.IsDefined(Scale)) throw new ArgumentOutOfRangeException(nameof(Scale), Scale, "Not a scale this library knows.");
        Guard.Confidence(Confidence);
    }
}
