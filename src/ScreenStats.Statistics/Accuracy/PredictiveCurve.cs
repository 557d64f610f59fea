using System.Collections.Immutable;

namespace ScreenStats.Statistics.Accuracy;

/// <summary>Predictive values over prevalence.</summary>
public static class PredictiveCurve
{
    /// <summary>Both predictive values at each of the given prevalences.</summary>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="prevalences">Prevalences, each in [0, 1] and taken as exact.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided, at each point by itself.</param>
    /// <returns>One point for each, in the order given.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>As <see cref="PredictiveValue"/>, point by point.</remarks>
    public static ImmutableArray<PredictivePoint> Of(
        AccuracyStatement sensitivity, AccuracyStatement specificity, IEnumerable<double> prevalences, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(prevalences);
        return
        [
            .. prevalences.Select(prevalence => new PredictivePoint(
                prevalence,
                PredictiveValue.Positive(sensitivity, specificity, prevalence, confidence),
                PredictiveValue.Negative(sensitivity, specificity, prevalence, confidence))),
        ];
    }

    /// <summary>Prevalences evenly spaced on a logarithmic scale.</summary>
    /// <param name="lowest">The first, above 0.</param>
    /// <param name="highest">The last, above <paramref name="lowest"/> and at most 1.</param>
    /// <param name="points">How many, at least 2.</param>
    /// <returns>The prevalences, ascending; both ends exactly as given.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static ImmutableArray<double> Prevalences(double lowest, double highest, int points)
    {
        if (!(lowest > 0 && lowest < 1)) throw new ArgumentOutOfRangeException(nameof(lowest), lowest, "The lowest prevalence must lie strictly between 0 and 1.");
        if (!(highest > lowest && highest <= 1)) throw new ArgumentOutOfRangeException(nameof(highest), highest, "The highest prevalence must lie above the lowest and be at most 1.");
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 2);
        return
        [
            .. Enumerable.Range(0, points).Select(index =>
                index == 0 ? lowest : index == points - 1 ? highest : lowest * Math.Pow(highest / lowest, (double)index / (points - 1))),
        ];
    }
}
