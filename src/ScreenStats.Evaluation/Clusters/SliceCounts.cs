using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>Runs by what they gave.</summary>
internal struct SliceCounts
{
    public long Runs;
    public long Tests;
    public long Positives;
    public long Inconclusive;

    /// <summary>Counts runs of an outcome.</summary>
    public void Add(Outcome outcome, long runs)
    {
        Runs += runs;
        switch (outcome)
        {
            case Outcome.Negative:
                Tests += runs;
                break;
            case Outcome.Positive:
                Tests += runs;
                Positives += runs;
                break;
            case Outcome.Inconclusive:
                Inconclusive += runs;
                break;
            case Outcome.Invalid:
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "Not a member of the enumeration.");
        }
    }
}
