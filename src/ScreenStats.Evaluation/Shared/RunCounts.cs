using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Shared;

/// <summary>Counted runs of one part of a program by outcome and follow-up.</summary>
internal sealed class RunCounts
{
    private const int FollowUps = 8;
    private readonly long[] runs = new long[4 * FollowUps];

    public long this[Outcome outcome, FollowUp followUp] => runs[((int)outcome * FollowUps) + (int)followUp];

    public long this[Outcome outcome]
    {
        get
        {
            long sum = 0;
            for (var followUp = 0; followUp < FollowUps; followUp++) sum += runs[((int)outcome * FollowUps) + followUp];
            return sum;
        }
    }

    public long Runs => runs.Sum();

    public long ValidTests => this[Outcome.Negative] + this[Outcome.Positive];

    public long Confirmed => this[Outcome.Positive, FollowUp.Confirmed];

    public long Refuted => this[Outcome.Positive, FollowUp.Refuted];

    /// <summary>Positive runs that are neither confirmed nor refuted, whether or not the policy follows them up.</summary>
    public long PositivesWithoutConclusion => this[Outcome.Positive] - Confirmed - Refuted;

    public static RunCounts Of(IEnumerable<ScreenCell> cells)
    {
        var counts = new RunCounts();
        foreach (var cell in cells) counts.Add(cell.Outcome, cell.FollowUp, cell.Runs);
        return counts;
    }

    /// <summary>One entry per level, in the order of levels.</summary>
    public static SortedDictionary<string, RunCounts> By(IEnumerable<ScreenCell> cells, Func<ScreenCell, string> level)
    {
        var groups = new SortedDictionary<string, RunCounts>(Levels.Order);
        foreach (var cell in cells) At(groups, level(cell)).Add(cell.Outcome, cell.FollowUp, cell.Runs);
        return groups;
    }

    public static SortedDictionary<string, RunCounts> ByOperator(IEnumerable<OperatorCell> cells)
    {
        var groups = new SortedDictionary<string, RunCounts>(Levels.Order);
        foreach (var cell in cells) At(groups, cell.Operator).Add(cell.Outcome, cell.FollowUp, cell.Runs);
        return groups;
    }

    private static RunCounts At(SortedDictionary<string, RunCounts> groups, string level)
    {
        if (!groups.TryGetValue(level, out var counts)) groups.Add(level, counts = new RunCounts());
        return counts;
    }

    private void Add(Outcome outcome, FollowUp followUp, long count) => runs[((int)outcome * FollowUps) + (int)followUp] += count;
}
