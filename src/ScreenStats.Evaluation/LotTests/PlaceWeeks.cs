using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Evaluation.LotTests;

/// <summary>The counts of every lot at every site in every ISO week.</summary>
internal sealed class PlaceWeeks
{
    public PlaceWeeks(Tally tally)
    {
        var found = new Dictionary<(string Lot, string Site, DateOnly Week), PlaceWeek>();
        PlaceWeek At(string lot, string site, DateOnly day)
        {
            var key = (lot, site, ReportPeriods.Monday(day));
            if (!found.TryGetValue(key, out var entry)) found.Add(key, entry = new PlaceWeek(lot, site, key.Item3));
            return entry;
        }

        foreach (var cell in tally.Cells.Screens)
        {
            var entry = At(cell.Lot, cell.Site, cell.Day);
            entry.Runs += cell.Runs;
            if (cell.Outcome.IsUnusable())
            {
                entry.Unusable += cell.Runs;
                continue;
            }

            entry.Tests += cell.Runs;
            if (cell.Outcome != Outcome.Positive) continue;
            if (cell.FollowUp != FollowUp.Pending) entry.Settled += cell.Runs;
            if (cell.FollowUp is FollowUp.Confirmed or FollowUp.Refuted) entry.Conclusive += cell.Runs;
            if (cell.FollowUp == FollowUp.Refuted) entry.Refuted += cell.Runs;
        }

        foreach (var cell in tally.Cells.Cases) At(cell.Lot, cell.Site, cell.Day).Cases += cell.Cases;
        All = [.. found.Values.OrderBy(entry => entry.Lot, Levels.Order).ThenBy(entry => entry.Site, Levels.Order).ThenBy(entry => entry.Week)];
    }

    /// <summary>Every entry, by lot, site and week.</summary>
    public ImmutableArray<PlaceWeek> All { get; }
}
