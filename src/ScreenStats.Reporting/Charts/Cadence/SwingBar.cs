namespace ScreenStats.Reporting.Charts.Cadence;

/// <summary>What an assumption does to a result, from one end of its range to the other.</summary>
/// <param name="Name">The assumption.</param>
/// <param name="LowerWords">Its lower end, as it is read.</param>
/// <param name="UpperWords">Its upper end, as it is read.</param>
/// <param name="AtLower">The result at its lower end.</param>
/// <param name="AtUpper">The result at its upper end.</param>
internal sealed record SwingBar(string Name, string LowerWords, string UpperWords, double AtLower, double AtUpper)
{
    /// <summary>The lower of both results.</summary>
    public double Least => Math.Min(AtLower, AtUpper);

    /// <summary>The higher of both results.</summary>
    public double Most => Math.Max(AtLower, AtUpper);
}
