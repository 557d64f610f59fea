using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Flagging;

/// <summary>Counts by lot and site, and where refuted positives fell, taken from the cubes.</summary>
internal sealed class LotSiteTable
{
    private readonly ILookup<string, ScreenCell> refutedByLot;
    private readonly ILookup<string, ScreenCell> refutedBySite;

    public LotSiteTable(Tally tally)
    {
        var counts = new Dictionary<(string Lot, string Site), LotSiteCounts>();
        foreach (var cell in tally.Cells.Screens)
        {
            var positive = cell.Outcome == Outcome.Positive;
            var more = new LotSiteCounts(
                cell.Lot, cell.Site, cell.Runs,
                Inconclusive: cell.Outcome == Outcome.Inconclusive ? cell.Runs : 0,
                Invalid: cell.Outcome == Outcome.Invalid ? cell.Runs : 0,
                Tests: positive || cell.Outcome == Outcome.Negative ? cell.Runs : 0,
                Positives: positive ? cell.Runs : 0,
                Confirmed: positive && cell.FollowUp == FollowUp.Confirmed ? cell.Runs : 0,
                Refuted: positive && cell.FollowUp == FollowUp.Refuted ? cell.Runs : 0);
            counts[(cell.Lot, cell.Site)] = counts.TryGetValue((cell.Lot, cell.Site), out var before) ? before.Plus(more) : more;
        }

        Counts = [.. counts.Values.OrderBy(entry => entry.Lot, Levels.Order).ThenBy(entry => entry.Site, Levels.Order)];
        var refuted = tally.Cells.Screens.Where(cell => cell is { Outcome: Outcome.Positive, FollowUp: FollowUp.Refuted }).ToList();
        refutedByLot = refuted.ToLookup(cell => cell.Lot, StringComparer.Ordinal);
        refutedBySite = refuted.ToLookup(cell => cell.Site, StringComparer.Ordinal);
    }

    public ImmutableArray<LotSiteCounts> Counts { get; }

    /// <summary>The sites of a lot's refuted positives.</summary>
    public (ImmutableArray<FlaggedPlace> Places, FlaggedConcentration? Concentration) SitesOf(string lot) =>
        Places(refutedByLot[lot], cell => cell.Site);

    /// <summary>The lots of a site's refuted positives, without those of lots that are flagged themselves.</summary>
    public (ImmutableArray<FlaggedPlace> Places, FlaggedConcentration? Concentration) LotsOf(string site, Func<string, bool> leaveOut) =>
        Places(refutedBySite[site].Where(cell => !leaveOut(cell.Lot)), cell => cell.Lot);

    private static (ImmutableArray<FlaggedPlace> Places, FlaggedConcentration? Concentration) Places(
        IEnumerable<ScreenCell> refuted, Func<ScreenCell, string> name)
    {
        var places = refuted
            .GroupBy(name, StringComparer.Ordinal)
            .Select(place => new FlaggedPlace(place.Key, place.Sum(cell => cell.Runs), place.Min(cell => cell.Day), place.Max(cell => cell.Day)))
            .OrderByDescending(place => place.Events).ThenBy(place => place.Name, Levels.Order)
            .ToImmutableArray();
        if (places.IsEmpty) return (places, null);
        var all = places.Sum(place => place.Events);
        var held = 0L;
        var enough = places.TakeWhile(place =>
        {
            var before = held;
            held += place.Events;
            return 5 * before < 4 * all;
        }).ToList();
        return (places, new FlaggedConcentration(
            [.. enough.Select(place => place.Name)], enough.Sum(place => place.Events),
            enough.Min(place => place.FirstDay), enough.Max(place => place.LastDay)));
    }
}
