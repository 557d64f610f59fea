using System.Collections.Immutable;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Monitoring.Scans;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>Limits of figures that are computed from shares known by counts or with an interval.</summary>
/// <remarks>
/// <para>Each share is drawn as often as asked, in strata of the same probability (a Latin hypercube: McKay MD, Beckman RJ, Conover WJ, Technometrics
/// 1979;21:239-245, from memory): counts x of n from Beta(x + 1/2, n - x + 1/2), an interval from the beta distribution matched to it. The strata of the shares are put
/// together by chance (SplitMix64, a stream for each share). Limits are the quantiles of the figures. With one uncertain share and a figure that rises
/// with it they are the share's own limits carried over, but for the width of a stratum.</para>
/// </remarks>
public static class UncertainFigures
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "latin-hypercube";

    /// <summary>The most draws.</summary>
    public const int MostDraws = 100_000;

    /// <summary>The limits of each figure.</summary>
    /// <param name="shares">What is known of each share; null where it is not known.</param>
    /// <param name="draws">Draws, 100 to <see cref="MostDraws"/>.</param>
    /// <param name="seed">Where the random order starts.</param>
    /// <param name="confidence">Confidence of the limits, in (0, 1).</param>
    /// <param name="figures">The figures from a value of each share (null where it is not known): as many each time, null where one is undefined.</param>
    /// <returns>Limits that hold the figure at the stated values; null for a figure that is undefined there or in a draw, and for all where every share is exact.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static ImmutableArray<Interval?> Limits(
        ImmutableArray<AccuracyStatement?> shares, int draws, ulong seed, double confidence, Func<ImmutableArray<double?>, ImmutableArray<double?>> figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        Guard.Confidence(confidence);
        if (draws is < 100 or > MostDraws) throw new ArgumentOutOfRangeException(nameof(draws), draws, "The draws must be a whole number from 100 to 100,000.");
        var centre = figures([.. shares.Select(share => share?.Value)]);
        var drawn = shares.Select((share, index) => Draws(share, draws, new ReplicateStream(seed, index))).ToArray();
        if (drawn.All(values => values is null)) return [.. centre.Select(_ => (Interval?)null)];
        var all = centre.Select(value => value is null ? null : new double[draws]).ToArray();
        for (var draw = 0; draw < draws; draw++)
        {
            var values = figures([.. shares.Select((share, index) => drawn[index]?[draw] ?? share?.Value)]);
            for (var figure = 0; figure < all.Length; figure++)
            {
                if (values[figure] is { } value && all[figure] is { } kept) kept[draw] = value;
                else all[figure] = null;
            }
        }

        return [.. centre.Select((value, figure) => value is { } at && all[figure] is { } kept ? Between(kept, confidence).Including(at) : (Interval?)null)];
    }

    private static double[]? Draws(AccuracyStatement? share, int draws, ReplicateStream stream)
    {
        if (share is null || (share.Matched ?? share.Posterior(new BetaDistribution(0.5, 0.5))) is not { } known) return null;
        var values = new double[draws];
        for (var stratum = 0; stratum < draws; stratum++)
        {
            var below = (stratum + 0.5) / draws;
            values[stratum] = LogitScale.Fraction(TailEquation.BetaQuantileLogit(known.Alpha, known.Beta, Math.Min(below, 1 - below), upperTail: below > 0.5));
        }

        for (var left = draws - 1; left > 0; left--)
        {
            var other = (int)stream.Below(left + 1);
            (values[left], values[other]) = (values[other], values[left]);
        }

        return values;
    }

    private static Interval Between(double[] values, double confidence)
    {
        Array.Sort(values);
        var tail = (1 - confidence) / 2;
        return new Interval(At(values, tail), At(values, 1 - tail));
    }

    // Linear between the values in order, each in the middle of its stratum.
    private static double At(double[] sorted, double fraction)
    {
        var place = Math.Clamp((fraction * sorted.Length) - 0.5, 0, sorted.Length - 1);
        var below = (int)place;
        return below + 1 >= sorted.Length ? sorted[^1] : sorted[below] + ((place - below) * (sorted[below + 1] - sorted[below]));
    }
}
