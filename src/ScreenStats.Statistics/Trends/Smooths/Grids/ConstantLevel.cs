namespace ScreenStats.Statistics.Trends.Smooths.Grids;

/// <summary>A rate that does not wander: all counts are of one rate.</summary>
internal static class ConstantLevel
{
    /// <summary>The distribution of the rate's logit, and the logarithm of the likelihood.</summary>
    public static (LevelMarginal Marginal, double LogLikelihood) All(LevelData data)
    {
        var (grid, pooled) = Grid(data, data.Periods.Length);
        return (grid.Smoothed()[0], grid.LogLikelihood - pooled.Coefficients + data.Coefficients);
    }

    /// <summary>The same by the periods up to each.</summary>
    public static LevelMarginal?[] Filtered(LevelData data)
    {
        var filtered = new LevelMarginal?[data.Periods.Length];
        for (var t = 0; t < filtered.Length; t++)
        {
            if (t > 0 && data.Periods[t].Trials == 0)
            {
                filtered[t] = filtered[t - 1];
                continue;
            }

            var pooled = data.Pooled(t + 1);
            var diffuse = data.Start.IsDiffuse && !(pooled.Events > 0 && pooled.Events < pooled.Trials);
            if (!diffuse) filtered[t] = Grid(data, t + 1).Grid.Filtered()[0];
        }

        return filtered;
    }

    /// <summary>
    /// How fast the logarithm of the likelihood rises with the variance of a step, from 0: half the mean, over the constant rate, of the squared sum
    /// of the residuals from each period on, less the information.
    /// </summary>
    public static double Slope(LevelData data)
    {
        double constant = 0, linear = 0, square = 0, information = 0, events = 0, trials = 0, passed = data.Span;
        for (var t = data.Periods.Length - 1; t > 0; t--)
        {
            events += data.Periods[t].Events;
            trials += data.Periods[t].Trials;
            constant += data.Gaps[t] * events * events;
            linear += data.Gaps[t] * events * trials;
            square += data.Gaps[t] * trials * trials;
            information += passed * data.Periods[t].Trials;
            passed -= data.Gaps[t];
        }

        var (mean, squared) = Grid(data, data.Periods.Length).Grid.RateMoments();
        return 0.5 * (constant - (2 * linear * mean) + (square * squared) - (information * (mean - squared)));
    }

    private static (LevelGrid Grid, LevelData Pooled) Grid(LevelData data, int periods)
    {
        var pooled = data.Pooled(periods);
        return (LevelGrid.Of(pooled, 0) ?? throw new InvalidOperationException("One rate always has a lattice."), pooled);
    }
}
