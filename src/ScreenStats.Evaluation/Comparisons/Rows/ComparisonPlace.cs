namespace ScreenStats.Evaluation.Comparisons.Rows;

/// <summary>Where a level lies in the funnel.</summary>
/// <param name="Trials">As many trials as would have the events expected of it at the program's rate; where nothing is adjusted for its own trials.</param>
/// <param name="Rate">Its events over these: the program's rate times observed over expected. Null where nothing is expected.</param>
/// <param name="Standing">Against the inner limits (95 %).</param>
/// <param name="Limits">The confidence of the outermost limits that it lies outside of, 0.95 or 0.998; null where it lies within.</param>
/// <param name="RawStanding">The same of its rate as counted, against the inner limits of a funnel of the rates as counted.</param>
/// <param name="P">Chance of as large a distance from the program's rate if it were like the others, two-sided, widened as the limits are; null where undefined.</param>
/// <param name="PHolm">The same adjusted for the number of levels (Holm); null where undefined.</param>
/// <param name="StandsOut">Whether the adjusted chance is below what the confidence of the report leaves.</param>
public sealed record ComparisonPlace(
    long Trials, double? Rate, ComparisonStanding Standing, double? Limits, ComparisonStanding RawStanding, double? P, double? PHolm, bool StandsOut);
