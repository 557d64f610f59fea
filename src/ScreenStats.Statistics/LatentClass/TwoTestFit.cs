using System.Collections.Immutable;

namespace ScreenStats.Statistics.LatentClass;

/// <summary>The accuracy of two tests and the prevalence of each population by maximum likelihood (see <see cref="HuiWalter"/>); or undefined.</summary>
public sealed record TwoTestFit
{
    private readonly ImmutableArray<LatentFigure> _figures;
    private readonly ImmutableArray<double> _covariances;

    internal TwoTestFit(ImmutableArray<TwoTestCounts> populations, double confidence, UndefinedReason reason)
    {
        Populations = populations;
        Confidence = confidence;
        Reason = reason;
        _figures = [];
        _covariances = [];
    }

    internal TwoTestFit(
        ImmutableArray<TwoTestCounts> populations, double confidence, ImmutableArray<LatentFigure> figures, ImmutableArray<double> covariances,
        double logLikelihood, bool onBoundary, GoodnessOfFit fit)
    {
        Populations = populations;
        Confidence = confidence;
        _figures = figures;
        _covariances = covariances;
        LogLikelihood = logLikelihood;
        OnBoundary = onBoundary;
        Fit = fit;
    }

    /// <summary>The counts, population after population.</summary>
    public ImmutableArray<TwoTestCounts> Populations { get; }

    /// <summary>The confidence of the limits, in (0, 1).</summary>
    public double Confidence { get; }

    /// <summary>Why it is undefined; null where it is defined.</summary>
    public UndefinedReason? Reason { get; }

    /// <summary>Whether there are figures.</summary>
    public bool IsDefined => Reason is null;

    /// <summary>The prevalence of each population, in the order given; empty where undefined.</summary>
    public ImmutableArray<LatentFigure> Prevalences => IsDefined ? _figures[..Populations.Length] : [];

    /// <summary>The first test's sensitivity; null where undefined.</summary>
    public LatentFigure? FirstSensitivity => At(0);

    /// <summary>The first test's specificity; null where undefined.</summary>
    public LatentFigure? FirstSpecificity => At(1);

    /// <summary>The second test's sensitivity; null where undefined.</summary>
    public LatentFigure? SecondSensitivity => At(2);

    /// <summary>The second test's specificity; null where undefined.</summary>
    public LatentFigure? SecondSpecificity => At(3);

    /// <summary>The logarithm of the likelihood without its constant; null where undefined.</summary>
    public double? LogLikelihood { get; }

    /// <summary>Whether a figure lies at 0 or 1, so that no standard errors can be given.</summary>
    public bool OnBoundary { get; }

    /// <summary>How the model fits; null where undefined.</summary>
    public GoodnessOfFit? Fit { get; }

    /// <summary>The covariance of two figures.</summary>
    /// <param name="first">Index of a figure: the prevalences in order, then the four of <see cref="FirstSensitivity"/> to <see cref="SecondSpecificity"/>.</param>
    /// <param name="second">Index of the other; the same one gives its variance.</param>
    /// <returns>The covariance; null where there are no standard errors.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such figure.</exception>
    public double? Covariance(int first, int second)
    {
        var figures = Populations.Length + 4;
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfNegative(second);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(first, figures);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(second, figures);
        return _covariances.IsDefaultOrEmpty ? null : _covariances[(first * figures) + second];
    }

    private LatentFigure? At(int index) => IsDefined ? _figures[Populations.Length + index] : null;
}
