using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>Where a point lies: its side, and its distance from the centre as a normal score.</summary>
internal readonly record struct Standing(ChartSide Side, double Score)
{
    // Rounding must not decide on which side a chance of exactly one half falls.
    private const double Half = 0.5 * (1 + 1e-12);

    /// <summary>From the chance of as much or more, and of as little or less. They add up to more than 1, so at most one is a half or less.</summary>
    public static Standing FromTails(double orMore, double orLess) =>
        orMore <= Half ? new Standing(ChartSide.Above, NormalScore(orMore))
        : orLess <= Half ? new Standing(ChartSide.Below, -NormalScore(orLess))
        : new Standing(ChartSide.On, 0);

    public static Standing FromDistance(double score) =>
        new(score > 0 ? ChartSide.Above : score < 0 ? ChartSide.Below : ChartSide.On, score);

    /// <summary>Whether the score lies farther out than a distance; what is equal but for rounding does not.</summary>
    public bool Beyond(double distance) => Math.Abs(Score) > distance * (1 + 1e-9);

    private static double NormalScore(double tail) => tail >= 0.5 ? 0 : Math.Min(37, Quantile.NormalTail(Math.Max(tail, 1e-299)));
}
