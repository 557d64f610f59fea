namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>Whether the rows of a table share one distribution over its columns, exactly.</summary>
/// <param name="Rows">Rows with counts.</param>
/// <param name="Columns">Columns with counts.</param>
/// <param name="Total">All counts.</param>
/// <param name="PValue">The chance of a table as unlikely as the one seen, given both margins; null with a <see cref="Reason"/>.</param>
/// <param name="Method">Whether all tables were added up or random ones drawn; null with a reason.</param>
/// <param name="StandardError">The standard error of a p-value from random tables; null where all were added up.</param>
/// <param name="Replicates">Random tables; 0 where all were added up.</param>
/// <param name="Seed">What the drawing started from; null where all were added up.</param>
/// <param name="Reason">Why nothing can be told; null where it can.</param>
public sealed record ExactTableResult(
    int Rows, int Columns, long Total, double? PValue, ExactHomogeneityMethod? Method, double? StandardError, int Replicates, ulong? Seed, UndefinedReason? Reason);
