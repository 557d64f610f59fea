namespace ScreenStats.Statistics.Economics.Uncertainty.Information;

/// <summary>The net benefit of an option that is a straight line in a share, such as the share of negatives that were missed.</summary>
public readonly record struct LinearBenefit
{
    /// <summary>Makes a line.</summary>
    /// <param name="atZero">The net benefit at a share of 0, from -1e15 to 1e15.</param>
    /// <param name="atOne">The net benefit at a share of 1, from -1e15 to 1e15.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public LinearBenefit(double atZero, double atOne)
    {
        Guard.SignedAmount(atZero);
        Guard.SignedAmount(atOne);
        AtZero = atZero;
        AtOne = atOne;
    }

    /// <summary>The net benefit at a share of 0.</summary>
    public double AtZero { get; }

    /// <summary>The net benefit at a share of 1.</summary>
    public double AtOne { get; }

    /// <summary>The net benefit at a share.</summary>
    internal double At(double share) => AtZero + (share * (AtOne - AtZero));
}
