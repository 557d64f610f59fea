namespace ScreenStats.Evaluation.Flagging;

/// <summary>The counted runs of one lot at one site.</summary>
/// <param name="Lot">The lot.</param>
/// <param name="Site">The site.</param>
/// <param name="Runs">All runs.</param>
/// <param name="Inconclusive">Runs with a test line and no control line.</param>
/// <param name="Invalid">Runs with neither line.</param>
/// <param name="Tests">Valid tests.</param>
/// <param name="Positives">Positive tests.</param>
/// <param name="Confirmed">Positive tests confirmed.</param>
/// <param name="Refuted">Positive tests refuted.</param>
internal sealed record LotSiteCounts(
    string Lot, string Site, long Runs, long Inconclusive, long Invalid, long Tests, long Positives, long Confirmed, long Refuted)
{
    public long Unusable => Inconclusive + Invalid;

    public LotSiteCounts Plus(LotSiteCounts other) => this with
    {
        Runs = Runs + other.Runs,
        Inconclusive = Inconclusive + other.Inconclusive,
        Invalid = Invalid + other.Invalid,
        Tests = Tests + other.Tests,
        Positives = Positives + other.Positives,
        Confirmed = Confirmed + other.Confirmed,
        Refuted = Refuted + other.Refuted,
    };
}
