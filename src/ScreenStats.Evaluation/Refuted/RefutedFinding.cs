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
    public double? PerThousand => ValidTests == 0 ? null : 1000.0 * RefutedRuns / ValidTests;
}
