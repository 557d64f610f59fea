using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Trends.Growth;

/// <summary>How fast a rate rises or falls, and in which time it doubles or halves.</summary>
public static class GrowthRate
{
    /// <summary>The growth of a series.</summary>
    /// <param name="points">The points, in any order; several at one time are allowed.</param>
    /// <param name="options">Scale, limits and confidence; null for the defaults (odds, plain limits, 0.95).</param>
    /// <returns>
    /// The growth; a reason where fewer than two periods have trials, there is no event, or nothing else. Where all events lie at one end of the series the growth
    /// has no bound on one side: then the other limit is given, from the profile likelihood.
    /// </returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">More events than trials, or an option outside its domain.</exception>
    /// <remarks>
    /// The slope r of log odds (logistic), log share (log-binomial) or log events per exposure (Poisson) on time. Change per unit exp(r) - 1; doubling time ln 2 / r where r is
    /// above 0, halving time ln 2 / -r below. The limits of the time are those of r turned over: where they span 0 the longer end is open. Coverage of nominal 0.95, measured
    /// on 4,000 drawn series a line (growth-coverage.csv of the tests): plain and profile limits 0.95 to 0.96 for chance alone, 0.78 at a dispersion of 2.5; quasi limits held at a dispersion of 1 or
    /// more with Student's distribution 0.95 to 0.99 in 8 and 26 weeks (in 4 weeks they say next to nothing); robust limits 0.70 in 8 weeks, 0.88 in 26. Where weeks lean on each other (correlation
    /// 0.6) none holds: 0.78 by dispersion and by robust errors in 26 weeks, 0.75 and 0.85 in 104. Source: McCullagh P, Nelder JA, Generalized Linear Models, 1989; Wallinga J, Lipsitch M, Proc R Soc B 2007;274:599-604, for growth and doubling (from memory).
    /// </remarks>
    public static GrowthEstimate Of(IReadOnlyList<CountPoint> points, SeriesOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(points);
        options ??= new SeriesOptions();
        options.Check();
        var (used, periods, times) = SeriesFit.Sorted(points, options.Scale);
        if (Impossible(used, options.Scale) is { } why) return Undefined(used, options, OpenEstimate.Undefined(why, options.Words(), options.Confidence), why);
        var middle = (used[0].Time + used[^1].Time) / 2;
        var fit = SeriesFit.Of(used, periods, times, Array.ConvertAll(used, point => new[] { point.Time - middle }), options);
        if (fit.Reason is UndefinedReason.Separation)
            return Undefined(used, options, GrowthProfile.OneSided(used, options), UndefinedReason.EventsInOnePeriod);
        if (fit.Reason is { } reason) return Undefined(used, options, OpenEstimate.Undefined(reason, options.Words(), options.Confidence), reason);

        var growth = fit.Combination([0, 1], options.Words(), options.Confidence);
        var pValue = fit.Probability(1);
        if (options.Limits == TrendLimits.ProfileLikelihood) (growth, pValue) = GrowthProfile.Around(used, options, fit.Coefficients[1], Math.Sqrt(fit.Covariance[1, 1]), fit.LogLikelihood);
        var line = new FittedLine(middle, fit.Coefficients[0], fit.Coefficients[1], fit.Covariance[0, 0], fit.Covariance[0, 1], fit.Covariance[1, 1]);
        return new GrowthEstimate(
            options.Scale, options.Limits, Distinct(used), used[0].Time, used[^1].Time, used.Sum(point => point.Events), used.Sum(point => point.Size), growth,
            fit.HasLimits ? Math.Sqrt(fit.Covariance[1, 1]) : null, pValue, growth.Through(Precise.ExponentialMinusOne).Finite(), Turnover(growth), DirectionOf(growth), line, fit.Deviance,
            fit.DegreesOfFreedom, fit.Dispersion, fit.Lag, fit.StudentDegrees, options.Words(), options.Confidence, null);
    }

