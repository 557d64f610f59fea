namespace ScreenStats.Reporting.Charts.Cadence;

/// <summary>How often a person's next screen came after so many days.</summary>
/// <param name="Days">Days, 1 or more.</param>
/// <param name="Share">Share of all pairs of consecutive screens.</param>
internal sealed record GapShare(int Days, double Share);
