using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression.Fitting;

namespace ScreenStats.Statistics.Regression.Rates;

/// <summary>Binomial regression with a log link: by how much each term multiplies the share of events (not the odds), the others held.</summary>
public static class LogBinomialRegression
{
    /// <summary>A row that has nothing but events is taken to lie at a rate of 1 where its fitted rate is nearer than this.</summary>
    private const double AtOne = 1e-6;

    /// <summary>The most likely coefficients.</summary>
    /// <param name="rows">The rows, in any order; those without trials are left out of the fit.</param>
    /// <param name="options">Constant, standard errors and confidence; null for the defaults.</param>
    /// <returns>
    /// The fit; a reason where there is nothing to fit, terms cannot be told apart, coefficients have no bound, or the largest likelihood has a rate of 1 in
    /// some row, where standard errors do not hold.
    /// </returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentException">Rows with different numbers of terms.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain.</exception>
    /// <remarks>
    /// Each fitted rate is exp(x'b) and must stay below 1. Newton's steps, each halved until it stays inside and the likelihood does not fall; rows that have nothing but
    /// events are held inside by a logarithmic barrier that is taken away by and by. The likelihood is concave, so that the end does not depend
    /// on the start. Standard errors rest on the expected information. Limits are Wald's. Source: Wacholder S, Am J Epidemiol 1986;123:174-184; for the barrier Boyd S,
    /// Vandenberghe L, Convex Optimization, 2004, chapter 11 (both from memory).
    /// </remarks>
    public static RateFit Fit(IReadOnlyList<BinomialRow> rows, RateOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(rows);
        options ??= new RateOptions();
        options.Check();
        if (rows.Any(row => row.Terms.Count != rows[0].Terms.Count)) throw new ArgumentException("All rows must have the same number of terms.", nameof(rows));
        BinomialRow[] used = RowPatterns.From(rows).Rows;
        RateFit Without(UndefinedReason reason, IReadOnlyList<int>? unbounded = null) => RateFit.Without(used.Length, reason, unbounded);
        if (used.Length == 0) return Without(UndefinedReason.NoTrials);
        var x = Array.ConvertAll(used, row => Design.Row(row, options.Constant));
        if (x[0].Length == 0) return Without(UndefinedReason.NoValues);
        var events = used.Sum(row => row.Events);
        if (events == 0) return Without(UndefinedReason.NoEvents);
        if (events == used.Sum(row => row.Trials)) return Without(UndefinedReason.OnlyEvents);
        if (Design.Collinear(x)) return Without(UndefinedReason.CollinearTerms);
        var rate = events / used.Sum(row => row.Trials);
        var model = LogShareModel.Of(used);
        if (Start(x, options.Constant ? rate : null) is not { } start) return Without(UndefinedReason.BoundarySolution);
        var (beta, settled) = Search(model, x, start);
        if (!settled || RateSearch.RunsToTheEdge(model, x, beta))
        {
            if (RateSearch.Unbounded(model, x) is { } unbounded) return Without(UndefinedReason.Separation, unbounded);
            if (!settled) return Without(UndefinedReason.BoundarySolution);
        }

        double? nullDeviance = options.Constant ? LogisticRegression.NullDeviance(used, rate) : null;

        // A row without trials does not hold the rates below 1: its own may come out above.
        double[] fitted = [.. rows.Select(row => Math.Min(1, Math.Exp(Design.Dot(Design.Row(row, options.Constant), beta))))];
        return RateSearch.Finish(model, x, beta, Array.ConvertAll(used, row => row.Group), nullDeviance, fitted, options);
    }

    /// <summary>The most likely coefficients, and whether they lie where all rates are below 1.</summary>
    internal static (double[] Coefficients, bool Settled) Search(LogShareModel model, double[][] x, double[] start)
    {
        var beta = start;
        int[] full = [.. Enumerable.Range(0, model.Rows).Where(i => model.Events[i] == model.Sizes[i])];
        for (var barrier = full.Length == 0 ? 0 : 1.0; barrier > 1e-10; barrier /= 10)
        {
            model.Barrier = barrier;
            beta = NewtonSearch.Run(model, x, beta).Coefficients;
        }

        model.Barrier = 0;
        if (full.Any(i => -model.Predictor(i, x[i], beta) < AtOne)) return (beta, false);
        var (end, _, settled) = NewtonSearch.Run(model, x, beta);
        return (end, settled && full.All(i => -model.Predictor(i, x[i], end) >= AtOne));
    }

    /// <summary>Coefficients with all rates below 1: those of one rate, or without a constant a direction that lowers each row; null where there is none.</summary>
    private static double[]? Start(double[][] x, double? rate)
    {
        if (rate is { } all) return [Math.Log(all), .. new double[x[0].Length - 1]];
        bool[] none = new bool[x.Length], each = [.. x.Select(_ => true)];
        var (kind, direction) = Separation.Find(x, none, each);
        return kind == SeparationKind.Complete ? direction : null;
    }
}
