namespace ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

/// <summary>The conventions of a cumulative sum.</summary>
public sealed record CumulativeSumOptions
{
    /// <summary>The value from which the sum starts (fast initial response, often half the limit): 0 or more and below the limit. 0 unless given.</summary>
    public double HeadStart { get; init; }

    /// <summary>When it signals; at or above the limit unless given.</summary>
    public SignalRule Signal { get; init; } = SignalRule.AtOrAbove;

    /// <summary>Where the floor of 0 is applied; after adding unless given. Of no influence on signals and run lengths.</summary>
    public ResetRule Reset { get; init; } = ResetRule.AfterAdding;

    /// <summary>What it does after a signal; goes on unless given. Of no influence on run lengths.</summary>
    public AfterSignal AfterSignal { get; init; } = AfterSignal.Continue;

    internal void Check(double limit)
    {
        CheckChoices();
        if (!(limit > HeadStart) || !double.IsFinite(limit))
            throw new ArgumentOutOfRangeException(nameof(limit), limit, "The limit must be a finite number above the head start.");
    }

    private void CheckChoices()
    {
        if (!(HeadStart >= 0)) throw new ArgumentOutOfRangeException(nameof(HeadStart), HeadStart, "The head start must be 0 or more and below the limit.");
        if (Signal is not (SignalRule.AtOrAbove or SignalRule.Above)) throw new ArgumentOutOfRangeException(nameof(Signal), Signal, "Not a rule this library knows.");
        if (Reset is not (ResetRule.AfterAdding or ResetRule.BeforeAdding)) throw new ArgumentOutOfRangeException(nameof(Reset), Reset, "Not a rule this library knows.");
        if (AfterSignal is not (AfterSignal.Continue or AfterSignal.Restart))
            throw new ArgumentOutOfRangeException(nameof(AfterSignal), AfterSignal, "Not a choice this library knows.");
    }
}
