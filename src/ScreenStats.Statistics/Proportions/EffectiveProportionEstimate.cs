using System.Globalization;

namespace ScreenStats.Statistics.Proportions;

/// <summary>A proportion of counts that are real numbers, as effective sample sizes are, with its interval; or undefined without trials.</summary>
public sealed record EffectiveProportionEstimate
{
    internal EffectiveProportionEstimate(double successes, double trials, double confidence, IntervalSide side, IntervalMethod method, Interval? interval, IntervalNote? note)
    {
        Successes = successes;
        Trials = trials;
        Confidence = confidence;
        Side = side;
        Method = method;
        Interval = interval;
        Note = note;
    }

    /// <summary>Effective successes (events).</summary>
    public double Successes { get; }

    /// <summary>Effective trials.</summary>
    public double Trials { get; }

    /// <summary>The confidence of the interval, in (0, 1).</summary>
    public double Confidence { get; }

    /// <summary>Whether both limits hold the confidence together, or one of them alone.</summary>
    public IntervalSide Side { get; }

    /// <summary>How the interval was computed.</summary>
    public IntervalMethod Method { get; }

    /// <summary>Successes divided by trials, a fraction in [0, 1]; null without trials.</summary>
    public double? Estimate => Trials == 0 ? null : Successes / Trials;

    /// <summary>The interval, inside [0, 1] and around the estimate; of a one-sided limit the other end is 0 or 1; null without trials.</summary>
    public Interval? Interval { get; }

    /// <summary>The lower end; null without trials.</summary>
    public double? Lower => Interval?.Lower;

    /// <summary>The upper end; null without trials.</summary>
    public double? Upper => Interval?.Upper;

    /// <summary>What was done to an end that the formula alone does not give; null where nothing was.</summary>
    public IntervalNote? Note { get; }

    /// <summary>Whether there is an estimate.</summary>
    public bool IsDefined => Trials != 0;

    /// <summary>Why there is no estimate; null where there is one.</summary>
    public UndefinedReason? Reason => IsDefined ? null : UndefinedReason.NoTrials;

    /// <summary>The same as a plain estimate, without the counts.</summary>
    /// <returns>The value with interval, method and confidence, or undefined with the reason.</returns>
    public Estimate ToEstimate() => Interval is { } interval
        ? Statistics.Estimate.Of(Successes / Trials, interval, Method.Name(), Confidence)
        : Statistics.Estimate.Undefined(UndefinedReason.NoTrials);

    /// <summary>The estimate in one line, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => IsDefined
        ? string.Create(CultureInfo.InvariantCulture, $"{Successes}/{Trials} = {Estimate} {Interval} ({Method.Name()}, {Confidence})")
        : string.Create(CultureInfo.InvariantCulture, $"{Successes}/{Trials} undefined");
}
