using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>
/// The share of a lot's positive runs that got a conclusive confirmatory result, of those that are not pending any more, as known on a day: drawn towards
/// the program's share as if 10 more runs had it.
/// </summary>
internal sealed class FollowThrough
{
    private const double Weight = 10;
    private readonly Dictionary<string, (long Conclusive, long Settled)> lots = new(Levels.Order);
    private (long Conclusive, long Settled) program;

    /// <summary>(c + 10 f) / (s + 10) with f = (C + 1) / (S + 2): c conclusive of s settled of the lot, C of S of the program.</summary>
    public double Of(string lot)
    {
        var (conclusive, settled) = lots.GetValueOrDefault(lot);
        var share = (program.Conclusive + 1.0) / (program.Settled + 2.0);
        return (conclusive + (Weight * share)) / (settled + Weight);
    }

    public void Take(IEnumerable<SettlementCell> changes)
    {
        foreach (var change in changes)
        {
            if (change.Outcome != Outcome.Positive) continue;
            var conclusive = change.Runs * (Conclusive(change.After) - Conclusive(change.Before));
            var settled = change.Runs * (Settled(change.After) - Settled(change.Before));
            program = (program.Conclusive + conclusive, program.Settled + settled);
            var lot = lots.GetValueOrDefault(change.Lot);
            lots[change.Lot] = (lot.Conclusive + conclusive, lot.Settled + settled);
        }
    }

    private static int Conclusive(FollowUp followUp) => followUp is FollowUp.Confirmed or FollowUp.Refuted ? 1 : 0;

    private static int Settled(FollowUp followUp) => followUp == FollowUp.Pending ? 0 : 1;
}
