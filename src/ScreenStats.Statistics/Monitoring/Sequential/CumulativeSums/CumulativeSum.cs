namespace ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

/// <summary>One-sided cumulative sums over increments of any kind.</summary>
public static class CumulativeSum
{
    /// <summary>The path over increments.</summary>
    /// <param name="increments">What each observation adds: its value less the reference value, or a log-likelihood ratio; finite.</param>
    /// <param name="limit">The limit, above 0.</param>
    /// <param name="options">The conventions; the usual ones where null.</param>
    /// <returns>The path: the statistic, the signals, and with which observation each rise began.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An increment is not finite, the limit is not above 0, or the head start not below it.</exception>
    /// <remarks>S = max(0, S + W) from the head start. To watch for a fall, give the increments of the other sign. Source: Page ES, Biometrika
    /// 1954;41:100-115.</remarks>
    public static CumulativeSumPath Path(IReadOnlyList<double> increments, double limit, CumulativeSumOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(increments);
        options ??= new CumulativeSumOptions();
        options.Check(limit);
        return Run(increments.Count, i => increments[i], limit, options.HeadStart, 1, limit, options);
    }

    /// <summary>The path in units of a lattice: whole-numbered increments, limit and head start are exact; what is shown is divided by the units.</summary>
    internal static CumulativeSumPath Run(int count, Func<int, double> increment, double limit, double start, double units, double shownLimit, CumulativeSumOptions options)
    {
        var points = new CumulativeSumPoint[count];
        var signals = new List<CumulativeSumSignal>();
        var state = start;
        var risingSince = 0;
        var signalling = false;
        for (var i = 0; i < count; i++)
        {
            var added = increment(i);
            Guard.Finite(added);
            var sum = state + added;
            state = Math.Max(0, sum);
            var isSignal = options.Signal == SignalRule.AtOrAbove ? state >= limit : state > limit;
            points[i] = new CumulativeSumPoint(added / units, (options.Reset == ResetRule.AfterAdding ? state : sum) / units, isSignal);
            if (state <= 0) risingSince = i + 1;
            if (isSignal && !signalling) signals.Add(new CumulativeSumSignal(i, risingSince, state / units));
            signalling = isSignal;
            if (isSignal && options.AfterSignal == AfterSignal.Restart) (state, risingSince, signalling) = (start, i + 1, false);
        }

        return new CumulativeSumPath(shownLimit, options, points, signals);
    }
}
