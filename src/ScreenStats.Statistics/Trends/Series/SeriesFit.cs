using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Regression.Fitting;
using ScreenStats.Statistics.Regression.Rates;
using ScreenStats.Statistics.Trends.RobustErrors;

namespace ScreenStats.Statistics.Trends.Series;

/// <summary>A model of counts by time, with the covariance that was asked for.</summary>
internal sealed class SeriesFit
{
    private SeriesFit(UndefinedReason reason) => Reason = reason;

    private SeriesFit(RowModel model, double[][] x, double[] coefficients, double[,] covariance, double critical, bool hasLimits)
    {
        (Model, X, Coefficients, Covariance, Critical, HasLimits) = (model, x, coefficients, covariance, critical, hasLimits);
    }

    public UndefinedReason? Reason { get; }

    public RowModel Model { get; } = null!;

    public double[][] X { get; } = [];

    public double[] Coefficients { get; } = [];

    public double[,] Covariance { get; } = new double[0, 0];

    /// <summary>Half of a pair of limits is this many standard errors.</summary>
    public double Critical { get; }

    /// <summary>Whether the covariance means anything: not where no degree of freedom is left to judge the scatter by.</summary>
    public bool HasLimits { get; }

    public double Deviance { get; private init; }

    public double LogLikelihood { get; private init; }

    public int DegreesOfFreedom { get; private init; }

    public double? Dispersion { get; private init; }

    public int? Lag { get; private init; }

    /// <summary>Student's degrees of freedom; null for the normal distribution.</summary>
    public int? StudentDegrees { get; private init; }

    /// <summary>The points with a size, in one order whatever the order given, and the place of each among all times.</summary>
    public static (CountPoint[] Points, int[] Periods, int Times) Sorted(IReadOnlyList<CountPoint> points, TrendScale scale)
    {
        if (scale != TrendScale.Events && points.Any(point => point.Events > point.Size)) throw new ArgumentOutOfRangeException(nameof(points), "There are more events than trials in a period.");
        CountPoint[] used = [.. points.Where(point => point.Size > 0).OrderBy(point => point.Time).ThenBy(point => point.Size).ThenBy(point => point.Events)];
        double[] times = [.. points.Select(point => point.Time).Distinct().Order()];
        return (used, Array.ConvertAll(used, point => Array.BinarySearch(times, point.Time)), times.Length);
    }

    public static RowModel ModelOf(CountPoint[] used, TrendScale scale, double[]? offsets = null)
    {
        double[] events = Array.ConvertAll(used, point => point.Events), sizes = Array.ConvertAll(used, point => point.Size);
        return scale switch
        {
            TrendScale.Odds => new LogitModel(events, sizes, offsets),
            TrendScale.Share => new LogShareModel(events, sizes, offsets),
            _ => new LogRateModel(events, sizes, offsets),
        };
    }

