using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Comparisons.Rows;

/// <summary>What one measure and basis say as a whole.</summary>
/// <param name="Key">What it is found by.</param>
/// <param name="Measure">By what levels are compared.</param>
/// <param name="Basis">Which runs.</param>
/// <param name="Leads">Whether the report leads with this basis.</param>
/// <param name="LevelCount">Levels with trials.</param>
/// <param name="Trials">Trials of all levels.</param>
/// <param name="Events">Events of all levels.</param>
/// <param name="Rate">Events over trials: the program's rate; null without trials.</param>
/// <param name="Undefined">Why nothing can be compared; null where something can.</param>
/// <param name="AdjustedFor">What was adjusted for, in words, in the order of the model.</param>
/// <param name="NotAdjustedFor">What could not be adjusted for, and why, in words.</param>
/// <param name="Strata">Combinations of what was adjusted for that hold trials.</param>
/// <param name="DesignEffect">How many times the variance of independent trials is taken, because people and weeks are alike; 1 or more.</param>
/// <param name="DesignEffectOf">What gave it: <c>persons</c> or <c>site-weeks</c>; null where neither raises the variance.</param>
/// <param name="P">Probability of differences as large as those within the strata if no level differs, widened for clusters; null where undefined.</param>
/// <param name="Differ">Whether that is below what the confidence of the report leaves.</param>
/// <param name="Spread">Where the rate of another level would lie at the program's mix, by the model; undefined where levels do not differ, or are fewer than five.</param>
/// <param name="FunnelModel">What the funnel's limits allow for, by the name of a method; null where there is no funnel.</param>
/// <param name="Overdispersed">Whether levels differ more than chance makes them, so that the funnel allows for usual differences.</param>
/// <param name="StandingOut">Levels that stand out, the farthest first.</param>
/// <param name="HighestRaw">The level that is highest as counted; null where there is none.</param>
/// <param name="HighestAdjusted">The level that is highest once adjusted; null where there is none.</param>
/// <param name="PairsToldApart">Pairs that can be told apart; null where pairs are not compared.</param>
/// <param name="LeftOutRuns">Runs that the basis leaves out.</param>
public sealed record ComparisonSummary(
    string Key, ComparisonMeasure Measure, ComparisonBasis Basis, bool Leads, int LevelCount, long Trials, long Events, double? Rate, string? Undefined,
    ImmutableArray<string> AdjustedFor, ImmutableArray<string> NotAdjustedFor, int Strata, double DesignEffect, string? DesignEffectOf, double? P, bool Differ, EstimateFinding Spread,
    string? FunnelModel, bool Overdispersed, ImmutableArray<string> StandingOut, string? HighestRaw, string? HighestAdjusted, int? PairsToldApart, long LeftOutRuns)
{
    /// <summary>How many levels stand out.</summary>
    public int StandingOutCount => StandingOut.Length;
}
