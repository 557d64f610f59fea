using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression.Fitting;

namespace ScreenStats.Statistics.Regression.Intercepts;

/// <summary>Logistic regression whose groups (sites) differ by a normal effect on the logit: fair to groups of every size.</summary>
public static class RandomInterceptLogistic
{
    // Beyond this standard deviation on the logit scale the usual site's rate is e^5 times another's: the likelihood is all but flat and nothing is known.
    private const double LargestDeviation = 5;

    // From these standard deviations on the logit scale the search starts: alike, usual, very unlike.
    private static readonly double[] Starts = [0.3, 1, 0.05];

    /// <summary>The most likely coefficients and variance, and what they say of each group.</summary>
    /// <param name="rows">The rows, in any order, each with its group; those without trials are left out.</param>
    /// <param name="options">Nodes and confidence; null for the defaults.</param>
    /// <returns>
    /// The fit; a reason where there is nothing to fit, terms separate events from the others, or the standard deviation
    /// between groups would exceed 5, as where one has all events. Where no variance is more likely
    /// than none, the coefficients of the plain regression with that reason and no rates of groups.
    /// </returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentException">Rows with different numbers of terms.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain.</exception>
    /// <remarks>
    /// The likelihood of a group is integrated over its effect: Laplace's approximation with one node, adaptive Gauss-Hermite quadrature around its mode else.
    /// Maximised over coefficients and ln σ by Newton's steps from several starts; errors from the observed information. The slopes are those of the
    /// integral; from 25 nodes on coefficients change by less than a hundredth of their error where σ is below 2; beyond, as where
    /// groups are all or nothing, the likelihood is flat and its figures are rough. Rows of the same terms are one, so that a thousand groups by sixty
    /// months take a second or two. Counts need not be whole. A group's limits add the uncertainty of the coefficients and of σ (first order). A site
    /// without any event has a rate above 0: that of its likes, drawn down by its trials. Source: Pinheiro JC, Bates DM, J Comput Graph Stat
    /// 1995;4:12-35; Louis TA, J R Stat Soc B 1982;44:226-233; Kass RE, Steffey D, J Am Stat Assoc 1989;84:717-726 (from memory).
    /// </remarks>
    public static RandomInterceptFit Fit(IReadOnlyList<BinomialRow> rows, RandomInterceptOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(rows);
        options ??= new RandomInterceptOptions();
        options.Check();
        var patterns = RowPatterns.From(rows);
        var used = patterns.Rows;
        var byGroup = Enumerable.Range(0, used.Length).GroupBy(i => used[i].Group).OrderBy(group => group.Key).Select(group => new InterceptCounts(patterns, group)).ToArray();
        RandomInterceptFit Without(UndefinedReason reason) => new(byGroup.Length, [], [], [], [], null, Estimate.Undefined(reason), null, options.Nodes, [], reason);
        var plain = LogisticRegression.Fit(rows, new LogisticOptions { Confidence = options.Confidence });
        if (plain.Reason is { } reason) return Without(reason);
        if (byGroup.Length < 2) return Without(UndefinedReason.FewerThanTwoGroups);
        if (byGroup.All(group => group.Trials == 1)) return Without(UndefinedReason.OneTrialInEachCluster);

        // The parts in one order whatever the labels of the groups, so that sums do not depend on them.
        var model = new InterceptModel(patterns.Merged);
        var parts = Array.ConvertAll(byGroup, group => group.Part());
        InterceptGroup[] summed = [.. Enumerable.Range(0, parts.Length).OrderBy(i => byGroup[i]).Select(i => parts[i])];
        var rule = HermiteRule.Of(options.Nodes);
        var likelihood = new InterceptLikelihood(model, summed, rule);
        var constant = used.Sum(row => Binomial.LogProbability(row.Events, row.Trials, 0.5, 0.5) + (row.Trials * Math.Log(2)));
        var (best, ranAway) = Highest(likelihood, new InterceptLikelihood(model, summed, HermiteRule.Of(1)), plain.Coefficients, options.Nodes == 1);
        var none = plain.LogLikelihood!.Value - constant;
        if (best is not { } found || !(found.Log > none + 1e-10))
            return best is null && ranAway ? Without(UndefinedReason.GroupsTooUnlike) : Alike(plain, byGroup, options);
        if (found.Theta[^1] > Math.Log(LargestDeviation)) return Without(UndefinedReason.GroupsTooUnlike);
        if (SymmetricMatrix.Factor(likelihood.At(found.Theta).Matrix(), 1e-12, out _) is not { } factor) return Without(UndefinedReason.NotConverged);

        var covariance = SymmetricMatrix.Inverse(factor);
        var z = Quantile.Normal(options.Confidence);
        var terms = found.Theta.Length - 1;
        double[] errors = [.. Enumerable.Range(0, terms).Select(j => Math.Sqrt(covariance[j, j]))];
        double[] beta = found.Theta[..terms];
        var deviation = Math.Exp(found.Theta[^1]);
        var spread = z * Math.Sqrt(covariance[terms, terms]);
        return new RandomInterceptFit(
            byGroup.Length, beta, [.. beta.Select((b, j) => new Interval(b - (z * errors[j]), b + (z * errors[j])))], errors, Design.Nested(covariance), deviation * deviation,
            Limits(deviation, spread, options.Confidence), found.Log + constant, options.Nodes, Effects(byGroup, parts, model, patterns.Merged, found.Theta, covariance, rule, options.Confidence), null);
    }

