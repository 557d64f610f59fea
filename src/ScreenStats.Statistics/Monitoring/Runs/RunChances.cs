namespace ScreenStats.Statistics.Monitoring.Runs;

/// <summary>The limits of the runs and crossings rules, and how often points that are only chance pass them.</summary>
/// <param name="UsefulPoints">The points off the centre.</param>
/// <param name="LongestRunLimit">The longest run that is no signal.</param>
/// <param name="CrossingsLimit">The fewest crossings that are no signal.</param>
/// <param name="LongRun">The chance of a longer run.</param>
/// <param name="FewCrossings">The chance of fewer crossings.</param>
/// <param name="Either">The chance of one or the other or both.</param>
public sealed record RunChances(int UsefulPoints, int LongestRunLimit, int CrossingsLimit, double LongRun, double FewCrossings, double Either);
