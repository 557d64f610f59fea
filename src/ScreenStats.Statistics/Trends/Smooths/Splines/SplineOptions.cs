namespace ScreenStats.Statistics.Trends.Smooths.Splines;

/// <summary>How a penalised spline is fitted.</summary>
public sealed record SplineOptions
{
    /// <summary>Segments of equal length between the knots, 2 to 200; null (the default) for as many as there are points of time, at least 4 and at most 40.</summary>
    public int? Segments { get; init; }

    /// <summary>The first knot, not above the first point; null (the default) for half the shortest distance of two points before the first.</summary>
    public double? Lower { get; init; }

    /// <summary>The last knot, not below the last point; null (the default) for half the shortest distance of two points after the last.</summary>
    public double? Upper { get; init; }

    /// <summary>How the smoothing is chosen; not used where <see cref="Smoothing"/> is given.</summary>
    public SmoothingChoice Choice { get; init; } = SmoothingChoice.RestrictedLikelihood;

    /// <summary>The weight of the penalty on squared second differences of neighbouring coefficients, above 0; null (the default) to choose it.</summary>
    public double? Smoothing { get; init; }

    /// <summary>The confidence of the band, in (0, 1); 0.95 by default.</summary>
    public double Confidence { get; init; } = 0.95;

    internal void Check()
    {
        Guard.Confidence(Confidence);
        if (Segments is < 2 or > 200) throw new ArgumentOutOfRangeException(nameof(Segments), Segments, "There are 2 to 200 segments.");
        if (Smoothing is { } smoothing && !(smoothing > 0 && smoothing <= 1e15)) throw new ArgumentOutOfRangeException(nameof(Smoothing), smoothing, "The weight of the penalty lies above 0 and is at most 1e15.");
        if (Lower is { } lower) Guard.Finite(lower);
        if (Upper is { } upper) Guard.Finite(upper);
        if (Choice is not (SmoothingChoice.RestrictedLikelihood or SmoothingChoice.CrossValidation) && Smoothing is null)
            throw new ArgumentOutOfRangeException(nameof(Choice), Choice, "Without a weight of the penalty say how it is chosen.");
    }
}
