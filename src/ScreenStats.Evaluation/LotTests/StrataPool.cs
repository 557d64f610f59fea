using ScreenStats.Statistics.Monitoring.Lots;

namespace ScreenStats.Evaluation.LotTests;

/// <summary>Places side by side in strata: what each has against the others of the same strata.</summary>
internal sealed class StrataPool
{
    private readonly (long Events, long Trials, double Weight, int Places)[] totals;
    private readonly bool weighted;

    public StrataPool(IReadOnlyList<StratumPart> parts, int strata, bool weighted)
    {
        this.weighted = weighted;
        totals = new (long, long, double, int)[strata];
        var byPlace = new SortedDictionary<string, List<StratumPart>>(StringComparer.Ordinal);
        foreach (var part in parts)
        {
            if (part.Trials == 0) continue;
            var (events, trials, weight, places) = totals[part.Stratum];
            totals[part.Stratum] = (events + part.Events, trials + part.Trials, weight + part.Weight, places + 1);
            if (!byPlace.TryGetValue(part.Place, out var own)) byPlace.Add(part.Place, own = []);
            own.Add(part);
        }

        Places = [.. byPlace.Keys];
        Parts = byPlace;
    }

    /// <summary>The places, in ordinal order.</summary>
    public IReadOnlyList<string> Places { get; }

    private SortedDictionary<string, List<StratumPart>> Parts { get; }

    /// <summary>The exact test of a place.</summary>
    public StratifiedTest Test(string place) => weighted ? StratifiedExactTest.Binomial(Shared(place)) : StratifiedExactTest.Hypergeometric(Whole(place));

    /// <summary>How many times the others' rate its rate is.</summary>
    public LotRatioEstimate Ratio(string place, LotRatioOptions options) =>
        weighted ? LotRatio.Binomial(Shared(place), options) : LotRatio.Hypergeometric(Whole(place), options);

    /// <summary>How many times the variance of the places' counts in single strata is that of chance: sums over all places and strata.</summary>
    public double? Dispersion()
    {
        double seen = 0, chance = 0;
        foreach (var part in Parts.Values.SelectMany(own => own))
        {
            var (events, trials, weight, places) = totals[part.Stratum];
            if (places < 2 || events == 0 || events == trials) continue;
            var share = weighted ? part.Weight / weight : (double)part.Trials / trials;
            var expected = events * share;
            seen += (part.Events - expected) * (part.Events - expected);
            chance += events * share * (1 - share) * (weighted ? 1 : (double)(trials - events) / (trials - 1));
        }

        return chance > 0 ? seen / chance : null;
    }

    private List<SharedStratum> Shared(string place)
    {
        var strata = new List<SharedStratum>();
        foreach (var part in Parts[place])
        {
            var (events, _, weight, places) = totals[part.Stratum];
            if (places > 1 && events > 0) strata.Add(SharedStratum.FromWeights(part.Events, events, part.Weight, weight));
        }

        return strata;
    }

    private List<LotStratum> Whole(string place)
    {
        var strata = new List<LotStratum>();
        foreach (var part in Parts[place])
        {
            var (events, trials, _, places) = totals[part.Stratum];
            if (places > 1 && events > 0) strata.Add(new LotStratum(part.Events, part.Trials, events, trials));
        }

        return strata;
    }
}
