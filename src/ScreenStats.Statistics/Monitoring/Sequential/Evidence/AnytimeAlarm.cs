namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>The alarm on a lot whose chance of being false holds however often one looks.</summary>
/// <remarks>
/// <para>
/// Each refuted positive falls on a lot with null probability p, the lot's share of the tests on which it could have fallen. If the lot's odds
/// were θ times as high, the chance would be q = θp / (1 - p + θp). The evidence is multiplied by q / p where the event falls on the lot and by
/// (1 - q) / (1 - p) where not, and averaged over θ = 2, 4, 8, 16, 32, 64: the average of the six running products (a mixture), not the product
/// of averages. It is computed on the logarithmic scale.
/// </para>
/// <para>
/// Under the null p (q / p) + (1 - p) (1 - q) / (1 - p) = 1, so that the mean of the evidence stays 1 whatever came before (a martingale). By
/// Ville's inequality the chance that it ever reaches c is at most 1 / c: not at one look, but over all looks together. Looking every day, or
/// after each result, costs nothing, and neither does stopping as soon as one likes. A repeated fixed test has no such promise.
/// </para>
/// <para>
/// The evidence after a look does not depend on the order of the events in it, since products do not; so that several lots, sites or events on
/// one day need no order, and the alarm is judged at the end of a look only.
/// </para>
/// <para>
/// Several events of one stratum, reported at one look, are draws without replacement from its tests, and the shares are those before the first.
/// Each product is a convex function of how many of them fall on the lot, and its mean over draws without replacement is at most the mean
/// over draws with replacement (Hoeffding 1963, theorem 4), which is 1: the promise holds.
/// </para>
/// <para>
/// Sources: Ville J, Étude critique de la notion de collectif, 1939; Ramdas A, Grünwald P, Vovk V, Shafer G, Stat Sci 2023;38:576-601; Hoeffding
/// W, J Am Stat Assoc 1963;58:13-30 (all from memory).
/// </para>
/// </remarks>
public static class AnytimeAlarm
{
    /// <summary>The evidence against one lot.</summary>
    /// <param name="events">The events, in order of their looks.</param>
    /// <param name="threshold">From which evidence the alarm is raised.</param>
    /// <returns>The path, with the first alarm. Events with a null probability of 0 or 1 drop out.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A look comes before that of an earlier event.</exception>
    public static EvidencePath Of(IReadOnlyList<EvidenceEvent> events, AlarmThreshold threshold)
    {
        ArgumentNullException.ThrowIfNull(events);
        var builder = new EvidencePathBuilder(threshold);
        foreach (var one in events) builder.Add(one.NullProbability, one.OnLot, one.Look);
        return builder.Build();
    }

    /// <summary>The evidence against each of several lots among which events could fall.</summary>
    /// <param name="events">The events, in order of their looks.</param>
    /// <param name="thresholds">The threshold of each lot; the lots are numbered as in this list.</param>
    /// <returns>A path for each lot, in the order of the thresholds. An event with one lot in use says nothing about it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An event names a lot without a threshold, or a look comes before that of an earlier event.</exception>
    public static IReadOnlyList<EvidencePath> OfLots(IReadOnlyList<StratumEvent> events, IReadOnlyList<AlarmThreshold> thresholds)
    {
        ArgumentNullException.ThrowIfNull(events);
        ArgumentNullException.ThrowIfNull(thresholds);
        var builders = thresholds.Select(threshold => new EvidencePathBuilder(threshold)).ToArray();
        long last = 0;
        foreach (var one in events)
        {
            if (one.Look < last) throw new ArgumentOutOfRangeException(nameof(events), one.Look, "Events must be in the order of their looks.");
            last = one.Look;
            foreach (var share in one.Shares)
            {
                if (share.Lot >= builders.Length) throw new ArgumentOutOfRangeException(nameof(events), share.Lot, "An event names a lot without a threshold.");
                builders[share.Lot].Add(share.Weight / one.Total, share.Lot == one.Lot, one.Look);
            }
        }

        return [.. builders.Select(builder => builder.Build())];
    }

    /// <summary>The same with one threshold for a number of lots that was fixed beforehand.</summary>
    /// <param name="events">The events, in order of their looks.</param>
    /// <param name="lots">The number of lots, 1 or more.</param>
    /// <param name="falseAlarmProbability">The largest chance of any false alarm on any lot, ever; in (0, 1).</param>
    /// <returns>A path for each lot.</returns>
    /// <exception cref="ArgumentOutOfRangeException">As above, or no lot, or a chance outside (0, 1).</exception>
    public static IReadOnlyList<EvidencePath> OfLots(IReadOnlyList<StratumEvent> events, int lots, double falseAlarmProbability) =>
        OfLots(events, [.. Enumerable.Repeat(AlarmThreshold.OfLots(lots, falseAlarmProbability), lots)]);
}
