namespace ScreenStats.Reporting.Charts.Levels;

/// <summary>An accuracy as estimated here or as stated of a device.</summary>
/// <param name="Name">Whose it is.</param>
/// <param name="Estimate">The estimate; null for none.</param>
/// <param name="Lower">Lower limit, or the one-sided limit where there is no estimate; null for none.</param>
/// <param name="Upper">Upper limit; null for none.</param>
internal sealed record StatedRow(string Name, double? Estimate, double? Lower, double? Upper)
{
    /// <summary>What the counts alone allow; null for none.</summary>
    public (double Lower, double Upper)? Bounds { get; init; }

    /// <summary>Whether it is stated as a bare value, without limits.</summary>
    public bool TakenAsExact { get; init; }
}
