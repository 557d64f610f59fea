using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression.Fitting;

namespace ScreenStats.Statistics.Regression.Rates;

/// <summary>Poisson regression with a log link and exposure: by how much each term multiplies the rate of events, the others held.</summary>
public static class PoissonRegression
{
    /// <summary>The most likely coefficients.</summary>
    /// <param name="rows">The rows, in any order; those without exposure are left out of the fit.</param>
    /// <param name="options">Constant, standard errors and confidence; null for the defaults.</param>
    /// <returns>The fit; a reason where there is nothing to fit, terms cannot be told apart, or coefficients have no bound.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentException">Rows with different numbers of terms.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain.</exception>
    /// <remarks>
    /// Events are Poisson with mean exposure · exp(x'b): the logarithm of the exposure is the offset. Newton's steps, halved while the likelihood falls. Where
    /// the rate of rows without events runs to 0, linear programming decides whether the terms leave it without a bound; then nothing is given. Limits are Wald's; they
    /// are too narrow where events are few or come in clusters: see the other covariances. Source: McCullagh P, Nelder JA, Generalized Linear Models, 1989,
    /// chapters 6 and 9 (from memory).
    /// </remarks>
    public static RateFit Fit(IReadOnlyList<RateRow> rows, RateOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(rows);
        options ??= new RateOptions();
        options.Check();
        if (rows.Any(row => row.Terms.Count != rows[0].Terms.Count)) throw new ArgumentException("All rows must have the same number of terms.", nameof(rows));
        var used = Sorted(rows);
        RateFit Without(UndefinedReason reason, IReadOnlyList<int>? unbounded = null) => RateFit.Without(used.Length, reason, unbounded);
        if (used.Length == 0) return Without(UndefinedReason.NoExposure);
        var x = Array.ConvertAll(used, row => Design.Row(row.Terms, options.Constant));
        if (x[0].Length == 0) return Without(UndefinedReason.NoValues);
        var events = used.Sum(row => row.Events);
        if (events == 0) return Without(UndefinedReason.NoEvents);
        if (Design.Collinear(x)) return Without(UndefinedReason.CollinearTerms);
        var model = LogRateModel.Of(used);
        var (beta, _, settled) = NewtonSearch.Run(model, x, RateSearch.PoissonStart(model, x) ?? new double[x[0].Length]);
        if (!settled || RateSearch.RunsToTheEdge(model, x, beta))
        {
            if (RateSearch.Unbounded(model, x) is { } unbounded) return Without(UndefinedReason.Separation, unbounded);
            if (!settled) return Without(UndefinedReason.NotConverged);
        }

        var rate = events / used.Sum(row => row.Exposure);
        double? nullDeviance = options.Constant ? 2 * used.Sum(row => Binomial.Deviance(row.Events, row.Exposure * rate)) : null;
        double[] fitted = [.. rows.Select(row => Math.Exp(Design.Dot(Design.Row(row.Terms, options.Constant), beta)))];
        return RateSearch.Finish(model, x, beta, Array.ConvertAll(used, row => row.Group), nullDeviance, fitted, options);
    }

    /// <summary>The rows with exposure in one order, whatever the order given, so that sums do not depend on it.</summary>
    private static RateRow[] Sorted(IReadOnlyList<RateRow> rows)
    {
        RateRow[] used = [.. rows.Where(row => row.Exposure > 0)];
        Array.Sort(used, (a, b) =>
        {
            for (var j = 0; j < a.Terms.Count; j++)
            {
                if (a.Terms[j] != b.Terms[j]) return a.Terms[j].CompareTo(b.Terms[j]);
            }

            return a.Exposure != b.Exposure ? a.Exposure.CompareTo(b.Exposure) : a.Events.CompareTo(b.Events);
        });
        return used;
    }
}
