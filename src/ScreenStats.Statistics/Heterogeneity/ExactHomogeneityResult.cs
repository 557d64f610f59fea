namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>The exact chance of a table as unlikely as the observed one, given both margins.</summary>
/// <param name="Groups">Groups with trials.</param>
/// <param name="Events">Events of all groups.</param>
/// <param name="Trials">Trials of all groups.</param>
/// <param name="PValue">The p-value; null with a <see cref="Reason"/>.</param>
/// <param name="Method">How it was found; null with a reason.</param>
/// <param name="StandardError">Of a p-value from random tables its standard error; else null.</param>
/// <param name="Replicates">Random tables drawn; 0 where all were added up.</param>
/// <param name="Seed">What the drawing started from; null where all were added up.</param>
/// <param name="Reason">Why nothing can be told; null where it can.</param>
public sealed record ExactHomogeneityResult(
    int Groups, long Events, long Trials, double? PValue, ExactHomogeneityMethod? Method, double? StandardError, int Replicates, ulong? Seed, UndefinedReason? Reason);
