using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression.Fitting;
using ScreenStats.Statistics.Regression.Rates;
using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Trends.Growth;

/// <summary>
/// Limits of a growth from the profile likelihood: the growths at which the largest likelihood over the intercept lies less than half a squared normal
/// quantile below the largest of all. Source: Venzon DJ, Moolgavkar SH, Appl Stat 1988;37:87-94 (from memory).
/// </summary>
internal static class GrowthProfile
{
    private const string Words = "profile likelihood";

    private static readonly double[] Constant = [1];

    /// <summary>Both limits around the most likely growth, and the probability of the likelihood ratio against no growth.</summary>
    public static (OpenEstimate Growth, double? PValue) Around(CountPoint[] used, SeriesOptions options, double best, double error, double log)
    {
        var z = Quantile.Normal(options.Confidence);
        var origin = (used[0].Time + used[^1].Time) / 2;
        double Below(double growth) => log - LogAt(used, options.Scale, growth, origin) - (z * z / 2);
        double? End(int sign)
        {
            var (near, far) = (best, best + (sign * z * error));
            for (var step = 0; step < 60; step++)
            {
                if (Below(far) > 0) return Root.Between(Below, near, far);
                (near, far) = (far, far + (sign * z * error * (1 << Math.Min(step, 20))));
            }

            return null;
        }

        var (lower, upper) = (End(-1), End(1));
        UndefinedReason? Open(double? end) => end is null ? UndefinedReason.EventsInOnePeriod : null;
        var ratio = Math.Sqrt(Math.Max(0, 2 * (log - LogAt(used, options.Scale, 0, origin))));
        return (new OpenEstimate(best, lower, upper, options.Words(), options.Confidence, null, Open(lower), Open(upper)), MathNet.Numerics.SpecialFunctions.Erfc(ratio / Math.Sqrt(2)));
    }

    /// <summary>The one limit where the growth has no bound on the other side.</summary>
    public static OpenEstimate OneSided(CountPoint[] used, SeriesOptions options)
    {
        var method = options.Words().Split(',')[0] + ", " + Words;
        var (rises, turn) = Towards(used, options.Scale);
        var sign = rises ? 1 : -1;

        // In the limit all times but the turning one are fitted exactly, and that one by its own rate.
        CountPoint[] there = [.. used.Where(point => point.Time == turn)];
        var log = 0.0;
        if (there.Length > 0 && there.Any(point => point.Events > 0) && (options.Scale == TrendScale.Events || there.Any(point => point.Events < point.Size)))
            log = LogAt(there, options.Scale, 0, turn);
        var z = Quantile.Normal(options.Confidence);
        double Below(double growth) => log - LogAt(used, options.Scale, growth, turn) - (z * z / 2);
        var span = used[^1].Time - used[0].Time;
        var (near, far) = (0.0, 0.0);
        double step = 1 / span;
        if (Below(0) > 0)
        {
            // No growth is not compatible: the limit lies beyond 0, towards the open side.
            for (far = sign * step; Below(far) > 0 && step < 1e6 / span; far = sign * step) (near, step) = (far, step * 2);
        }
        else
        {
            for (near = -sign * step; Below(near) <= 0 && step < 1e6 / span; near = -sign * step) (far, step) = (near, step * 2);
        }

        double? limit = Below(near) > 0 && Below(far) <= 0 ? Root.Between(Below, near, far) : null;
        var reason = UndefinedReason.EventsInOnePeriod;
        return rises
            ? new OpenEstimate(null, limit, null, method, options.Confidence, reason, limit is null ? reason : null, reason)
            : new OpenEstimate(null, null, limit, method, options.Confidence, reason, reason, limit is null ? reason : null);
    }

    /// <summary>Whether the growth runs to infinity (or minus infinity), and at which time it turns from none to all.</summary>
    private static (bool Rises, double Turn) Towards(CountPoint[] used, TrendScale scale)
    {
        double[] withEvents = [.. used.Where(point => point.Events > 0).Select(point => point.Time)];
        double[] withOthers = [.. used.Where(point => scale != TrendScale.Odds || point.Events < point.Size).Select(point => point.Time)];

        // Odds: all others come before all events (rising) or after; rates: all events lie at the last time or at the first.
        return scale == TrendScale.Odds
            ? withOthers.Max() <= withEvents.Min() ? (true, withEvents.Min()) : (false, withEvents.Max())
            : withEvents.Min() == used[^1].Time ? (true, used[^1].Time) : (false, used[0].Time);
    }

    /// <summary>The largest likelihood over the intercept at one growth.</summary>
    private static double LogAt(CountPoint[] used, TrendScale scale, double growth, double origin)
    {
        var offsets = Array.ConvertAll(used, point => growth * (point.Time - origin));
        var model = SeriesFit.ModelOf(used, scale, offsets);
        var x = Array.ConvertAll(used, _ => Constant);
        double events = used.Sum(point => point.Events), size = used.Sum(point => point.Size);
        double[] intercept;
        if (model is LogShareModel share) intercept = LogBinomialRegression.Search(share, x, [Math.Log(events / size) - offsets.Max()]).Coefficients;
        else if (model is LogRateModel) intercept = [Math.Log(events) - LogSum(used.Select((point, i) => Math.Log(point.Size) + offsets[i]))];
        else intercept = NewtonSearch.Run(model, x, [MiddleOf(used, offsets)]).Coefficients;
        return model.FitSum(x, intercept).Log;
    }

    /// <summary>The intercept at which expected and seen events agree, found between bounds: Newton's steps are lost where all rows are at an edge.</summary>
    private static double MiddleOf(CountPoint[] used, double[] offsets)
    {
        var events = used.Sum(point => point.Events);
        double Missing(double a) => used.Select((point, i) => point.Size * LogitScale.Fraction(a + offsets[i])).Sum() - events;
        var (low, high) = (-offsets.Max() - 50, -offsets.Min() + 50);
        return Missing(low) < 0 && Missing(high) > 0 ? Root.Between(Missing, low, high) : 0;
    }

    private static double LogSum(IEnumerable<double> logs)
    {
        double[] all = [.. logs];
        var top = all.Max();
        return top + Math.Log(all.Sum(log => Math.Exp(log - top)));
    }
}
