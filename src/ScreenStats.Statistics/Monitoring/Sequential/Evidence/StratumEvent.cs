namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>One refuted positive among the lots in use where and when it happened.</summary>
public sealed record StratumEvent
{
    /// <summary>An event.</summary>
    /// <param name="lot">The number of the lot on which it fell, one of those in <paramref name="shares"/>.</param>
    /// <param name="shares">The lots in use in the stratum, each once; not all of weight 0.</param>
    /// <param name="look">The look (a day, for instance) at which it was reported, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The lot is not among the shares, a lot is there twice, all weights are 0, or the look is below 0.</exception>
    public StratumEvent(int lot, IReadOnlyList<LotShare> shares, long look = 0)
    {
        ArgumentNullException.ThrowIfNull(shares);
        Guard.NotNegative(look);
        double total = 0;
        var found = false;
        for (var i = 0; i < shares.Count; i++)
        {
            total += shares[i].Weight;
            found |= shares[i].Lot == lot;
            for (var j = 0; j < i; j++)
            {
                if (shares[j].Lot == shares[i].Lot) throw new ArgumentOutOfRangeException(nameof(shares), shares[i].Lot, "A lot has one share only.");
            }
        }

        if (!found) throw new ArgumentOutOfRangeException(nameof(lot), lot, "The lot on which the event fell must be among the shares.");
        if (!(total > 0) || !double.IsFinite(total)) throw new ArgumentOutOfRangeException(nameof(shares), total, "The weights must add up to a finite number above 0.");
        Lot = lot;
        Shares = [.. shares];
        Total = total;
        Look = look;
    }

    /// <summary>The lot on which it fell.</summary>
    public int Lot { get; }

    /// <summary>The lots in use, with their weights.</summary>
    public IReadOnlyList<LotShare> Shares { get; }

    /// <summary>The sum of the weights.</summary>
    public double Total { get; }

    /// <summary>The look at which it was reported.</summary>
    public long Look { get; }
}
