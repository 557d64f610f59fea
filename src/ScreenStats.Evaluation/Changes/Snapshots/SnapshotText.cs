namespace ScreenStats.Evaluation.Changes.Snapshots;

/// <summary>A setting as it is read.</summary>
/// <param name="Id">What it is: lower case, words joined by hyphens; a name may follow a colon.</param>
/// <param name="Name">What it is, in words.</param>
/// <param name="Text">How it was set.</param>
public sealed record SnapshotText(string Id, string Name, string Text);
