namespace ScreenStats.Reporting.Charts.Model;

/// <summary>Identity and words of a chart.</summary>
/// <param name="Id">Base name of its files.</param>
/// <param name="Title">What is shown.</param>
/// <param name="Caption">What to see in it; the builder adds how to read the marks.</param>
/// <param name="Description">For someone who cannot see it.</param>
/// <param name="TableId">The table that holds its figures.</param>
internal sealed record ChartFrame(string Id, string Title, Caption Caption, string Description, string TableId)
{
    /// <summary>What its scale measures, in words, where it is to be compared with other pictures; empty for nothing.</summary>
    public string Quantity { get; init; } = "";
}
