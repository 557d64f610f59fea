namespace ScreenStats.Counting.Cubes;

/// <summary>Checks that the changes of follow-up lead to the follow-up that the notable runs have. Only where there are any.</summary>
internal static class SettlementAgreement
{
    /// <summary>True where a cell can be: a positive or inconclusive run, known no earlier than it was done, from one follow-up to another.</summary>
    public static bool IsPossible(SettlementCell cell) =>
        cell.Outcome is Outcome.Positive or Outcome.Inconclusive && cell.Known >= cell.Day
        && IsFollowUp(cell.Before) && IsFollowUp(cell.After) && (cell.Before, cell.MinutesBefore) != (cell.After, cell.MinutesAfter)
        && (IsSettled(cell.Before) || cell.MinutesBefore is null) && (IsSettled(cell.After) || cell.MinutesAfter is null);

    /// <exception cref="ArgumentException">They lead to another follow-up.</exception>
    public static void Check(TallyCells cells)
    {
        if (cells.Settlements.IsEmpty) return;
        var balance = new Balance("settlements", "notable");
        var numbers = new Dictionary<NotableRun, int>();
        foreach (var run in cells.Notable)
        {
            if (run.FollowUp == FollowUp.None) continue;
            balance.Right(Key(run, run.FollowUp, run.MinutesToSpecimen), 1);
            balance.Left(Key(run, FollowUp.Pending, null), 1);
        }

        foreach (var cell in cells.Settlements)
        {
            var run = new NotableRun(cell.Minute, cell.DateOnly, cell.Site, cell.Lot, cell.Kit, cell.Operator, cell.Specimen, cell.Collection, cell.Outcome, FollowUp.None, null, null, cell.Occasion);
            balance.Left(Key(run, cell.Before, cell.MinutesBefore), -cell.Runs);
            balance.Left(Key(run, cell.After, cell.MinutesAfter), cell.Runs);
        }

        balance.MustBeEqual();

        // The time for a specimen may be over only after the data end: pending and unverified are one here.
        ulong Key(NotableRun run, FollowUp followUp, int? minutes)
        {
            var last = run with { FollowUp = followUp == FollowUp.Unverified ? FollowUp.Pending : followUp, MinutesToSpecimen = minutes };
            if (!numbers.TryGetValue(last, out var number)) numbers.Add(last, number = numbers.Count);
            return (ulong)number;
        }
    }

    private static bool IsFollowUp(FollowUp followUp) => followUp is >= FollowUp.Confirmed and <= FollowUp.Unverified;

    private static bool IsSettled(FollowUp followUp) => followUp is FollowUp.Confirmed or FollowUp.Refuted;
}
