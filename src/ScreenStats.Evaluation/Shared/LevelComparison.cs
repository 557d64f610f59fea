namespace ScreenStats.Evaluation.Shared;

/// <summary>One site, lot or operator against the others of its breakdown: how many events it would have if all were alike.</summary>
/// <param name="Expected">Events expected of it; null where it was not compared.</param>
/// <param name="P">Exact one-sided chance of at least its events; null where it was not compared.</param>
/// <param name="PHolm">The same adjusted for the number compared (Holm); null where it was not compared.</param>
/// <param name="PUndefined">Why it was not compared; null where it was.</param>
/// <param name="Compared">How many were compared with one another: the family of the adjustment.</param>
public sealed record LevelComparison(double? Expected, double? P, double? PHolm, string? PUndefined, int Compared)
{
    /// <summary>An adjusted p below this stands out: the threshold of the flags.</summary>
    public const double Threshold = 0.01;

    /// <summary>True where it has more events than chance readily makes.</summary>
    public bool StandsOut => PHolm < Threshold;

    /// <summary>A comparison that was not made.</summary>
    /// <param name="reason">Why.</param>
    /// <returns>It, with the reason.</returns>
    public static LevelComparison None(string reason) => new(null, null, null, reason, 0);
}
