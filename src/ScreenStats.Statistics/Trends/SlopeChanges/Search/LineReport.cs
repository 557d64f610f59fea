using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.SlopeChanges.Search;

/// <summary>Makes of a solution what is given to the caller: in the unit of the times given, with errors and limits.</summary>
internal static class LineReport
{
    /// <summary>The fit.</summary>
    /// <param name="counts">The periods as given.</param>
    /// <param name="data">The periods used.</param>
    /// <param name="search">What found the solution.</param>
    /// <param name="solution">The solution.</param>
    /// <param name="options">Errors and confidence.</param>
    /// <param name="profiled">Whether the profile limits are wanted; else they are null.</param>
    public static BrokenLineFit Of(IReadOnlyList<TimedCount> counts, LineData data, KnotSearch search, LineSolution solution, SlopeChangeOptions options, bool profiled = true)
    {
        var (count, periods, confidence) = (solution.Knots.Length, data.Times.Length, options.Confidence);
        var degrees = periods - 2 - (2 * count);
        var (log, deviance, pearson) = Fits(data, solution);
        double? dispersion = degrees > 0 ? pearson / degrees : null;
        var factor = options.Scale switch
        {
            DispersionScale.Binomial => 1,
            DispersionScale.Pearson => dispersion!.Value,
            _ => Math.Max(1, dispersion!.Value),
        };
        var critical = options.Scale == DispersionScale.Binomial ? Quantile.Normal(confidence) : Quantile.Student(confidence, degrees);
        var bare = new LineState(data.Centre, data.Unit, solution.Beta, solution.Knots, new double[0, 0], critical);
        if (SymmetricMatrix.Factor(LineNewton.Information(data, bare), 1e-13, out _) is not { } root)
            return new BrokenLineFit(count, periods, confidence, UndefinedReason.CollinearTerms);
        var covariance = SymmetricMatrix.Inverse(root);
        for (var i = 0; i < covariance.GetLength(0); i++)
        {
            for (var j = 0; j < covariance.GetLength(1); j++) covariance[i, j] *= factor;
        }

        var state = bare with { Covariance = covariance };
        var unit = data.Unit;
        double[] places = [.. solution.Knots.Select(data.Outside)];
        var changes = new List<SlopeChange>();
        var profile = new KnotProfile(data, search, options.LeastPeriods);
        for (var k = 0; k < count; k++)
        {
            var difference = solution.Beta[2 + k];
            var error = unit * Math.Sqrt(covariance[2 + count + k, 2 + count + k]) / Math.Abs(difference);
            var differenceError = Math.Sqrt(covariance[2 + k, 2 + k]) / unit;
            var (lower, upper) = profiled ? profile.Limits(solution, k, critical * critical * factor / 2) : (null, null);
            if (!double.IsFinite(error)) return new BrokenLineFit(count, periods, confidence, UndefinedReason.NoRoomForChanges);
            changes.Add(new SlopeChange(
                places[k], error, new Interval(places[k] - (critical * error), places[k] + (critical * error)), lower is { } l ? data.Outside(l) : null, upper is { } u ? data.Outside(u) : null,
                difference / unit, differenceError, Around(difference / unit, critical * differenceError)));
        }

        double[] bounds = [data.Outer[0], .. places, data.Outer[^1]];
        var segments = new List<SlopeSegment>();
        var gradient = new double[2 + (2 * count)];
        double slope = 0;
        for (var s = 0; s <= count; s++)
        {
            gradient[1 + s] = 1 / unit;
            slope += solution.Beta[1 + s] / unit;
            var error = state.Error(gradient);
            segments.Add(new SlopeSegment(bounds[s], bounds[s + 1], data.Rows.Count(row => row.Time >= bounds[s] && row.Time <= bounds[s + 1]), slope, error, Around(slope, critical * error)));
        }

        return new BrokenLineFit(count, periods, confidence)
        {
            Changes = changes, Segments = segments, Intercept = solution.Beta[0] - (solution.Beta[1] * data.Centre / unit),
            Fitted = [.. counts.Select(row => LogitScale.Fraction(state.Logit(row.Time)))], LogLikelihood = log, Deviance = deviance, Pearson = pearson,
            DegreesOfFreedom = degrees, Dispersion = dispersion, VarianceFactor = factor, State = state,
        };
    }

    private static Interval Around(double value, double half) => new(value - half, value + half);

    private static (double Log, double Deviance, double Pearson) Fits(LineData data, LineSolution solution)
    {
        double log = 0, deviance = 0, pearson = 0;
        for (var i = 0; i < data.Times.Length; i++)
        {
            var logit = LineNewton.Logit(data.Times[i], solution.Knots, solution.Beta);
            var (p, q, y, n) = (LogitScale.Fraction(logit), LogitScale.Fraction(-logit), data.Events[i], data.Trials[i]);
            log += Binomial.LogProbability(y, n, p, q);
            deviance += 2 * (Binomial.Deviance(y, n * p) + Binomial.Deviance(n - y, n * q));
            var residual = (y * q) - ((n - y) * p);
            pearson += residual * residual / (n * p * q);
        }

        return (log, deviance, pearson);
    }
}
