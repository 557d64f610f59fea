using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Statistics.Monitoring.Acceptance;

namespace ScreenStats.Evaluation.Detection;

/// <summary>The flag rule in force in this program: how many are compared, with how many trials, around which rates.</summary>
internal sealed class PlanOfFlags
{
    /// <summary>The most trials for which the chance of a flag is computed.</summary>
    public const long MostTrials = Statistics.Planning.LotPower.LargestPopulation;

    public PlanOfFlags(LotSiteTable counts, Judgements judgements)
    {
        var lots = counts.Counts.Where(entry => entry.Lot != Levels.None).GroupBy(entry => entry.Lot, StringComparer.Ordinal).ToList();
        TestsByLot = [.. lots.Select(lot => lot.Sum(entry => entry.Tests)).Where(tests => tests > 0).Order()];
        RunsByLot = [.. lots.Select(lot => lot.Sum(entry => entry.Runs)).Where(runs => runs > 0).Order()];
        AllTests = counts.Counts.Sum(entry => entry.Tests);
        Sites = counts.Counts.Select(entry => entry.Site).Distinct(StringComparer.Ordinal).Count();
        (RefutedRate, RefutedUndefined) = Rate(judgements.LotsRefuted.Values, "no refuted positive outside of flagged lots");
        (InvalidRate, InvalidUndefined) = Rate(judgements.LotsInvalid.Values, "no unusable run outside of flagged lots and sites");
    }

    /// <summary>Valid tests of each named lot that has any, in rising order.</summary>
    public ImmutableArray<long> TestsByLot { get; }

    /// <summary>Runs of each named lot, in rising order.</summary>
    public ImmutableArray<long> RunsByLot { get; }

    public int Lots => TestsByLot.Length;

    public int Sites { get; }

    public long LotTests => TestsByLot.Sum();

    public long AllTests { get; }

    /// <summary>Refuted positives per valid test in lots that are not flagged; null where there is none to multiply.</summary>
    public double? RefutedRate { get; }

    public string? RefutedUndefined { get; }

    /// <summary>Unusable runs per run in lots that are not flagged; null where there is none to multiply.</summary>
    public double? InvalidRate { get; }

    public string? InvalidUndefined { get; }

    private (double?, string?) Rate(IEnumerable<FlagTest> tests, string none)
    {
        if (AllTests > MostTrials) return (null, "there are more than ten million tests, for which it is not computed");
        var left = tests.Where(test => test is { Flagged: false, PUndefined: null }).ToList();
        var (events, trials) = (left.Sum(test => test.Events), left.Sum(test => test.Trials));
        return events == 0 || events == trials ? (null, none) : ((double)events / trials, null);
    }
}
