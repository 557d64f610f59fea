namespace ScreenStats.Evaluation.Changes.Rows;

/// <summary>A lot or site that is flagged in one of two evaluations, or is in one of them only.</summary>
/// <param name="Key">Its kind and name, joined by a vertical bar.</param>
/// <param name="By">Whether it is a lot or a site.</param>
/// <param name="Level">Its name.</param>
/// <param name="Change">What became of it.</param>
/// <param name="EarlierFlag">Its flag in the earlier evaluation.</param>
/// <param name="LaterFlag">Its flag in this evaluation.</param>
public sealed record FlagRow(string Key, Grouping By, string Level, FlagChange Change, Flag EarlierFlag, Flag LaterFlag);
