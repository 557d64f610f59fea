using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Flagging;

/// <summary>
/// The four judgements of lots and sites, in the order that keeps a bad lot from making its sites look bad and a clumsy site its
/// lots: refuted positives of lots, then of sites without the runs of lots so flagged; unusable runs of sites, then of lots
/// without the runs of sites so flagged.
/// </summary>
internal sealed class Judgements
{
    private Judgements(
        IReadOnlyDictionary<string, FlagTest> lotsRefuted, IReadOnlyDictionary<string, FlagTest> sitesRefuted,
        IReadOnlyDictionary<string, FlagTest> sitesInvalid, IReadOnlyDictionary<string, FlagTest> lotsInvalid)
    {
        LotsRefuted = lotsRefuted;
        SitesRefuted = sitesRefuted;
        SitesInvalid = sitesInvalid;
        LotsInvalid = lotsInvalid;
    }

    public IReadOnlyDictionary<string, FlagTest> LotsRefuted { get; }

    public IReadOnlyDictionary<string, FlagTest> SitesRefuted { get; }

    public IReadOnlyDictionary<string, FlagTest> SitesInvalid { get; }

    public IReadOnlyDictionary<string, FlagTest> LotsInvalid { get; }

    /// <summary>Judges counts; a pure function of them.</summary>
    /// <param name="counts">One entry for each pair of a lot and a site; runs without a lot under <see cref="Levels.None"/>.</param>
    /// <param name="hasConfirmatory">Without a confirmatory export nothing is refuted, and nothing judged by it.</param>
    /// <param name="people">What is known of people whose runs are alike; null takes all runs as independent.</param>
    public static Judgements Of(IReadOnlyCollection<LotSiteCounts> counts, bool hasConfirmatory, PersonEffects? people = null)
    {
        FlagCandidate Candidate(PersonScope scope, PersonMeasure measure, string name, IEnumerable<LotSiteCounts> runs, Func<LotSiteCounts, bool> inPool)
        {
            // Lots are compared within sites: a site's own rate must not be laid to the lots that it uses. Of sites nothing is laid to lots but by flags.
            var pool = runs.Where(inPool).ToList();
            (long Trials, long Events) Counts(LotSiteCounts entry) => measure == PersonMeasure.Refuted ? (entry.Tests, entry.Refuted) : (entry.Runs, entry.Unusable);
            return new(name, pool.Sum(entry => Counts(entry).Trials), pool.Sum(entry => Counts(entry).Events))
            {
                Strata = scope == PersonScope.Lot ? pool.ToImmutableDictionary(entry => entry.Site, Counts, StringComparer.Ordinal) : FlagCandidate.OneStratum,
                DesignEffect = people?.Of(scope, measure, name) ?? 1,
            };
        }

        var byLot = counts.GroupBy(entry => entry.Lot, StringComparer.Ordinal).ToList();
        var bySite = counts.GroupBy(entry => entry.Site, StringComparer.Ordinal).ToList();
        var lots = byLot.Where(lot => lot.Key != Levels.None).ToList();

        const string NoConfirmatory = "there is no confirmatory export, so no positive could be refuted";
        var lotsRefuted = hasConfirmatory
            ? StepDown.Judge(lots.Select(lot => Candidate(PersonScope.Lot, PersonMeasure.Refuted, lot.Key, lot, _ => true)), _ => "no valid test")
            : lots.ToDictionary(lot => lot.Key, _ => StepDown.NotTested(NoConfirmatory), StringComparer.Ordinal);
        var sitesRefuted = hasConfirmatory
            ? StepDown.Judge(
                bySite.Select(site => Candidate(PersonScope.Site, PersonMeasure.Refuted, site.Key, site, entry => !IsFlagged(lotsRefuted, entry.Lot))),
                _ => "no valid test but those of lots flagged for refuted positives")
            : bySite.ToDictionary(site => site.Key, _ => StepDown.NotTested(NoConfirmatory), StringComparer.Ordinal);
        var sitesInvalid = StepDown.Judge(bySite.Select(site => Candidate(PersonScope.Site, PersonMeasure.InvalidRuns, site.Key, site, _ => true)), _ => "no run");
        var lotsInvalid = StepDown.Judge(
            lots.Select(lot => Candidate(PersonScope.Lot, PersonMeasure.InvalidRuns, lot.Key, lot, entry => !IsFlagged(sitesInvalid, entry.Site))),
            _ => "no run but those at sites flagged for invalid runs");

        if (byLot.Exists(lot => lot.Key == Levels.None))
        {
            const string NoLot = "runs without a lot are shown, not tested";
            lotsRefuted = With(lotsRefuted, Levels.None, NoLot);
            lotsInvalid = With(lotsInvalid, Levels.None, NoLot);
        }

        return new Judgements(lotsRefuted, sitesRefuted, sitesInvalid, lotsInvalid);
    }

    private static bool IsFlagged(IReadOnlyDictionary<string, FlagTest> judged, string name) =>
        judged.TryGetValue(name, out var test) && test.Flagged;

    private static Dictionary<string, FlagTest> With(IReadOnlyDictionary<string, FlagTest> judged, string name, string reason) =>
        new(judged, StringComparer.Ordinal) { [name] = StepDown.NotTested(reason) };
}
