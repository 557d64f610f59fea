using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Accuracy;

/// <summary>Refuted positives per valid test, at their lowest and highest, beside a stated specificity.</summary>
public sealed record SpecificityFinding
{
    internal SpecificityFinding(
        WidenedEstimate lowest,
        WidenedEstimate highest,
        AccuracyStatement specificity,
        double confidence,
        Interval? lowestDifference,
        Interval? highestDifference,
        SpecificityOutcome outcome)
    {
        Lowest = lowest;
        Highest = highest;
        Specificity = specificity;
        Confidence = confidence;
        LowestDifference = lowestDifference;
        HighestDifference = highestDifference;
        Outcome = outcome;
    }

    /// <summary>Refuted per valid test if no other positive was false.</summary>
    public WidenedEstimate Lowest { get; }

    /// <summary>Refuted per valid test if each positive without a conclusive result was false.</summary>
    public WidenedEstimate Highest { get; }

    /// <summary>From the lower limit at the lowest to the upper limit at the highest; null without valid tests.</summary>
    public Interval? Observed => Lowest.Interval is { } low && Highest.Interval is { } high ? new Interval(low.Lower, high.Upper) : null;

    /// <summary>The specificity as stated.</summary>
    public AccuracyStatement Specificity { get; }

    /// <summary>One minus the stated specificity.</summary>
    public double StatedFalsePositiveRate => 1 - Specificity.Value;

    /// <summary>The interval of one minus the stated specificity.</summary>
    public Interval StatedInterval => Specificity.Complement().IntervalAt(Confidence);

    /// <summary>The confidence of all intervals, in (0, 1).</summary>
    public double Confidence { get; }

    /// <summary>The interval of observed minus stated rate at the lowest; null without valid tests.</summary>
    public Interval? LowestDifference { get; }

    /// <summary>The interval of observed minus stated rate at the highest; null without valid tests.</summary>
    public Interval? HighestDifference { get; }

    /// <summary>The joint interval of observed minus stated rate, from the lowest's lower to the highest's upper limit.</summary>
    public Interval? JointDifference => LowestDifference is { } low && HighestDifference is { } high ? new Interval(low.Lower, high.Upper) : null;

    /// <summary>The answer by the fixed rule (see <see cref="SpecificityComparison.Of(long, long, long, double, long, AccuracyStatement, double)"/>).</summary>
    public SpecificityOutcome Outcome { get; }

    /// <summary>Whether the data contradict the stated specificity because there are more false positives than it allows.</summary>
    public bool MoreThanStated => Outcome == SpecificityOutcome.NotCompatible && LowestDifference?.Lower > 0;

    /// <summary>Why there is nothing to compare; null where there is something.</summary>
    public UndefinedReason? Reason => Lowest.Reason;
}
