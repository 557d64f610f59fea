using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Flagging;

namespace ScreenStats.Evaluation.Sites;

/// <summary>Which sites stand out.</summary>
internal static class SiteAnalysis
{
    public static SiteFindings Of(LotSiteTable counts, Judgements judgements)
    {
        var table = SiteTables.Sites([.. counts.Counts
            .GroupBy(entry => entry.Site, StringComparer.Ordinal)
            .OrderBy(site => site.Key, Levels.Order)
            .Select(site =>
            {
                var total = site.Aggregate((sum, entry) => sum.Plus(entry));
                var refuted = judgements.SitesRefuted[site.Key];
                var (places, most) = refuted.Flagged ? counts.LotsOf(site.Key, lot => judgements.LotsRefuted[lot].Flagged) : ([], null);
                return new SiteFinding
                {
                    Site = site.Key,
                    Runs = total.Runs,
                    Inconclusive = total.Inconclusive,
                    Invalid = total.Invalid,
                    Tests = total.Tests,
                    Positives = total.Positives,
                    Confirmed = total.Confirmed,
                    Refuted = total.Refuted,
                    InvalidTest = judgements.SitesInvalid[site.Key],
                    RefutedTest = refuted,
                    RefutedPlaces = places,
                    RefutedConcentration = most,
                };
            })]);
        return new SiteFindings(table, SiteSentences.Of(table));
    }
}
