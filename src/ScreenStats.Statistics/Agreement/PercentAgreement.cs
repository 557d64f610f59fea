using ScreenStats.Statistics.Comparison.Paired;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Agreement;

/// <summary>Shares of agreement, with Wilson intervals where they are plain proportions.</summary>
/// <remarks>
/// Agreement with a reading that may itself be wrong is not accuracy: the names are positive and negative percent agreement, never
/// sensitivity and specificity. Source: US Food and Drug Administration, Statistical Guidance on Reporting Results from Studies Evaluating
/// Diagnostic Tests, 13 March 2007.
/// </remarks>
public static class PercentAgreement
{
    /// <summary>The name of the method of <see cref="Specific"/> in tables.</summary>
    public const string SpecificMethodName = "wilson, mapped";

    /// <summary>The share of all in which both readings gave the same category.</summary>
    /// <param name="table">The table.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The share with its Wilson interval; undefined without pairs.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public static ProportionEstimate Overall(AgreementTable table, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(table);
        return ProportionInterval.Wilson(table.Agreeing, table.Total, confidence);
    }

    /// <summary>Of those positive in the second reading, the share positive in the first.</summary>
    /// <param name="counts">The four counts; the second reading is the one compared with.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The share with its Wilson interval; undefined where the second reading is never positive.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public static ProportionEstimate Positive(PairedCounts counts, double confidence = 0.95) =>
        ProportionInterval.Wilson(counts.Both, counts.SecondPositive, confidence);

    /// <summary>Of those negative in the second reading, the share negative in the first.</summary>
    /// <param name="counts">The four counts; the second reading is the one compared with.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The share with its Wilson interval; undefined where the second reading is never negative.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public static ProportionEstimate Negative(PairedCounts counts, double confidence = 0.95) =>
        ProportionInterval.Wilson(counts.Neither, counts.SecondNegative, confidence);

    /// <summary>The specific agreement on one category: twice those both put there over how often either did.</summary>
    /// <param name="table">The table.</param>
    /// <param name="category">The category, from 0; in a table of two, 0 is positive and 1 negative.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The agreement in [0, 1]; undefined where neither reading ever gave the category.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such category, or the confidence is outside (0, 1).</exception>
    /// <remarks>
    /// 2 x / (r + c), for x on the diagonal, r in the row and c in the column. It treats both readings alike. With s = x / (r + c - x), the
    /// share in which both said so of those in which either did, it is 2 s / (1 + s), and its limits are those of the Wilson interval of s.
    /// Source: Fleiss JL, Statistical Methods for Rates and Proportions, 2nd edition 1981, section 13.1 (from memory).
    /// </remarks>
    public static Estimate Specific(AgreementTable table, int category, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(table);
        var margins = table.First(category) + table.Second(category);
        var both = table.Rows[category][category];
        var share = ProportionInterval.Wilson(both, margins - both, confidence);
        if (share.Interval is not { } limits) return Estimate.Undefined(UndefinedReason.NoTrials);
        var value = 2.0 * both / margins;
        var interval = new Interval(2 * limits.Lower / (1 + limits.Lower), 2 * limits.Upper / (1 + limits.Upper)).Including(value);
        return Estimate.Of(value, interval, SpecificMethodName, confidence);
    }
}
