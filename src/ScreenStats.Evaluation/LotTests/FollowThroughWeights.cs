using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.LotTests;

/// <summary>
/// How far the positives of a site, or of a lot, were followed up to a conclusive result: a lot whose positives are followed up less often is
/// expected to have fewer refuted ones.
/// </summary>
/// <remarks>
/// Of positive runs that are not pending. Follow-up is the work of sites: a site's share is (conclusive + 10 f) / (positives + 10), f that of the
/// program; a lot's factor is (conclusive + 10) / (those expected by the shares of its sites + 10), so that with few positives it is near 1.
/// </remarks>
internal sealed class FollowThroughWeights
{
    private const double Prior = 10;
    private readonly Dictionary<string, double> sites = new(StringComparer.Ordinal);
    private readonly Dictionary<string, double> lots = new(StringComparer.Ordinal);

    public FollowThroughWeights(IReadOnlyCollection<PlaceWeek> entries)
    {
        var (conclusive, settled) = (entries.Sum(entry => entry.Conclusive), entries.Sum(entry => entry.Settled));
        var program = settled == 0 || conclusive == 0 ? 1 : (double)conclusive / settled;
        foreach (var site in entries.GroupBy(entry => entry.Site, StringComparer.Ordinal))
        {
            sites.Add(site.Key, (site.Sum(entry => entry.Conclusive) + (Prior * program)) / (site.Sum(entry => entry.Settled) + Prior));
        }

        foreach (var lot in entries.GroupBy(entry => entry.Lot, StringComparer.Ordinal))
        {
            var expected = lot.Sum(entry => entry.Settled * sites[entry.Site]);
            lots.Add(lot.Key, lot.Key == Levels.None ? 1 : (lot.Sum(entry => entry.Conclusive) + Prior) / (expected + Prior));
        }
    }

    /// <summary>The share of a site's positives.</summary>
    public double OfSite(string site) => sites[site];

    /// <summary>The factor of a lot against the sites it was used at.</summary>
    public double OfLot(string lot) => lots[lot];
}
