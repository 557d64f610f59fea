namespace ScreenStats.Evaluation.LotTests;

/// <summary>By what lots, or sites, are compared within their strata.</summary>
/// <param name="Name">Its name in tables.</param>
/// <param name="Direction"><c>more</c> where too many are looked for, <c>fewer</c> where too few.</param>
/// <param name="Events">What is counted, in words.</param>
/// <param name="Weighted">Whether the expected numbers follow weighted runs; else whole runs.</param>
internal sealed record TestMeasure(string Name, string Direction, string Events, bool Weighted)
{
    /// <summary>Positive runs that were refuted.</summary>
    public static TestMeasure Refuted { get; } = new("refuted", "more", "refuted positives", true);

    /// <summary>Inconclusive and invalid runs.</summary>
    public static TestMeasure Invalid { get; } = new("invalid", "more", "inconclusive and invalid runs", false);

    /// <summary>Cases found.</summary>
    public static TestMeasure Cases { get; } = new("cases", "fewer", "cases", true);

    /// <summary>Positive control swabs that did not show positive.</summary>
    public static TestMeasure FailedControls { get; } = new("failed-controls", "more", "failed positive controls", false);

    /// <summary>Whether too many are looked for.</summary>
    public bool Upper => Direction == "more";
}
