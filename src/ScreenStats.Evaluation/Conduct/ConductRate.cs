using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Conduct;

/// <summary>One measure of conduct of one part of the program, as a share of the runs that it could be told of.</summary>
/// <param name="Key">Measure, grouping and level joined by vertical bars.</param>
/// <param name="Measure">What is counted: <c>expired-lot</c>, <c>read-outside-window</c>, <c>beyond-kit-contents</c>, <c>within-isolation</c>, <c>repeat-not-done</c>, <c>self-collected</c> or <c>unusable</c>.</param>
/// <param name="Grouping">Program, site, lot or operator.</param>
/// <param name="Level">Name of the part; empty for the whole program.</param>
/// <param name="Share">Runs with it (events) among the runs of which it could be told (trials).</param>
/// <param name="Comparison">How the part compares with the others; null for the whole program, and for <c>self-collected</c>, which is a way of working and no fault.</param>
public sealed record ConductRate(string Key, string Measure, Grouping Grouping, string Level, ProportionFinding Share, LevelComparison? Comparison);
