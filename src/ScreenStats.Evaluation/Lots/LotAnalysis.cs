using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Flagging;

namespace ScreenStats.Evaluation.Lots;

/// <summary>Which lots stand out.</summary>
internal static class LotAnalysis
{
    public static LotFindings Of(LotSiteTable counts, Judgements judgements)
    {
        var table = LotTables.Lots([.. counts.Counts
            .GroupBy(entry => entry.Lot, StringComparer.Ordinal)
            .OrderBy(lot => lot.Key, Levels.Order)
            .Select(lot =>
            {
                var total = lot.Aggregate((sum, entry) => sum.Plus(entry));
                var refuted = judgements.LotsRefuted[lot.Key];
                var (places, most) = refuted.Flagged ? counts.SitesOf(lot.Key) : ([], null);
                return new LotFinding
                {
                    Lot = lot.Key,
                    Runs = total.Runs,
                    Inconclusive = total.Inconclusive,
                    Invalid = total.Invalid,
                    Tests = total.Tests,
                    Positives = total.Positives,
                    Confirmed = total.Confirmed,
                    Refuted = total.Refuted,
                    InvalidTest = judgements.LotsInvalid[lot.Key],
                    RefutedTest = refuted,
                    RefutedPlaces = places,
                    RefutedConcentration = most,
                };
            })]);
        return new LotFindings(table, LotSentences.Of(table));
    }
}
