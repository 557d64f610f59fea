namespace ScreenStats.Statistics.Monitoring.Acceptance;

/// <summary>What leaves the inspection where rejected lots are tested in full and defective items replaced.</summary>
/// <param name="Rate">The share of defective items before inspection.</param>
/// <param name="Acceptance">The chance that the lot is accepted.</param>
/// <param name="AverageOutgoing">The share of defective items after inspection, on average.</param>
/// <param name="AverageTested">Items tested per lot, on average.</param>
public readonly record struct OutgoingQuality(double Rate, double Acceptance, double AverageOutgoing, double AverageTested);
