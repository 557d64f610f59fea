using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Regression;

/// <summary>Logistic regression of grouped counts: how the odds of an event change with each term, the others held.</summary>
public static class LogisticRegression
{
    private const int MostSteps = 100;

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
    /// take the groups as drawn from one distribution (<see cref="RandomInterceptLogistic"/>). Source: McCullagh P, Nelder JA, Generalized Linear
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
        var designs = Array.ConvertAll(merged, row => Design(row, options.Constant));
        if (designs[0].Length == 0) return Without(UndefinedReason.NoValues);
        if (events == 0) return Without(UndefinedReason.NoEvents);
        if (events == used.Sum(row => row.Trials)) return Without(UndefinedReason.OnlyEvents);
        if (Collinear(designs)) return Without(UndefinedReason.CollinearTerms);

        var (beta, factor, settled) = Newton(merged, designs);
        if (!settled || RunsToTheEdge(merged, designs, beta))
        {
            var (kind, direction) = Separation.Find(designs, Array.ConvertAll(merged, row => row.Events > 0), Array.ConvertAll(merged, row => row.Events < row.Trials));
            if (kind != SeparationKind.None)
                return Without(UndefinedReason.Separation, kind, [.. Enumerable.Range(0, direction.Length).Where(j => Math.Abs(direction[j]) > 1e-7)]);
            if (!settled || factor is null) return Without(UndefinedReason.NotConverged);
        }

        var x = Array.ConvertAll(patterns.Of, k => designs[k]);
        var degrees = used.Length - beta.Length;
        var (log, deviance, pearson) = Fits(used, x, beta);
        var bread = SymmetricMatrix.Inverse(factor!);
        var covariance = bread;
        if (options.Covariance == CovarianceKind.QuasiBinomial)
        {
            if (degrees == 0) return Without(UndefinedReason.NoDegreesOfFreedom);
            covariance = Scaled(bread, pearson / degrees);
        }
        else if (options.Covariance == CovarianceKind.ClusterRobust)
        {
            var groups = used.Select(row => row.Group).Distinct().Count();
            if (groups < 2) return Without(UndefinedReason.FewerThanTwoClusters);
            covariance = Scaled(Sandwich(used, x, beta, bread), groups / (groups - 1.0));
        }

