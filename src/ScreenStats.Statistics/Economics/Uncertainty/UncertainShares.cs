using System.Collections.Immutable;
using ScreenStats.Statistics.Monitoring.Scans;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression.Ranks;

namespace ScreenStats.Statistics.Economics.Uncertainty;

/// <summary>Shares that add up to 1, known by a Dirichlet distribution: each one alone has a beta distribution.</summary>
/// <remarks>
/// Means w_i/W and variances m_i (1 - m_i)/(W + 1), W the sum of the weights. Source: Briggs AH, Ades AE, Price MJ, Med Decis Making 2003;23:341-350 (from memory).
/// </remarks>
public sealed class UncertainShares
{
    private UncertainShares(ImmutableArray<double> weights) => Weights = weights;

    /// <summary>The weights, each above 0.</summary>
    public ImmutableArray<double> Weights { get; }

    /// <summary>Shares by their weights, for instance counts, each with what was known before.</summary>
    /// <param name="weights">Two or more weights, each above 0 and at most 1e15.</param>
    /// <returns>The shares.</returns>
    /// <exception cref="ArgumentException">Fewer than two weights.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A weight outside its domain.</exception>
    public static UncertainShares Of(IReadOnlyList<double> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        if (weights.Count < 2) throw new ArgumentException("Shares of a whole are two or more.", nameof(weights));
        foreach (var weight in weights)
        {
            if (!(weight is > 0 and <= 1e15)) throw new ArgumentOutOfRangeException(nameof(weights), weight, "A weight must be a number above 0 and at most 1e15.");
        }

        return new UncertainShares([.. weights]);
    }

    /// <summary>Shares by their means and standard deviations.</summary>
    /// <param name="means">Two or more means, each in (0, 1), that add up to 1.</param>
    /// <param name="standardDeviations">One for each, above 0.</param>
    /// <returns>
    /// The distribution with these means whose variances have the same sum, W = sum m (1 - m)/sum v - 1: exactly these deviations where a Dirichlet distribution has them.
    /// </returns>
    /// <exception cref="ArgumentException">Fewer than two means, or another number of deviations.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, means that do not add up to 1, or deviations too large for any distribution.</exception>
    public static UncertainShares ByMoments(IReadOnlyList<double> means, IReadOnlyList<double> standardDeviations)
    {
        ArgumentNullException.ThrowIfNull(means);
        ArgumentNullException.ThrowIfNull(standardDeviations);
        if (means.Count < 2) throw new ArgumentException("Shares of a whole are two or more.", nameof(means));
        if (standardDeviations.Count != means.Count) throw new ArgumentException("There must be one standard deviation for each mean.", nameof(standardDeviations));
        foreach (var mean in means)
        {
            if (!(mean is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(means), mean, "A mean share must lie between 0 and 1, without both.");
        }

        foreach (var deviation in standardDeviations)
        {
            if (!(deviation is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(standardDeviations), deviation, "The standard deviation of a share must lie between 0 and 1, without both.");
        }

        if (Math.Abs(means.Sum() - 1) > 1e-9) throw new ArgumentOutOfRangeException(nameof(means), means.Sum(), "The mean shares must add up to 1.");
        var total = (means.Sum(mean => mean * (1 - mean)) / standardDeviations.Sum(deviation => deviation * deviation)) - 1;
        if (!(total > 0)) throw new ArgumentOutOfRangeException(nameof(standardDeviations), standardDeviations.Max(), "The standard deviations are larger than shares with these means can have.");
        return Of([.. means.Select(mean => mean * total)]);
    }

    /// <summary>What is known of one share alone.</summary>
    /// <param name="index">Its place, from 0.</param>
    /// <returns>A beta distribution.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such share.</exception>
    public UncertainFigure Share(int index)
    {
        if (index < 0 || index >= Weights.Length) throw new ArgumentOutOfRangeException(nameof(index), index, "There is no share at this place.");
        return UncertainFigure.Beta(new BetaDistribution(Weights[index], Weights.Where((_, other) => other != index).Sum()));
    }

    /// <summary>All shares once, from a stream of their own; they add up to 1.</summary>
    internal double[] Draw(ReplicateStream stream)
    {
        var random = new RandomDraw(stream);
        double[] logs = [.. Weights.Select(random.LogGamma)];
        var highest = logs.Max();
        for (var i = 0; i < logs.Length; i++) logs[i] = Math.Exp(logs[i] - highest);
        var sum = logs.Sum();
        for (var i = 0; i < logs.Length; i++) logs[i] /= sum;
        return logs;
    }
}
