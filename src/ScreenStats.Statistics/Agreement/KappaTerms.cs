namespace ScreenStats.Statistics.Agreement;

/// <summary>The weight of a cell in kappa.</summary>
internal static class KappaTerms
{
    public static double Weight(KappaWeights weights, int categories, int i, int j)
    {
        var distance = Math.Abs(i - j) / (categories - 1.0);
        return weights switch
        {
            KappaWeights.None => i == j ? 1 : 0,
            KappaWeights.Linear => 1 - distance,
            _ => 1 - (distance * distance),
        };
    }
}
