using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.Lots;
using ScreenStats.Evaluation.LotTests;
using ScreenStats.Evaluation.Sites;

namespace ScreenStats.Evaluation.StandOuts;

/// <summary>Puts the judgements of lots and sites into one ranked list.</summary>
/// <remarks>
/// Nothing is judged anew. The flags compare with all lots, or sites, of the program; the tests within strata with those of the same sites and weeks. A lot that is
/// flagged over all and not material within its weeks is listed after those that are: what it stands out by may be the places and times at which it was used.
/// </remarks>
internal static class StandOutAnalysis
{
    /// <summary>The list.</summary>
    /// <param name="lots">Lots with their flags.</param>
    /// <param name="sites">Sites with their flags.</param>
    /// <param name="lotTests">Lots within sites and weeks.</param>
    /// <param name="siteTests">Sites within lots and weeks.</param>
    public static StandOutFindings Of(LotFindings lots, SiteFindings sites, PlaceTestFindings lotTests, PlaceTestFindings siteTests)
    {
        ImmutableArray<StandOutRow> rows =
        [
            .. Rows(lotTests, lots.Where(lot => lot.Lot != Levels.None).ToDictionary(lot => lot.Lot, lot => (IJudgedLevel)lot, StringComparer.Ordinal)),
            .. Rows(siteTests, sites.ToDictionary(site => site.Site, site => (IJudgedLevel)site, StringComparer.Ordinal)),
        ];
        var ranked = rows.Where(row => row.StandsOut)
            .OrderBy(row => row.Verdict).ThenBy(row => row.Measure == TestMeasure.Invalid.Name).ThenBy(row => row.PHolm ?? 1).ThenByDescending(row => row.Observed).ThenBy(row => row.Key, StringComparer.Ordinal)
            .Select((row, index) => row with { Rank = index + 1 });
        ImmutableArray<StandOutRow> ordered = [.. ranked, .. rows.Where(row => !row.StandsOut)];
        var levels = ordered.GroupBy(row => (row.By, row.Level)).ToList();
        var standing = levels.Count(level => level.Any(row => row.StandsOut));
        var alone = levels.Count(level => level.All(row => row.Verdict == StandOutVerdict.NotCompared));
        var findings = new StandOutFindings(standing, levels.Count - standing - alone, alone, ordered, StandOutTables.StandOuts(ordered), []);
        return findings with { Sentences = StandOutSentences.Of(findings) };
    }

    private static IEnumerable<StandOutRow> Rows(PlaceTestFindings tests, Dictionary<string, IJudgedLevel> judged) => tests.Rows
        .OrderBy(row => row.Place, Levels.Order)
        .Select(row =>
        {
            var compared = row.PHolm is not null;
            var flag = row.Measure == TestMeasure.Refuted.Name ? Flag.Refuted : row.Measure == TestMeasure.Invalid.Name ? Flag.Invalid : Flag.None;
            var level = judged.GetValueOrDefault(row.Place);
            var flagged = flag != Flag.None && level is not null && level.Flag.HasFlag(flag);
            var over = (flag == Flag.Refuted ? level?.RefutedTest : flag == Flag.Invalid ? level?.InvalidTest : null) is { PHolm: not null, PoolEvents: > 0 } test
                && test.PoolTrials > test.Trials;
            var verdict = row.LowYield ? StandOutVerdict.MayMissInfections
                : row.Material ? StandOutVerdict.StandsOut
                : flagged ? StandOutVerdict.StandsOutOverAll
                : compared && row.PHolm < StrataJudge.ErrorRate ? StandOutVerdict.NotMaterial
                : compared || over ? StandOutVerdict.DoesNotStandOut
                : StandOutVerdict.NotCompared;
            return new StandOutRow(
                $"{tests.By}|{row.Key}", null, tests.By, row.Place, row.Measure, verdict, flagged, row.Material, row.Strata, row.Observed,
                compared ? row.Expected : null, compared ? null : row.PUndefined ?? "nothing was there to compare it with", row.Ratio, row.PHolm);
        });
}
