namespace ScreenStats.Reporting.Charts.Model;

/// <summary>The scale of what a picture measures, so that pictures of the same quantity can be drawn to the same one.</summary>
/// <param name="Quantity">What is measured, in words; pictures of the same words can be compared.</param>
/// <param name="Top">Where the scale ends as the picture by itself would have it.</param>
/// <param name="To">The same picture with a scale that ends elsewhere, at <paramref name="Top"/> or above.</param>
internal sealed record ChartScale(string Quantity, double Top, Func<double, Chart> To)
{
    /// <summary>The scale of a picture; null where its frame names no quantity.</summary>
    public static ChartScale? Of(ChartFrame frame, double top, Func<double, Chart> to) => frame.Quantity.Length == 0 ? null : new(frame.Quantity, top, to);
}
