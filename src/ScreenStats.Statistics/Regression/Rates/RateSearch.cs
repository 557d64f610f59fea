using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression.Fitting;

namespace ScreenStats.Statistics.Regression.Rates;

/// <summary>What both regressions of rates share: where they start, when coefficients have no bound, and what is made of a fit.</summary>
internal static class RateSearch
{
    /// <summary>
    /// The direction in which the likelihood rises without end, null where there is none: it moves no row with events and lowers rows without any.
    /// </summary>
    public static int[]? Unbounded(RowModel model, double[][] x)
    {
        var (kind, direction) = Separation.Find(x, Array.ConvertAll(model.Events, y => y > 0), Array.ConvertAll(model.Events, _ => true));
        return kind == SeparationKind.None ? null : [.. Enumerable.Range(0, direction.Length).Where(j => Math.Abs(direction[j]) > 1e-7)];
    }

    /// <summary>Whether a row without events is expected to have next to none, as where the search runs away.</summary>
    public static bool RunsToTheEdge(RowModel model, double[][] x, double[] beta) =>
        Enumerable.Range(0, model.Rows).Any(i => model.Events[i] == 0 && model.Mean(i, model.Predictor(i, x[i], beta)) < 1e-5);

    public static double[]? PoissonStart(LogRateModel model, double[][] x)
    {
        // One weighted least-squares step from the counts themselves.
        var right = new double[x[0].Length];
        var products = new double[x[0].Length, x[0].Length];
        for (var i = 0; i < x.Length; i++)
        {
            var near = model.Events[i] + 0.1;
            var working = Math.Log(near) - model.Predictor(i, x[i], new double[right.Length]);
            Design.AddProduct(products, x[i], near);
            for (var j = 0; j < right.Length; j++) right[j] += x[i][j] * near * working;
        }

        return SymmetricMatrix.Factor(products, 1e-14, out _) is { } factor ? SymmetricMatrix.Solve(factor, right) : null;
    }

    /// <summary>The fit at the most likely coefficients.</summary>
    public static RateFit Finish(RowModel model, double[][] x, double[] beta, int[] groups, double? nullDeviance, IReadOnlyList<double> fitted, RateOptions options)
    {
        RateFit Without(UndefinedReason reason) => RateFit.Without(x.Length, reason);
        var factor = SymmetricMatrix.Factor(model.InformationSum(x, beta), 1e-14, out _);
        if (factor is null) return Without(UndefinedReason.NotConverged);
        var degrees = x.Length - beta.Length;
        var (log, deviance, pearson) = model.FitSum(x, beta);
        var covariance = SymmetricMatrix.Inverse(factor);
        if (options.Covariance == RateCovariance.Quasi)
        {
            if (degrees == 0) return Without(UndefinedReason.NoDegreesOfFreedom);
            covariance = Design.Scaled(covariance, pearson / degrees);
        }
        else if (options.Covariance == RateCovariance.ClusterRobust)
        {
            var count = groups.Distinct().Count();
            if (count < 2) return Without(UndefinedReason.FewerThanTwoClusters);
            covariance = Design.Scaled(Design.Sandwich(x, model.Slopes(x, beta), groups, covariance), count / (count - 1.0));
        }

        var z = Quantile.Normal(options.Confidence);
        var errors = Design.StandardErrors(covariance);
        return new RateFit(
            x.Length, beta, [.. beta.Select((b, j) => new Interval(b - (z * errors[j]), b + (z * errors[j])))], errors, Design.Nested(covariance), fitted,
            log, deviance, nullDeviance, pearson, degrees, degrees == 0 ? null : pearson / degrees, [], null);
    }
}
