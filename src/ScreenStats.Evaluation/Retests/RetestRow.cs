using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Retests;

/// <summary>Retests of positive runs of one part of the program.</summary>
/// <param name="Key">What tells the row from the others of its list.</param>
/// <param name="By">How the program is divided: <c>program</c>, <c>device</c> or <c>site</c>.</param>
/// <param name="Level">The part, by the positive run; empty for the whole program.</param>
/// <param name="With"><c>any</c>, or for devices <c>same</c> or <c>other</c>: the device of the retest.</param>
/// <param name="Positives">Positive runs of the part.</param>
/// <param name="Pairs">Positive runs that were retested on the same day before any specimen.</param>
/// <param name="Unusable">Retests that were inconclusive or invalid.</param>
/// <param name="Concordant">Retests that were positive too (events) of those that were positive or negative (trials).</param>
/// <param name="ConcordantConfirmed">Positive runs with a positive retest that were confirmed.</param>
/// <param name="ConcordantRefuted">Positive runs with a positive retest that were refuted.</param>
/// <param name="DiscordantConfirmed">Positive runs with a negative retest that were confirmed.</param>
/// <param name="DiscordantRefuted">Positive runs with a negative retest that were refuted.</param>
public sealed record RetestRow(
    string Key, string By, string Level, string With, long Positives, long Pairs, long Unusable, ProportionFinding Concordant,
    long ConcordantConfirmed, long ConcordantRefuted, long DiscordantConfirmed, long DiscordantRefuted)
{
    /// <summary>Retests that were negative.</summary>
    public long Discordant => Concordant.Trials - Concordant.Events;
}