    /// <summary>The highest point: where Laplace's approximation, quick to climb, finds one, from there, else from several starts.</summary>
    private static ((double[] Theta, double Log)? Best, bool RanAway) Highest(InterceptLikelihood likelihood, InterceptLikelihood quick, IReadOnlyList<double> coefficients, bool isQuick)
    {
        (double[] Theta, double Log)? best = null;
        var ranAway = false;
        void Climb(InterceptLikelihood hill, double[] from)
        {
            var (theta, log, settled) = hill.Climb(from);
            if (settled && (best is not { } b || log > b.Log + 1e-9)) best = (theta, log);
            ranAway |= !settled && theta[^1] > -5;
        }

        foreach (var sigma in Starts) Climb(quick, [.. coefficients, Math.Log(sigma)]);
        if (isQuick) return (best, ranAway);
        var near = best;
        (best, ranAway) = (null, false);
        if (near is { } start) Climb(likelihood, start.Theta);
        if (best is not null) return (best, false);
        foreach (var sigma in Starts) Climb(likelihood, [.. coefficients, Math.Log(sigma)]);
        return (best, ranAway);
    }

    /// <summary>The limits of a standard deviation on the logarithmic scale; the value alone where they leave the range of numbers.</summary>
    private static Estimate Limits(double deviation, double spread, double confidence) => spread < 600
        ? Estimate.Of(deviation, new Interval(deviation * Math.Exp(-spread), deviation * Math.Exp(spread)), "random-intercept logistic", confidence)
        : Estimate.Point(deviation, "random-intercept logistic");

    private static RandomInterceptFit Alike(LogisticFit plain, InterceptCounts[] byGroup, RandomInterceptOptions options)
    {
        var undefined = Estimate.Undefined(UndefinedReason.GroupsAllAlike);
        var terms = plain.Coefficients.Count;
        IReadOnlyList<IReadOnlyList<double>> covariance = [.. plain.Covariance.Select(row => (IReadOnlyList<double>)[.. row, 0.0]), new double[terms + 1]];
        return new RandomInterceptFit(
            byGroup.Length, plain.Coefficients, plain.Intervals, plain.StandardErrors, covariance, 0, undefined, plain.LogLikelihood, options.Nodes,
            [.. byGroup.Select(group => new GroupEffect(group.Group, group.Events, group.Trials, null, null, null, undefined))], UndefinedReason.GroupsAllAlike);
    }

    private static List<GroupEffect> Effects(
        InterceptCounts[] byGroup, InterceptGroup[] parts, InterceptModel model, BinomialRow[] merged, double[] theta, double[,] covariance, HermiteRule rule, double confidence)
    {
        // All rows together, one entry for each combination of terms, weighted by trials.
        double total = merged.Sum(row => row.Trials);
        var eta = model.Predictor(theta);
        var sigma = Math.Exp(theta[^1]);
        var effects = new List<GroupEffect>();
        for (var g = 0; g < parts.Length; g++)
        {
            var mode = sigma * parts[g].Mode(eta, sigma).Mode;
            var (mean, variance) = parts[g].Moments(eta, sigma, rule);
            (mean, variance) = (sigma * mean, sigma * sigma * variance);
            double rate = 0, others = 0, byEffect = 0;
            var slopes = new double[theta.Length];
            for (var i = 0; i < merged.Length; i++)
            {
                var weight = merged[i].Trials / total;
                var (p, q) = (LogitScale.Fraction(eta[i] + mean), LogitScale.Fraction(-eta[i] - mean));
                rate += weight * p;
                others += weight * q;
                byEffect += weight * p * q;
                foreach (var j in model.Filled[i]) slopes[j] += weight * p * q * model.X[i][j];
            }

            // On the logit of the rate: the effect's own variance, and what coefficients and σ move, also through the effect.
            var ofMode = parts[g].ModeSlopes(model, eta, sigma);
            for (var j = 0; j < slopes.Length; j++) slopes[j] = (slopes[j] + (byEffect * ofMode[j])) / (rate * others);
            var logitVariance = (byEffect / (rate * others) * (byEffect / (rate * others)) * variance) + SymmetricMatrix.Form(covariance, slopes);
            effects.Add(new GroupEffect(
                byGroup[g].Group, byGroup[g].Events, byGroup[g].Trials, mode, mean, Math.Sqrt(variance),
                Estimate.Of(rate, LogitScale.Of(rate, Math.Log(rate / others), logitVariance, confidence), "random-intercept logistic", confidence)));
        }

        return effects;
    }
}
