namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>The audits that the sensitivity rests on.</summary>
/// <param name="Missed">Audited negative runs whose confirmatory test was positive.</param>
/// <param name="Audited">All audited negative runs with a conclusive result.</param>
public sealed record CadenceAudits(long Missed, long Audited);
