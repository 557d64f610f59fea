namespace ScreenStats.Evaluation.Bursts;

/// <summary>The strongest burst of one kind of event: the days of one lot at one site, of one lot, of one site, or of all, in which most more were seen than expected.</summary>
/// <param name="Measure"><c>refuted</c>, <c>confirmed</c> or <c>unusable</c>.</param>
/// <param name="Events">Events in all.</param>
/// <param name="Lot">The lot of the burst; null for all lots together, or where there is no burst.</param>
/// <param name="Site">The site of the burst; null for all sites together, or where there is no burst.</param>
/// <param name="FirstDay">Day of its first event; null where there is no burst.</param>
/// <param name="LastDay">Day of its last event; null likewise.</param>
/// <param name="Runs">Runs of that lot and site in these days: valid tests, for <c>unusable</c> all runs.</param>
/// <param name="Observed">Its events.</param>
/// <param name="Expected">Its events if each site had its own rate on every day and with every lot; null where there is no burst.</param>
/// <param name="LogLikelihoodRatio">The natural logarithm of how much better a rate of its own explains the burst; null likewise.</param>
/// <param name="ChanceUnderNoBurst">The share of simulated programs without a burst whose strongest one is as strong, the real program among them; null likewise.</param>
/// <param name="Undefined">Why there is no burst; null where there is one.</param>
/// <param name="Replicates">Simulated programs.</param>
/// <param name="Seed">What the simulation starts from.</param>
/// <param name="LongestDays">The longest burst that was looked for, in days.</param>
public sealed record BurstRow(
    string Measure, long Events, string? Lot, string? Site, DateOnly? FirstDay, DateOnly? LastDay, long Runs, long Observed,
    double? Expected, double? LogLikelihoodRatio, double? ChanceUnderNoBurst, string? Undefined, int Replicates, ulong Seed, int LongestDays)
{
    /// <summary>Why there is no expected number; null where there is one.</summary>
    public string? ExpectedUndefined => Undefined;

    /// <summary>Why there is no likelihood ratio; null where there is one.</summary>
    public string? LogLikelihoodRatioUndefined => Undefined;

    /// <summary>Why there is no chance; null where there is one.</summary>
    public string? ChanceUnderNoBurstUndefined => Undefined;
}
