using ScreenStats.Counting.Cubes;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Monitoring.Lots;
using ScreenStats.Statistics.Multiplicity;

namespace ScreenStats.Evaluation.Flagging;

/// <summary>Which of several lots or sites have more events than chance readily makes.</summary>
/// <remarks>
/// Each is compared with all in the pool: the exact one-sided (hypergeometric) chance of at least its events, given all events, all
/// trials and its own trials. Holm's adjustment makes the chance of any false flag in a judgement at most the threshold
/// where every run is as likely as every other to be an event. The one with the smallest p is flagged where its adjusted p is
/// below the threshold (of equal ones the first by ordinal name); it keeps its p, leaves the pool with its trials, and the rest
/// are tested afresh: a bad lot inflates the events of the pool and would hide a second one. The others show the last round.
/// <para>
/// Sites differ, and some people have the same event again and again; then runs are not alike, and that p-value is too small. So a flag needs a
/// second, widened one, times the number in the pool, below the threshold too: the exact test within strata (sites), its normal score divided by
/// the square root of the design effect over people. Where no stratum holds another lot the pool is the stratum: lot and site cannot be told
/// apart there. On drawn programs with sites and people that differ the first p-value alone flags a sound lot in one program of three, both
/// together in fewer than one of a hundred (tests/reference/studies/flag-study.csv).
/// </para>
/// </remarks>
internal static class StepDown
{
    /// <summary>An adjusted p below this is flagged.</summary>
    public const double Threshold = 0.01;

    /// <summary>Judges candidates.</summary>
    /// <param name="candidates">The candidates, with distinct names; one without trials in the pool is not tested.</param>
    /// <param name="notTested">Why a candidate without trials is not tested.</param>
    /// <returns>The judgement of each.</returns>
    public static IReadOnlyDictionary<string, FlagTest> Judge(IEnumerable<FlagCandidate> candidates, Func<string, string> notTested)
    {
        var judged = new Dictionary<string, FlagTest>(StringComparer.Ordinal);
        var pool = new List<FlagCandidate>();
        foreach (var candidate in candidates.OrderBy(candidate => candidate.Name, Levels.Order))
        {
            if (candidate.Trials > 0) pool.Add(candidate);
            else judged.Add(candidate.Name, NotTested(notTested(candidate.Name)));
        }

        for (var round = 1; pool.Count > 0; round++)
        {
            var trials = pool.Sum(candidate => candidate.Trials);
            var events = pool.Sum(candidate => candidate.Events);
            var p = pool.ConvertAll(candidate => Hypergeometric.UpperTail(candidate.Events, trials, events, candidate.Trials));
            var adjusted = MultipleComparisons.Holm(p);
            var widened = Widened(pool);
            var flagged = -1;
            for (var index = 0; index < pool.Count; index++)
            {
                var holds = adjusted[index] < Threshold && widened(index) * pool.Count < Threshold;
                if (holds && (flagged < 0 || p[index] < p[flagged])) flagged = index;
            }

            FlagTest Test(int index) => new()
            {
                Trials = pool[index].Trials,
                Events = pool[index].Events,
                PoolTrials = trials,
                PoolEvents = events,
                P = p[index],
                PHolm = adjusted[index],
                PWidened = widened(index),
                DesignEffect = pool[index].DesignEffect,
                PUndefined = null,
                Flagged = index == flagged,
                Round = round,
            };

            if (flagged >= 0)
            {
                judged.Add(pool[flagged].Name, Test(flagged));
                pool.RemoveAt(flagged);
                continue;
            }

            for (var index = 0; index < pool.Count; index++) judged.Add(pool[index].Name, Test(index));
            break;
        }

        return judged;
    }

    /// <summary>The widened chance of each, computed when it is asked for: of most it is in the last round only.</summary>
    private static Func<int, double> Widened(List<FlagCandidate> pool)
    {
        var strata = new Dictionary<string, (long Trials, long Events)>(StringComparer.Ordinal);
        foreach (var (stratum, counts) in pool.SelectMany(candidate => candidate.Strata))
        {
            var sum = strata.GetValueOrDefault(stratum);
            strata[stratum] = (sum.Trials + counts.Trials, sum.Events + counts.Events);
        }

        var whole = (Trials: pool.Sum(candidate => candidate.Trials), Events: pool.Sum(candidate => candidate.Events));
        return index =>
        {
            var candidate = pool[index];

            // In an order that no name decides, so that other names change no digit.
            var within = StratifiedExactTest.Hypergeometric([.. candidate.Strata
                .Select(entry => new LotStratum(entry.Value.Events, entry.Value.Trials, strata[entry.Key].Events, strata[entry.Key].Trials))
                .OrderBy(stratum => stratum.Trials).ThenBy(stratum => stratum.Events).ThenBy(stratum => stratum.LotTrials).ThenBy(stratum => stratum.LotEvents)]);
            if (within.Reason is not null)
                within = StratifiedExactTest.Hypergeometric([new LotStratum(candidate.Events, candidate.Trials, whole.Events, whole.Trials)]);
            return within.AtLeastAsManyWidened(candidate.DesignEffect);
        };
    }

    /// <summary>A judgement that was not made.</summary>
    public static FlagTest NotTested(string reason) => new()
    {
        Trials = 0,
        Events = 0,
        PoolTrials = 0,
        PoolEvents = 0,
        P = null,
        PHolm = null,
        PWidened = null,
        DesignEffect = null,
        PUndefined = reason,
        Flagged = false,
        Round = 0,
    };
}
