namespace ScreenStats.Statistics.Accuracy;

/// <summary>Four named counts of a test against the truth.</summary>
public readonly record struct DiagnosticCounts
{
    /// <summary>Makes the counts.</summary>
    /// <param name="truePositive">Positive, with the condition.</param>
    /// <param name="falseNegative">Negative, with the condition.</param>
    /// <param name="falsePositive">Positive, without the condition.</param>
    /// <param name="trueNegative">Negative, without the condition.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count below 0.</exception>
    public DiagnosticCounts(long truePositive, long falseNegative, long falsePositive, long trueNegative)
    {
        Guard.NotNegative(truePositive);
        Guard.NotNegative(falseNegative);
        Guard.NotNegative(falsePositive);
        Guard.NotNegative(trueNegative);
        TruePositive = truePositive;
        FalseNegative = falseNegative;
        FalsePositive = falsePositive;
        TrueNegative = trueNegative;
    }

    /// <summary>Positive, with the condition.</summary>
    public long TruePositive { get; }

    /// <summary>Negative, with the condition.</summary>
    public long FalseNegative { get; }

    /// <summary>Positive, without the condition.</summary>
    public long FalsePositive { get; }

    /// <summary>Negative, without the condition.</summary>
    public long TrueNegative { get; }

    /// <summary>Everybody with the condition.</summary>
    public long WithCondition => TruePositive + FalseNegative;

    /// <summary>Everybody without the condition.</summary>
    public long WithoutCondition => FalsePositive + TrueNegative;

    /// <summary>The sensitivity as stated by these counts.</summary>
    /// <returns>Null where nobody with the condition was counted.</returns>
    public AccuracyStatement? Sensitivity() =>
        WithCondition == 0 ? null : AccuracyStatement.FromCounts(TruePositive, WithCondition);

    /// <summary>The specificity as stated by these counts.</summary>
    /// <returns>Null where nobody without the condition was counted.</returns>
    public AccuracyStatement? Specificity() =>
        WithoutCondition == 0 ? null : AccuracyStatement.FromCounts(TrueNegative, WithoutCondition);
}
