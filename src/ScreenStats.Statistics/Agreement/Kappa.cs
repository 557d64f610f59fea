using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Agreement;

/// <summary>Agreement of two readings beyond what their margins alone would give.</summary>
public static class Kappa
{
    /// <summary>The name of the method of <see cref="Cohen"/> in tables.</summary>
    public const string MethodName = "fleiss-cohen-everitt";

    /// <summary>The name of the method of <see cref="PrevalenceAdjusted"/> in tables.</summary>
    public const string AdjustedMethodName = "wilson, mapped";

    /// <summary>Cohen's kappa, plain or weighted, with its asymptotic standard errors.</summary>
    /// <param name="table">The table; for weights its categories must stand in their order.</param>
    /// <param name="weights">How much a disagreement counts.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>Kappa; undefined without pairs, or where both readings only ever gave one and the same category.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1), or the weights are none of the enumeration.</exception>
    /// <remarks>
    /// (o - e) / (1 - e), where o is the sum of w p over the cells and e the same with p from the margins; w is 1 on the diagonal and 0
    /// elsewhere, or 1 - d / (k - 1), or 1 - d² / (k - 1)², at the distance d. The variance is that of w - (1 - kappa)(mean weight of the row
    /// + mean weight of the column) over the cells, divided by n (1 - e)²; under chance, with kappa 0 and p from the margins. Limits
    /// kappa ± z standard errors, clipped to [-1, 1]. Good from about 3 k² pairs on; where no disagreement was seen the standard error is 0 and says
    /// nothing. Source: Cohen J, Educ Psychol Meas 1960;20:37-46; Fleiss JL, Cohen J, Everitt BS, Psychol Bull 1969;72:323-327.
    /// </remarks>
    public static KappaEstimate Cohen(AgreementTable table, KappaWeights weights = KappaWeights.None, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(table);
        Guard.Confidence(confidence);
        if (!Enum.IsDefined(weights)) throw new ArgumentOutOfRangeException(nameof(weights), weights, "Not weights this library knows.");
        if (table.Total == 0) return new KappaEstimate(table, weights, null, null, Estimate.Undefined(UndefinedReason.NoTrials), null, null);
        var k = table.Categories;
        double n = table.Total;
        var first = Enumerable.Range(0, k).Select(i => table.First(i) / n).ToArray();
        var second = Enumerable.Range(0, k).Select(j => table.Second(j) / n).ToArray();
        double Weight(int i, int j) => KappaTerms.Weight(weights, k, i, j);
        var rowMean = Enumerable.Range(0, k).Select(i => Enumerable.Range(0, k).Sum(j => second[j] * Weight(i, j))).ToArray();
        var columnMean = Enumerable.Range(0, k).Select(j => Enumerable.Range(0, k).Sum(i => first[i] * Weight(i, j))).ToArray();
        double Over(Func<int, int, double> share, Func<int, int, double> term) =>
            Enumerable.Range(0, k).Sum(i => Enumerable.Range(0, k).Sum(j => share(i, j) * term(i, j)));
        double Seen(int i, int j) => table.Rows[i][j] / n;
        double Expected(int i, int j) => first[i] * second[j];

        var observed = Over((i, j) => table.Rows[i][j], Weight) / n;
        var chance = Over(Expected, Weight);

        // What is missing to full agreement, summed apart: it may be small.
        var missing = Over(Expected, (i, j) => 1 - Weight(i, j));
        if (missing == 0)
            return new KappaEstimate(table, weights, observed, chance, Estimate.Undefined(UndefinedReason.OneCategoryOnly), null, null);
        var disagreement = Over(Seen, (i, j) => 1 - Weight(i, j)) / missing;
        var kappa = 1 - disagreement;

        double Error(Func<int, int, double> share, double beyond)
        {
            double Term(int i, int j) => Weight(i, j) - ((rowMean[i] + columnMean[j]) * beyond);
            var mean = Over(share, Term);
            return Math.Sqrt(Over(share, (i, j) => (Term(i, j) - mean) * (Term(i, j) - mean)) / n) / missing;
        }

        var standardError = Error(Seen, disagreement);
        var half = Quantile.Normal(confidence) * standardError;
        var interval = new Interval(kappa - half, kappa + half).Clip(-1, 1).Including(kappa);
        return new KappaEstimate(
            table, weights, observed, chance, Estimate.Of(kappa, interval, MethodName, confidence), standardError, Error(Expected, 1));
    }

    /// <summary>Kappa as it would be if all categories were equally frequent in both readings.</summary>
    /// <param name="table">The table.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>(k o - 1) / (k - 1) for the observed agreement o of k categories, with mapped Wilson limits; undefined without pairs.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    /// <remarks>
    /// For two categories 2 o - 1, the prevalence-adjusted bias-adjusted kappa. It says no more than the overall agreement, on the scale of kappa.
    /// Source: Byrt T, Bishop J, Carlin JB, J Clin Epidemiol 1993;46:423-429.
    /// </remarks>
    public static Estimate PrevalenceAdjusted(AgreementTable table, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(table);
        var share = PercentAgreement.Overall(table, confidence);
        if (share.Interval is not { } limits) return Estimate.Undefined(UndefinedReason.NoTrials);
        double k = table.Categories;
        double Mapped(double agreement) => ((k * agreement) - 1) / (k - 1);
        var value = ((k * table.Agreeing) - table.Total) / ((k - 1) * table.Total);
        return Estimate.Of(value, new Interval(Mapped(limits.Lower), Mapped(limits.Upper)).Including(value), AdjustedMethodName, confidence);
    }
}