        var z = Quantile.Normal(options.Confidence);
        double[] errors = [.. Enumerable.Range(0, beta.Length).Select(j => Math.Sqrt(Math.Max(0, covariance[j, j])))];
        return new LogisticFit(
            used.Length, beta, [.. beta.Select((b, j) => new Interval(b - (z * errors[j]), b + (z * errors[j])))], errors, Nested(covariance),
            [.. rows.Select(row => LogitScale.Fraction(Dot(Design(row, options.Constant), beta)))], log, deviance, pearson, degrees, degrees == 0 ? null : pearson / degrees,
            SeparationKind.None, [], null);
    }

    internal static double[] Design(BinomialRow row, bool constant) => constant ? [1, .. row.Values] : [.. row.Values];

    internal static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }

    internal static IReadOnlyList<IReadOnlyList<double>> Nested(double[,] matrix) =>
        [.. Enumerable.Range(0, matrix.GetLength(0)).Select(i => (IReadOnlyList<double>)[.. Enumerable.Range(0, matrix.GetLength(1)).Select(j => matrix[i, j])])];

    /// <summary>Whether a term is a sum of others, judged on terms of the same length.</summary>
    internal static bool Collinear(double[][] x)
    {
        var terms = x[0].Length;
        var products = new double[terms, terms];
        foreach (var row in x)
        {
            var filled = Filled(row);
            foreach (var j in filled)
            {
                foreach (var k in filled)
                {
                    if (k <= j) products[j, k] += row[j] * row[k];
                }
            }
        }

        for (var j = 0; j < terms; j++)
        {
            if (products[j, j] == 0) return true;
        }

        var length = Enumerable.Range(0, terms).Select(j => Math.Sqrt(products[j, j])).ToArray();
        for (var j = 0; j < terms; j++)
        {
            for (var k = 0; k <= j; k++) products[j, k] /= length[j] * length[k];
        }

        return SymmetricMatrix.Factor(products, 1e-11, out _) is null;
    }

    /// <summary>The places of a row that are not 0: with terms for levels a few of many.</summary>
    internal static int[] Filled(double[] row) => [.. Enumerable.Range(0, row.Length).Where(j => row[j] != 0)];

    internal static (double[] Beta, double[,]? Factor, bool Settled) Newton(BinomialRow[] rows, double[][] x)
    {
        var terms = x[0].Length;
        var filled = Array.ConvertAll(x, Filled);
        var beta = new double[terms];
        var log = LogLikelihood(rows, x, beta);
        double[,]? factor = null;
        var last = false;
        for (var step = 0; step < MostSteps; step++)
        {
            var slope = new double[terms];
            var information = new double[terms, terms];
            for (var i = 0; i < rows.Length; i++)
            {
                var eta = Dot(x[i], beta);
                var (p, q) = (LogitScale.Fraction(eta), LogitScale.Fraction(-eta));
                var (residual, weight) = ((rows[i].Events * q) - ((rows[i].Trials - rows[i].Events) * p), rows[i].Trials * p * q);
                foreach (var j in filled[i])
                {
                    slope[j] += x[i][j] * residual;
                    foreach (var k in filled[i])
                    {
                        if (k > j) break;
                        information[j, k] += x[i][j] * x[i][k] * weight;
                    }
                }
            }

            factor = SymmetricMatrix.Factor(information, 1e-14, out _);
            if (factor is null) return (beta, null, false);
            var change = SymmetricMatrix.Solve(factor, slope);
            var promise = Dot(change, slope);
            if (last || promise < 1e-20 * (1 + Math.Abs(log))) return (beta, factor, true);
            var size = 1.0;
            double[] next;
            double after;
            do
            {
                next = [.. beta.Select((b, j) => b + (size * change[j]))];
                after = LogLikelihood(rows, x, next);
                size /= 2;
            }
            while (!(after >= log - (1e-13 * Math.Abs(log))) && size > 1e-10);

            // The step no longer shows in the likelihood; once more around, so that the information is that of the end.
            last = promise < 1e-15 * (1 + Math.Abs(log)) && !(after > log);
            (beta, log) = (next, after);
        }

        return (beta, factor, false);
    }

    /// <summary>The logarithm of the likelihood without the binomial coefficients.</summary>
    private static double LogLikelihood(BinomialRow[] rows, double[][] x, double[] beta)
    {
        double sum = 0;
        for (var i = 0; i < rows.Length; i++)
        {
            var eta = Dot(x[i], beta);
            sum -= (rows[i].Events * SoftPlus(-eta)) + ((rows[i].Trials - rows[i].Events) * SoftPlus(eta));
        }

        return sum;
    }

    /// <summary>ln(1 + e^x).</summary>
    internal static double SoftPlus(double x) => x > 0 ? x + Precise.LogOnePlus(Math.Exp(-x)) : Precise.LogOnePlus(Math.Exp(x));

    private static bool RunsToTheEdge(BinomialRow[] rows, double[][] x, double[] beta)
    {
        for (var i = 0; i < rows.Length; i++)
        {
            var eta = Dot(x[i], beta);
            if ((rows[i].Events == 0 && rows[i].Trials * LogitScale.Fraction(eta) < 1e-5) || (rows[i].Events == rows[i].Trials && rows[i].Trials * LogitScale.Fraction(-eta) < 1e-5)) return true;
        }

        return false;
    }

    private static (double Log, double Deviance, double Pearson) Fits(BinomialRow[] rows, double[][] x, double[] beta)
    {
        double log = 0, deviance = 0, pearson = 0;
        for (var i = 0; i < rows.Length; i++)
        {
            var eta = Dot(x[i], beta);
            var (p, q) = (LogitScale.Fraction(eta), LogitScale.Fraction(-eta));
            double y = rows[i].Events, n = rows[i].Trials;
            log += Binomial.LogProbability(y, n, p, q);
            deviance += 2 * (Binomial.Deviance(y, n * p) + Binomial.Deviance(n - y, n * q));
            var residual = (y * q) - ((n - y) * p);
            pearson += residual * residual / (n * p * q);
        }

        return (log, deviance, pearson);
    }

    private static double[,] Scaled(double[,] matrix, double factor)
    {
        var scaled = (double[,])matrix.Clone();
        for (var i = 0; i < scaled.GetLength(0); i++)
        {
            for (var j = 0; j < scaled.GetLength(1); j++) scaled[i, j] *= factor;
        }

        return scaled;
    }

    private static double[,] Sandwich(BinomialRow[] rows, double[][] x, double[] beta, double[,] bread)
    {
        var terms = beta.Length;
        var scores = new SortedDictionary<int, double[]>();
        for (var i = 0; i < rows.Length; i++)
        {
            if (!scores.TryGetValue(rows[i].Group, out var score)) scores[rows[i].Group] = score = new double[terms];
            var eta = Dot(x[i], beta);
            var residual = (rows[i].Events * LogitScale.Fraction(-eta)) - ((rows[i].Trials - rows[i].Events) * LogitScale.Fraction(eta));
            for (var j = 0; j < terms; j++) score[j] += x[i][j] * residual;
        }

        // Bread times each group's score, then their products.
        var robust = new double[terms, terms];
        foreach (var score in scores.Values)
        {
            var influence = new double[terms];
            for (var j = 0; j < terms; j++)
            {
                for (var k = 0; k < terms; k++) influence[j] += bread[j, k] * score[k];
            }

            for (var j = 0; j < terms; j++)
            {
                for (var k = 0; k < terms; k++) robust[j, k] += influence[j] * influence[k];
            }
        }

        return robust;
    }
}
