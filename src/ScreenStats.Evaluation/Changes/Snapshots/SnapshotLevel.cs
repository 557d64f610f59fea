namespace ScreenStats.Evaluation.Changes.Snapshots;

/// <summary>A lot or site with its flag.</summary>
/// <param name="By">Whether it is a lot or a site.</param>
/// <param name="Level">Its name.</param>
/// <param name="Flag">What needs looking into.</param>
public sealed record SnapshotLevel(Grouping By, string Level, Flag Flag);
