using ScreenStats.Statistics.Comparison.Paired;

namespace ScreenStats.Statistics.Agreement;

/// <summary>What moves kappa of a table of two categories beside the agreement itself.</summary>
/// <remarks>
/// With the overall agreement o, the bias index B and the prevalence index P, kappa is (2 o - 1 - P² + B²) / (1 - P² + B²). Source: Byrt T,
/// Bishop J, Carlin JB, J Clin Epidemiol 1993;46:423-429.
/// </remarks>
public static class AgreementIndex
{
    /// <summary>How much more often the first reading is positive than the second: (b - c) / n.</summary>
    /// <param name="counts">The four counts.</param>
    /// <returns>In [-1, 1]; null without pairs.</returns>
    public static double? Bias(PairedCounts counts) =>
        counts.Pairs == 0 ? null : (double)(counts.FirstOnly - counts.SecondOnly) / counts.Pairs;

    /// <summary>How much more often both are positive than both negative: (a - d) / n.</summary>
    /// <param name="counts">The four counts.</param>
    /// <returns>In [-1, 1]; null without pairs.</returns>
    public static double? Prevalence(PairedCounts counts) =>
        counts.Pairs == 0 ? null : (double)(counts.Both - counts.Neither) / counts.Pairs;
}
