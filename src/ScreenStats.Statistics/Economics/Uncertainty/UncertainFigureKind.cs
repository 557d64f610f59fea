namespace ScreenStats.Statistics.Economics.Uncertainty;

/// <summary>The family of distributions that says what is known of a figure.</summary>
public enum UncertainFigureKind
{
    /// <summary>Known exactly.</summary>
    Fixed,

    /// <summary>Anywhere between two ends with the same chance.</summary>
    Uniform,

    /// <summary>A beta distribution: shares and chances.</summary>
    Beta,

    /// <summary>A gamma distribution: costs, rates, times.</summary>
    Gamma,

    /// <summary>A lognormal distribution: ratios, and what is a product of many things.</summary>
    Lognormal,
}