    /// <param name="used">Points with a size in order of time.</param>
    /// <param name="periods">The place of each among all times.</param>
    /// <param name="times">How many times there are.</param>
    /// <param name="terms">The terms of each point, without the constant.</param>
    /// <param name="options">What is asked for.</param>
    public static SeriesFit Of(CountPoint[] used, int[] periods, int times, double[][] terms, SeriesOptions options)
    {
        var (coefficients, reason) = Coefficient(used, terms, options.Scale);
        if (reason is { } why) return new SeriesFit(why);
        var model = ModelOf(used, options.Scale);
        var x = Array.ConvertAll(terms, row => Design.Row(row, constant: true));
        var factor = SymmetricMatrix.Factor(model.InformationSum(x, coefficients), 1e-14, out _);
        if (factor is null) return new SeriesFit(UndefinedReason.NotConverged);
        var covariance = SymmetricMatrix.Inverse(factor);
        var (log, deviance, pearson) = model.FitSum(x, coefficients);
        var degrees = used.Length - coefficients.Length;
        double? dispersion = degrees > 0 ? pearson / degrees : null;
        int? lag = null, student = null;
        var hasLimits = true;
        if (options.Limits == TrendLimits.Quasi)
        {
            hasLimits = degrees > 0;
            covariance = Design.Scaled(covariance, Math.Max(options.LeastDispersion, dispersion ?? 0));
        }
        else if (options.Limits == TrendLimits.Robust)
        {
            var distinct = periods.Distinct().Count();
            hasLimits = distinct > coefficients.Length;
            lag = Math.Min(options.Lag ?? NeweyWest.UsualLag(times), times - 1);
            covariance = HacCovariance.Of(x, model.Slopes(x, coefficients), periods, times, covariance, lag.Value);
            if (options.SmallSampleFactor && hasLimits) covariance = Design.Scaled(covariance, distinct / (double)(distinct - coefficients.Length));
        }

        if (options.Student && hasLimits && options.Limits is TrendLimits.Quasi or TrendLimits.Robust) student = Math.Max(1, degrees);
        var critical = student is { } freedom ? Quantile.Student(options.Confidence, freedom) : Quantile.Normal(options.Confidence);
        return new SeriesFit(model, x, coefficients, covariance, critical, hasLimits)
        {
            Deviance = deviance, LogLikelihood = log, DegreesOfFreedom = degrees, Dispersion = dispersion, Lag = lag, StudentDegrees = student,
        };
    }

    /// <summary>A linear combination of coefficients with its limits.</summary>
    public OpenEstimate Combination(double[] weights, string method, double confidence)
    {
        var value = Design.Dot(weights, Coefficients);
        var error = Math.Sqrt(Math.Max(0, SymmetricMatrix.Form(Covariance, weights)));
        return HasLimits
            ? OpenEstimate.Closed(value, value - (Critical * error), value + (Critical * error), method, confidence)
            : OpenEstimate.WithoutLimits(value, UndefinedReason.NoDegreesOfFreedom, method, confidence);
    }

    /// <summary>The probability of a value as far from 0 as one coefficient, were it 0; null without limits or with an error of 0.</summary>
    public double? Probability(int coefficient)
    {
        var error = Math.Sqrt(Math.Max(0, Covariance[coefficient, coefficient]));
        if (!HasLimits || !(error > 0)) return null;
        var ratio = Math.Abs(Coefficients[coefficient]) / error;
        if (StudentDegrees is not { } freedom) return MathNet.Numerics.SpecialFunctions.Erfc(ratio / Math.Sqrt(2));
        var square = ratio * ratio;
        return Binomial.BetaLower(freedom / 2.0, 0.5, freedom / (freedom + square), square / (freedom + square));
    }

    /// <summary>Signed roots of each point's part of the deviance.</summary>
    public double[] DevianceResiduals() => [.. Enumerable.Range(0, Model.Rows).Select(i =>
    {
        var eta = Model.Predictor(i, X[i], Coefficients);
        return Math.CopySign(Math.Sqrt(Math.Max(0, Model.Fit(i, eta).Deviance)), Model.Events[i] - Model.Mean(i, eta));
    })];

    private static (double[] Coefficients, UndefinedReason? Reason) Coefficient(CountPoint[] used, double[][] terms, TrendScale scale)
    {
        if (scale == TrendScale.Odds)
        {
            var fit = LogisticRegression.Fit([.. used.Select((point, i) => new BinomialRow(point.Events, point.Size, terms[i]))]);
            return ([.. fit.Coefficients], fit.Reason);
        }

        var rates = scale == TrendScale.Share
            ? LogBinomialRegression.Fit([.. used.Select((point, i) => new BinomialRow(point.Events, point.Size, terms[i]))])
            : PoissonRegression.Fit([.. used.Select((point, i) => new RateRow(point.Events, point.Size, terms[i]))]);
        return ([.. rates.Coefficients], rates.Reason);
    }
}
