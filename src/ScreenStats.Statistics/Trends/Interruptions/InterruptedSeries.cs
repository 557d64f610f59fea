using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression.Fitting;
using ScreenStats.Statistics.Trends.RobustErrors;
using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Trends.Interruptions;

/// <summary>What dated changes (a new kit, a new rule) did to a series.</summary>
public static class InterruptedSeries
{
    /// <summary>Fits a series with dated changes.</summary>
    /// <param name="points">The points, in any order; several at one time are allowed. A point without size is not fitted, and yet has its place on the path.</param>
    /// <param name="changes">The changes, one or more, at different times, each of level, slope or both.</param>
    /// <param name="options">Scale, limits, season and confidence; null for the defaults.</param>
    /// <returns>
    /// The fit. A change without anything counted before or after it is left out with its reason, and the others are fitted. A reason for the whole where nothing is left, there is
    /// no event or nothing else, or terms cannot be told apart (a change of slope with one period after it, two changes with no period between).
    /// </returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentException">No change, two at one time, or one of neither level nor slope.</exception>
    /// <exception cref="ArgumentOutOfRangeException">More events than trials, or an option or time outside its domain.</exception>
    /// <remarks>
    /// Log odds or log rate = constant + growth + season + for each change a jump (1 from the change on) and a new growth (time since it, from the change on). The path without the changes leaves their
    /// terms out. What else changed at the same time is in the estimate too: the design cannot tell. Plain limits cover too little where periods scatter more than chance. Source:
    /// Wagner AK et al., J Clin Pharm Ther 2002;27:299-309; Lopez Bernal J, Cummins S, Gasparrini A, Int J Epidemiol 2017;46:348-355 (from memory).
    /// </remarks>
    public static InterruptedFit Fit(IReadOnlyList<CountPoint> points, IReadOnlyList<Interruption> changes, InterruptionOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(changes);
        options ??= new InterruptionOptions();
        options.CheckAll();
        Interruption[] ordered = Checked(changes);
        var (used, periods, times) = SeriesFit.Sorted(points, options.Scale);
        var without = ordered.Select(change => WithoutData(used, change)).ToArray();
        Interruption[] kept = [.. ordered.Where((_, i) => without[i] is null)];
        InterruptedFit Without(UndefinedReason reason) => new(
            options.Scale, options.Limits, used.Length, [.. ordered.Select((change, i) => new InterruptionEstimate(change, null, null, null, null, null, null, without[i] ?? reason))], [], [], [], [],
            null, null, null, null, [], null, null, null, options.Words(), options.Confidence, reason);
        if (used.Length == 0) return Without(UndefinedReason.NoTrials);
        if (kept.Length == 0) return Without(without[0]!.Value);

        var terms = new InterruptionTerms(kept, options, (used[0].Time + used[^1].Time) / 2);
        var fit = SeriesFit.Of(used, periods, times, Array.ConvertAll(used, point => terms.At(point.Time)), options);
        if (fit.Reason is { } why) return Without(why);
        var residuals = fit.DevianceResiduals();
        return new InterruptedFit(
            options.Scale, options.Limits, used.Length, [.. ordered.Select((change, i) => without[i] is { } reason
                ? new InterruptionEstimate(change, null, null, null, null, null, null, reason) : Estimate(fit, terms, change, Array.IndexOf(kept, change), options))],
            [.. points.Select(point => point.Time).Distinct().Order().Select(time => At(fit, terms, time, options))], fit.Coefficients,
            fit.HasLimits ? Design.StandardErrors(fit.Covariance) : [], terms.Names, fit.Deviance, (2 * fit.Coefficients.Length) - (2 * fit.LogLikelihood), fit.DegreesOfFreedom, fit.Dispersion,
            residuals, Autocorrelation.DurbinWatson(residuals), Autocorrelation.LjungBox(residuals, Math.Clamp(residuals.Length / 5, 1, 12)), fit.Lag, options.Words(), options.Confidence, null);
    }

    /// <summary>Fits a series of trials with dated changes.</summary>
    /// <param name="counts">The counts, in any order.</param>
    /// <param name="changes">The changes, one or more, at different times.</param>
    /// <param name="options">Scale, limits, season and confidence; null for the defaults.</param>
    /// <returns>As for points.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentException">No change, two at one time, or one of neither level nor slope.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option or time outside its domain.</exception>
    public static InterruptedFit Fit(IReadOnlyList<TimedCount> counts, IReadOnlyList<Interruption> changes, InterruptionOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(counts);
        return Fit([.. counts.Select(count => new CountPoint(count.Time, count.Events, count.Trials))], changes, options);
    }

    private static Interruption[] Checked(IReadOnlyList<Interruption> changes)
    {
        if (changes.Count == 0) throw new ArgumentException("There must be a change.", nameof(changes));
        foreach (var change in changes)
        {
            Guard.Finite(change.At, nameof(changes));
            if (change.SlopeFrom is { } from) Guard.Finite(from, nameof(changes));
            if (!change.Level && !change.Slope) throw new ArgumentException("A change must be one of level or slope, or both.", nameof(changes));
        }

        return changes.Select(change => change.At).Distinct().Count() == changes.Count
            ? [.. changes.OrderBy(change => change.At)] : throw new ArgumentException("Two changes at one time cannot be told apart.", nameof(changes));
    }

    private static UndefinedReason? WithoutData(CountPoint[] used, Interruption change) =>
        used.All(point => point.Time >= change.At) ? UndefinedReason.NoDataBeforeChange : used.All(point => point.Time < change.At) ? UndefinedReason.NoDataAfterChange : null;

    private static InterruptionEstimate Estimate(SeriesFit fit, InterruptionTerms terms, Interruption change, int index, InterruptionOptions options)
    {
        OpenEstimate Of(params IEnumerable<int?> places)
        {
            var weights = new double[terms.Count];
            foreach (var place in places) weights[place!.Value] = 1;
            return fit.Combination(weights, options.Words(), options.Confidence);
        }

        int?[] before = [.. new[] { terms.Trend }.Concat(terms.Slope.Take(index)).Where(place => place is not null)];
        int? level = terms.Level[index], slope = terms.Slope[index];
        int?[] after = slope is null ? before : [.. before, slope];
        return new InterruptionEstimate(
            change, level is null ? null : Of(level).Through(Math.Exp).Finite(), before.Length == 0 ? null : Of(before), after.Length == 0 ? null : Of(after), slope is null ? null : Of(slope),
            level is { } jump ? fit.Probability(jump) : null, slope is { } turn ? fit.Probability(turn) : null, null);
    }

    private static PathPoint At(SeriesFit fit, InterruptionTerms terms, double time, InterruptionOptions options)
    {
        double Rate(double eta) => options.Scale switch { TrendScale.Odds => LogitScale.Fraction(eta), TrendScale.Share => Math.Min(1, Math.Exp(eta)), _ => Math.Exp(eta) };
        var (all, unchanged, changes) = terms.Weights(time);
        OpenEstimate Of(double[] weights, Func<double, double> through) => fit.Combination(weights, options.Words(), options.Confidence).Through(through).Finite();
        return new PathPoint(time, Of(all, Rate), Of(unchanged, Rate), Of(changes, Math.Exp));
    }
}
