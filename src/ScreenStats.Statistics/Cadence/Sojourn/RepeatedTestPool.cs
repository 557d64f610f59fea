namespace ScreenStats.Statistics.Cadence.Sojourn;

/// <summary>People of whom some have a condition and some are prone to a false positive, and what testing them costs.</summary>
public sealed record RepeatedTestPool
{
    /// <summary>People tested, above 0 and at most 1e15.</summary>
    public required double People { get; init; }

    /// <summary>Those with the condition, from 0 to all; an expected number need not be whole.</summary>
    public required double Cases { get; init; }

    /// <summary>The chance that one test of a person with the condition is positive, in [0, 1].</summary>
    public required double Sensitivity { get; init; }

    /// <summary>Those without it who can ever be positive, from 0 to all others.</summary>
    public required double ProneToFalsePositive { get; init; }

    /// <summary>The chance that one test of such a person is positive, in [0, 1].</summary>
    public required double FalsePositiveChance { get; init; }

    /// <summary>What the first test of a person costs, 0 or more.</summary>
    public double CostOfFirstTest { get; init; }

    /// <summary>What each further test costs, 0 or more.</summary>
    public double CostOfFurtherTest { get; init; }

    /// <summary>What it costs to work a positive up, 0 or more.</summary>
    public double CostOfWorkUp { get; init; }

    internal void Check()
    {
        if (!(People is > 0 and <= 1e15)) throw new ArgumentOutOfRangeException(nameof(People), People, "The people tested must be a number above 0 and at most 1e15.");
        if (!(Cases >= 0 && Cases <= People)) throw new ArgumentOutOfRangeException(nameof(Cases), Cases, "The cases must lie between 0 and the people tested.");
        if (!(ProneToFalsePositive >= 0 && ProneToFalsePositive <= People - Cases))
            throw new ArgumentOutOfRangeException(nameof(ProneToFalsePositive), ProneToFalsePositive, "Those prone to a false positive must lie between 0 and the people without the condition.");
        Guard.Probability(Sensitivity, nameof(Sensitivity));
        Guard.Probability(FalsePositiveChance, nameof(FalsePositiveChance));
        Guard.Amount(CostOfFirstTest, nameof(CostOfFirstTest));
        Guard.Amount(CostOfFurtherTest, nameof(CostOfFurtherTest));
        Guard.Amount(CostOfWorkUp, nameof(CostOfWorkUp));
    }
}
