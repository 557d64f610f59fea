namespace ScreenStats.Evaluation.Changes.Snapshots;

/// <summary>An answer as it was read.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Question">The question.</param>
/// <param name="Text">The answer.</param>
public sealed record SnapshotAnswer(string Id, string Question, string Text);
