using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>The rule of frequency replayed, and what flagged lots did to it.</summary>
/// <param name="Periods">Its periods; empty where no rule is stated or nothing was counted.</param>
/// <param name="Lots">What flagged lots did; null where none is flagged.</param>
internal sealed record RuleReplay(ImmutableArray<WorthRulePeriod> Periods, WorthRuleLots? Lots);
