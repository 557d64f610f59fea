using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Flagging;

/// <summary>What one lot or site brings into a judgement.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Trials">Its trials in the pool.</param>
/// <param name="Events">Its events among them.</param>
internal sealed record FlagCandidate(string Name, long Trials, long Events)
{
    /// <summary>The strata of a candidate that is compared with the whole pool.</summary>
    public static ImmutableDictionary<string, (long Trials, long Events)> OneStratum => ImmutableDictionary<string, (long Trials, long Events)>.Empty;

    /// <summary>The same by the strata within which it is compared (of a lot its sites); empty where the pool is one stratum.</summary>
    public ImmutableDictionary<string, (long Trials, long Events)> Strata { get; init; } = OneStratum;

    /// <summary>By how much the variance of its events exceeds that of independent runs, 1 or more.</summary>
    public double DesignEffect { get; init; } = 1;
}
