using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Refuted;

/// <summary>Refuted positive runs of the valid tests of one part of the program.</summary>
/// <param name="Key">What tells the row from the others of its list.</param>
/// <param name="Grouping">By what the program is broken down.</param>
/// <param name="Level">The part; empty for the whole program.</param>
/// <param name="ValidTests">Valid tests.</param>
/// <param name="RefutedRuns">Refuted positive runs.</param>
/// <param name="WithoutConclusion">Positive runs without a conclusion: some of them may be refuted ones that nobody verified.</param>
/// <param name="Rate">Refuted runs per valid test.</param>
public sealed record RefutedFinding(
    string Key, Grouping Grouping, string Level, long ValidTests, long RefutedRuns, long WithoutConclusion, ProportionFinding Rate)
{
    /// <summary>Refuted runs per 1,000 valid tests; null without valid tests.</summary>
    public double? PerThousand => Rate.Estimate * 1000;

    /// <summary>Why there is no rate; null where there is one.</summary>
    public string? PerThousandUndefined => Rate.EstimateUndefined;

    /// <summary>Its lower limit, widened for clusters.</summary>
    public double? PerThousandLower => Rate.WidenedLower * 1000;

    /// <summary>Its upper limit, widened for clusters.</summary>
    public double? PerThousandUpper => Rate.WidenedUpper * 1000;

    /// <summary>The rate if every positive run without a conclusion were refuted; null without valid tests.</summary>
    public double? PerThousandBound => ValidTests == 0 ? null : 1000.0 * (RefutedRuns + WithoutConclusion) / ValidTests;
}
