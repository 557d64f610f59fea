using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Flagging;

/// <summary>
/// The fewest places (sites of a lot, or lots of a site) that together hold at least four in five of its refuted positives, and the
/// days between which they fell.
/// </summary>
/// <param name="Names">The places, those with most first.</param>
/// <param name="Events">Refuted positives there.</param>
/// <param name="FirstDay">First local day of one of these.</param>
/// <param name="LastDay">Last local day of one of these.</param>
public sealed record FlaggedConcentration(ImmutableArray<string> Names, long Events, DateOnly FirstDay, DateOnly LastDay)
{
    /// <summary>How many places.</summary>
    public int Places => Names.Length;
}
