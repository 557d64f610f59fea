using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression.Fitting;

namespace ScreenStats.Statistics.Regression;

/// <summary>Logistic regression of grouped counts: how the odds of an event change with each term, the others held.</summary>
public static class LogisticRegression
{
    /// <summary>The most likely coefficients.</summary>
    /// <param name="rows">The rows, in any order; those without trials are left out of the fit.</param>
    /// <param name="options">Constant, standard errors and confidence; null for the defaults.</param>
    /// <returns>The fit; a reason where there is nothing to fit, terms cannot be told apart, or coefficients have no bound.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentException">Rows with different numbers of terms.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain.</exception>
    /// <remarks>
    /// Newton's steps, halved while the likelihood falls, until a step promises less than 1e-20 of it. Where rates run to 0 or 1, linear programming decides
    /// whether the terms separate events from the others; then nothing is given, since the largest likelihood is at infinity: leave the term out, or
    /// take the groups as drawn from one distribution (<see cref="Intercepts.RandomInterceptLogistic"/>). Source: McCullagh P, Nelder JA, Generalized Linear
    /// Models, 1989; Albert A, Anderson JA, Biometrika 1984;71:1-10 (from memory).
    /// </remarks>
    public static LogisticFit Fit(IReadOnlyList<BinomialRow> rows, LogisticOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(rows);
        options ??= new LogisticOptions();
        options.Check();
        if (rows.Any(row => row.Values.Length != rows[0].Values.Length)) throw new ArgumentException("All rows must have the same number of terms.", nameof(rows));
        var patterns = RowPatterns.From(rows);
        var (used, merged) = (patterns.Rows, patterns.Merged);
        LogisticFit Without(UndefinedReason reason, SeparationKind separation = SeparationKind.None, IReadOnlyList<int>? unbounded = null) =>
            new(used.Length, [], [], [], [], [], null, null, null, null, null, separation, unbounded ?? [], reason);
        var events = used.Sum(row => row.Events);
        if (used.Length == 0) return Without(UndefinedReason.NoTrials);
        var designs = Array.ConvertAll(merged, row => Design.Row(row, options.Constant));
        if (designs[0].Length == 0) return Without(UndefinedReason.NoValues);
        if (events == 0) return Without(UndefinedReason.NoEvents);
        if (events == used.Sum(row => row.Trials)) return Without(UndefinedReason.OnlyEvents);
        if (Design.Collinear(designs)) return Without(UndefinedReason.CollinearTerms);

        var (beta, factor, settled) = NewtonSearch.Run(LogitModel.Of(merged), designs, new double[designs[0].Length]);
        if (!settled || RunsToTheEdge(merged, designs, beta))
        {
            var (kind, direction) = Separation.Find(designs, Array.ConvertAll(merged, row => row.Events > 0), Array.ConvertAll(merged, row => row.Events < row.Trials));
            if (kind != SeparationKind.None)
                return Without(UndefinedReason.Separation, kind, [.. Enumerable.Range(0, direction.Length).Where(j => Math.Abs(direction[j]) > 1e-7)]);
            if (!settled || factor is null) return Without(UndefinedReason.NotConverged);
        }

        var x = Array.ConvertAll(patterns.Of, k => designs[k]);
        var degrees = used.Length - beta.Length;
        var model = LogitModel.Of(used);
        var (log, deviance, pearson) = model.FitSum(x, beta);
        var bread = SymmetricMatrix.Inverse(factor!);
        var covariance = bread;
        if (options.Covariance == CovarianceKind.QuasiBinomial)
        {
            if (degrees == 0) return Without(UndefinedReason.NoDegreesOfFreedom);
            covariance = Design.Scaled(bread, pearson / degrees);
        }
        else if (options.Covariance == CovarianceKind.ClusterRobust)
        {
            var groups = used.Select(row => row.Group).Distinct().Count();
            if (groups < 2) return Without(UndefinedReason.FewerThanTwoClusters);
            covariance = Design.Scaled(Design.Sandwich(x, model.Slopes(x, beta), Array.ConvertAll(used, row => row.Group), bread), groups / (groups - 1.0));
        }

        var z = Quantile.Normal(options.Confidence);
        var errors = Design.StandardErrors(covariance);
        return new LogisticFit(
            used.Length, beta, [.. beta.Select((b, j) => new Interval(b - (z * errors[j]), b + (z * errors[j])))], errors, Design.Nested(covariance),
            [.. rows.Select(row => LogitScale.Fraction(Design.Dot(Design.Row(row, options.Constant), beta)))], log, deviance, pearson, degrees, degrees == 0 ? null : pearson / degrees,
            SeparationKind.None, [], null) { NullDeviance = NullDeviance(used, options.Constant ? events / used.Sum(row => row.Trials) : 0.5) };
    }

    /// <summary>The deviance of one rate for all rows.</summary>
    internal static double NullDeviance(BinomialRow[] rows, double rate) =>
        2 * rows.Sum(row => Binomial.Deviance(row.Events, row.Trials * rate) + Binomial.Deviance(row.Trials - row.Events, row.Trials * (1 - rate)));

    /// <summary>ln(1 + e^x).</summary>
    internal static double SoftPlus(double x) => x > 0 ? x + Precise.LogOnePlus(Math.Exp(-x)) : Precise.LogOnePlus(Math.Exp(x));

    private static bool RunsToTheEdge(BinomialRow[] rows, double[][] x, double[] beta)
    {
        for (var i = 0; i < rows.Length; i++)
        {
            var eta = Design.Dot(x[i], beta);
            if ((rows[i].Events == 0 && rows[i].Trials * LogitScale.Fraction(eta) < 1e-5) || (rows[i].Events == rows[i].Trials && rows[i].Trials * LogitScale.Fraction(-eta) < 1e-5)) return true;
        }

        return false;
    }
}
