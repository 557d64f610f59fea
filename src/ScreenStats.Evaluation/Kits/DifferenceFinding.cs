namespace ScreenStats.Evaluation.Kits;

/// <summary>A difference of two proportions, first minus second.</summary>
/// <param name="Estimate">The difference, in [-1, 1]; null where undefined.</param>
/// <param name="EstimateUndefined">Why there is none; null where there is one.</param>
/// <param name="Lower">Lower limit as if all trials were independent; null where undefined.</param>
/// <param name="Upper">Upper limit as if all trials were independent; null where undefined.</param>
/// <param name="WidenedLower">Lower limit widened for clusters; null where undefined.</param>
/// <param name="WidenedUpper">Upper limit widened for clusters; null where undefined.</param>
/// <param name="Method">Method of the limits.</param>
/// <param name="Confidence">Confidence of all limits.</param>
/// <param name="FirstEvents">Events of the first device that are in it.</param>
/// <param name="FirstTrials">Trials of the first device that are in it.</param>
/// <param name="SecondEvents">Events of the second device that are in it.</param>
/// <param name="SecondTrials">Trials of the second device that are in it.</param>
/// <param name="Strata">Site-weeks with trials of both devices, where the difference is taken within them; null for the plain difference.</param>
public sealed record DifferenceFinding(
    double? Estimate, string? EstimateUndefined, double? Lower, double? Upper, double? WidenedLower, double? WidenedUpper,
    string Method, double Confidence,
    long FirstEvents, long FirstTrials, long SecondEvents, long SecondTrials, long? Strata)
{
    /// <summary>True where fewer than 5 events or fewer than 5 other trials of either device stand behind it.</summary>
    public bool FewCounts => Few(FirstEvents, FirstTrials) || Few(SecondEvents, SecondTrials);

    /// <summary>True where no difference at all lies outside of the widened limits; null where there are none.</summary>
    public bool? LeavesOutZero => WidenedLower is { } lower && WidenedUpper is { } upper ? lower > 0 || upper < 0 : null;

    private static bool Few(long events, long trials) => trials > 0 && Math.Min(events, trials - events) < Clusters.ProportionFinding.FewBelow;
}
