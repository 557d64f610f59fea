namespace ScreenStats.Evaluation.Flagging;

/// <summary>What one lot or site brings into a judgement.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Trials">Its trials in the pool.</param>
/// <param name="Events">Its events among them.</param>
internal sealed record FlagCandidate(string Name, long Trials, long Events);
