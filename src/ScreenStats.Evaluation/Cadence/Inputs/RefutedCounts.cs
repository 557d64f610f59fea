using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Cadence.Inputs;

/// <summary>Positives that were refuted in the data, those of flagged lots among them.</summary>
internal sealed class RefutedCounts
{
    public RefutedCounts(TallyCells cells, IReadOnlySet<string> flagged)
    {
        foreach (var cell in cells.Screens)
        {
            if (cell is not { Outcome: Outcome.Positive, FollowUp: FollowUp.Refuted }) continue;
            All += cell.Runs;
            if (flagged.Contains(cell.Lot)) OfFlaggedLots += cell.Runs;
        }
    }

    public long All { get; }

    public long OfFlaggedLots { get; }
}
