namespace ScreenStats.Evaluation.Flagging;

/// <summary>Where a flagged lot's refuted positives were, or which lots a flagged site's were of.</summary>
/// <param name="Name">The site of a flagged lot, or the lot of a flagged site.</param>
/// <param name="Events">Refuted positives there.</param>
/// <param name="FirstDay">First local day of one.</param>
/// <param name="LastDay">Last local day of one.</param>
public sealed record FlaggedPlace(string Name, long Events, DateOnly FirstDay, DateOnly LastDay);
