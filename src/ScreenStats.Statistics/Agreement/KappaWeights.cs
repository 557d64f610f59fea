namespace ScreenStats.Statistics.Agreement;

/// <summary>How much a disagreement counts in kappa, by how many categories lie between.</summary>
public enum KappaWeights
{
    /// <summary>Every disagreement counts the same: Cohen's kappa.</summary>
    None,

    /// <summary>A disagreement counts by its distance in categories.</summary>
    Linear,

    /// <summary>A disagreement counts by the square of its distance.</summary>
    Quadratic,
}
