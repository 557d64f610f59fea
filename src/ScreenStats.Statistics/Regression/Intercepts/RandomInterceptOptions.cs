namespace ScreenStats.Statistics.Regression.Intercepts;

/// <summary>How a random-intercept logistic regression is fitted.</summary>
public sealed record RandomInterceptOptions
{
    /// <summary>Nodes of adaptive Gauss-Hermite quadrature over each group's effect: 1 (Laplace's approximation), or 5 to 100.</summary>
    public int Nodes { get; init; } = 25;

    /// <summary>The confidence of limits, in (0, 1).</summary>
    public double Confidence { get; init; } = 0.95;

    internal void Check()
    {
        Guard.Confidence(Confidence);
        if (Nodes is not (1 or (>= 5 and <= 100))) throw new ArgumentOutOfRangeException(nameof(Nodes), Nodes, "The nodes must be 1, or lie between 5 and 100.");
    }
}
