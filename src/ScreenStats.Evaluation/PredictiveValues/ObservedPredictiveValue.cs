using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.PredictiveValues;

/// <summary>The observed positive predictive value of one part of the program, with its bounds.</summary>
/// <param name="Key">What tells the row from the others of its list.</param>
/// <param name="Grouping">By what the program is broken down.</param>
/// <param name="Level">The part; empty for the whole program.</param>
/// <param name="Basis">With or without the flagged lots.</param>
/// <param name="Value">Confirmed, of the positive runs that were confirmed or refuted.</param>
/// <param name="Bounds">What the runs without a conclusion leave possible.</param>
public sealed record ObservedPredictiveValue(
    string Key, Grouping Grouping, string Level, PredictiveValueBasis Basis, ProportionFinding Value, PredictiveValueBounds Bounds);
