namespace ScreenStats.Statistics.Monitoring.Sequential.SequentialTest;

/// <summary>A sequential test over data: the first decision, or where it stands.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Decision">The decision; <see cref="SequentialDecision.Continue"/> where the data end before one.</param>
/// <param name="Observations">Observations up to the decision, or all.</param>
/// <param name="Events">Events among them.</param>
public sealed record SequentialOutcome(SequentialPlan Plan, SequentialDecision Decision, long Observations, long Events);
