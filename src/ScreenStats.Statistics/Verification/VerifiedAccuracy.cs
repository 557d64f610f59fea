using System.Collections.Immutable;

namespace ScreenStats.Statistics.Verification;

/// <summary>The accuracy of a partly verified screen, corrected for what was not verified, with standard errors and covariances.</summary>
public sealed record VerifiedAccuracy
{
    private readonly ImmutableArray<AccuracyFigure> _figures;
    private readonly ImmutableArray<double> _covariances;

    internal VerifiedAccuracy(StratifiedCounts counts, double confidence, long? people, ImmutableArray<AccuracyFigure> figures, ImmutableArray<double> covariances)
    {
        Counts = counts;
        Confidence = confidence;
        People = people;
        _figures = figures;
        _covariances = covariances;
    }

    /// <summary>The counts it was computed from.</summary>
    public StratifiedCounts Counts { get; }

    /// <summary>The confidence of the limits, in (0, 1), two-sided.</summary>
    public double Confidence { get; }

    /// <summary>The number of people whose runs were taken as belonging together; null where every run was taken as independent.</summary>
    public long? People { get; }

    /// <summary>The sensitivity.</summary>
    public AccuracyFigure Sensitivity => this[AccuracyMeasure.Sensitivity];

    /// <summary>The specificity.</summary>
    public AccuracyFigure Specificity => this[AccuracyMeasure.Specificity];

    /// <summary>The prevalence among those screened.</summary>
    public AccuracyFigure Prevalence => this[AccuracyMeasure.Prevalence];

    /// <summary>The positive predictive value.</summary>
    public AccuracyFigure PositivePredictiveValue => this[AccuracyMeasure.PositivePredictiveValue];

    /// <summary>The negative predictive value.</summary>
    public AccuracyFigure NegativePredictiveValue => this[AccuracyMeasure.NegativePredictiveValue];

    /// <summary>A figure by what it measures.</summary>
    /// <param name="measure">What it measures.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public AccuracyFigure this[AccuracyMeasure measure] => Enum.IsDefined(measure)
        ? _figures[(int)measure]
        : throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure this library knows.");

    /// <summary>The covariance of two figures.</summary>
    /// <param name="first">One of them.</param>
    /// <param name="second">The other; the same one gives its variance.</param>
    /// <returns>The covariance; null where one of the two has no standard error.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public double? Covariance(AccuracyMeasure first, AccuracyMeasure second) =>
        this[first].StandardError is null || this[second].StandardError is null
            ? null
            : _covariances[((int)first * _figures.Length) + (int)second];
}
