namespace ScreenStats.Statistics.Stratified;

/// <summary>Whether several groups differ within strata.</summary>
/// <param name="Groups">Groups that are compared: those with trials in a stratum that tells them from another.</param>
/// <param name="Strata">Strata with an event, a trial without one, and at least two groups.</param>
/// <param name="Statistic">The statistic, divided by the design effect; null with a <see cref="Reason"/>.</param>
/// <param name="DegreesOfFreedom">Groups less one, and less one more for each further set of groups that shares no stratum with the others; null with a reason.</param>
/// <param name="PValue">The chance of as large a statistic if no group differs within strata; null with a reason.</param>
/// <param name="SmallestExpected">The smallest number of events, or of others, expected of a group: below 5 the p-value is rough. Null with a reason.</param>
/// <param name="DesignEffect">The design effect.</param>
/// <param name="Reason">Why nothing can be told; null where it can.</param>
public sealed record GeneralAssociationResult(
    int Groups, int Strata, double? Statistic, int? DegreesOfFreedom, double? PValue, double? SmallestExpected, double DesignEffect, UndefinedReason? Reason);
