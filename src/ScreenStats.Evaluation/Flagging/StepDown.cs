using ScreenStats.Counting.Cubes;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Multiplicity;

namespace ScreenStats.Evaluation.Flagging;

/// <summary>Which of several lots or sites have more events than chance readily makes.</summary>
/// <remarks>
/// Each is compared with all in the pool: the exact one-sided (hypergeometric) chance of at least its events, given all events, all
/// trials and its own trials. Holm's adjustment makes the chance of any false flag in a judgement at most the threshold
/// where every run is as likely as every other to be an event. The one with the smallest p is flagged where its adjusted p is
/// below the threshold (of equal ones the first by ordinal name); it keeps its p, leaves the pool with its trials, and the rest
/// are tested afresh: a bad lot inflates the events of the pool and would hide a second one. The others show the last round.
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
            var smallest = 0;
            for (var index = 1; index < pool.Count; index++)
            {
                if (p[index] < p[smallest]) smallest = index;
            }

            FlagTest Test(int index, bool flagged) => new()
            {
                Trials = pool[index].Trials,
                Events = pool[index].Events,
                PoolTrials = trials,
                PoolEvents = events,
                P = p[index],
                PHolm = adjusted[index],
                PUndefined = null,
                Flagged = flagged,
                Round = round,
            };

            if (adjusted[smallest] < Threshold)
            {
                judged.Add(pool[smallest].Name, Test(smallest, true));
                pool.RemoveAt(smallest);
                continue;
            }

            for (var index = 0; index < pool.Count; index++) judged.Add(pool[index].Name, Test(index, false));
            break;
        }

        return judged;
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
        PUndefined = reason,
        Flagged = false,
        Round = 0,
    };
}