    /// <summary>The growth of a series of trials.</summary>
    /// <param name="counts">The counts, in any order.</param>
    /// <param name="options">Scale, limits and confidence; null for the defaults.</param>
    /// <returns>As for points.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain.</exception>
    public static GrowthEstimate Of(IReadOnlyList<TimedCount> counts, SeriesOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(counts);
        return Of([.. counts.Select(count => new CountPoint(count.Time, count.Events, count.Trials))], options);
    }

    /// <summary>The doubling or halving time of a growth that is known with its limits.</summary>
    /// <param name="growth">The growth per unit of time of log odds or log rate.</param>
    /// <returns>The time; a limit is open, with the reason, where the growth may be nil or of the other sign.</returns>
    /// <exception cref="ArgumentNullException">No growth.</exception>
    public static TurnoverTime Turnover(OpenEstimate growth)
    {
        ArgumentNullException.ThrowIfNull(growth);
        double? fastestDoubling = growth.Upper is { } up && up > 0 ? Turned(up) : null, fastestHalving = growth.Lower is { } low && low < 0 ? Turned(-low) : null;
        TurnoverTime Of(TurnoverKind kind, OpenEstimate time) => new(kind, time.Finite(), fastestDoubling, fastestHalving);

        // Without a value the limits may still say that it rises: then the longest doubling time is known.
        var rises = growth.Value > 0 || (growth.Value is null && growth.Lower > 0);
        var falls = growth.Value < 0 || (growth.Value is null && growth.Upper < 0);
        if (!rises && !falls)
            return Of(TurnoverKind.None, OpenEstimate.Undefined(growth.Reason ?? UndefinedReason.SlopeNil, growth.Method, growth.Confidence));
        var (fast, slow) = rises ? (growth.Upper, growth.Lower) : (-growth.Lower, -growth.Upper);
        var (fastReason, slowReason) = rises ? (growth.UpperReason, growth.LowerReason) : (growth.LowerReason, growth.UpperReason);
        return Of(rises ? TurnoverKind.Doubling : TurnoverKind.Halving, new OpenEstimate(
            growth.Value is { } value ? Math.Log(2) / Math.Abs(value) : null, fast is { } most ? Math.Log(2) / most : null, slow > 0 ? Math.Log(2) / slow : null,
            growth.Method, growth.Confidence, growth.Reason, fastReason, slow is null ? slowReason : slow > 0 ? null : UndefinedReason.SlopeMayBeNil));
    }

    internal static TrendDirection DirectionOf(OpenEstimate growth) =>
        growth.Lower > 0 ? TrendDirection.Rising : growth.Upper < 0 ? TrendDirection.Falling : TrendDirection.CannotTell;

    private static double? Turned(double growth) => Math.Log(2) / growth is var time && double.IsFinite(time) ? time : null;

    private static int Distinct(CountPoint[] used) => used.Select(point => point.Time).Distinct().Count();

    private static UndefinedReason? Impossible(CountPoint[] used, TrendScale scale)
    {
        if (used.Length == 0) return UndefinedReason.NoTrials;
        if (used.All(point => point.Events == 0)) return UndefinedReason.NoEvents;
        if (scale != TrendScale.Events && used.All(point => point.Events == point.Size)) return UndefinedReason.OnlyEvents;
        return used[0].Time == used[^1].Time ? UndefinedReason.TooFewPeriods : null;
    }

    private static GrowthEstimate Undefined(CountPoint[] used, SeriesOptions options, OpenEstimate growth, UndefinedReason reason) => new(
        options.Scale, options.Limits, Distinct(used), used.Length == 0 ? null : used[0].Time, used.Length == 0 ? null : used[^1].Time, used.Sum(point => point.Events),
        used.Sum(point => point.Size), growth, null, null, growth.Through(Precise.ExponentialMinusOne).Finite(), Turnover(growth), DirectionOf(growth), null, null, null, null, null, null,
        growth.Method, options.Confidence, reason);
}
