using System.Globalization;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Model;

/// <summary>Makes the figures of sentences.</summary>
internal static class Figure
{
    public static FigureReference Count(string id, long value) => new(id, Cell.Count(value), Unit.Count);

    public static FigureReference Name(string id, string value) => new(id, Cell.Text(value), Unit.Text);

    public static FigureReference Day(string id, DateOnly? value) => new(id, Cell.Date(value), Unit.Date);

    public static FigureReference Number(string id, double? value, Unit unit, string? reason = null) =>
        new(id, Cell.NumberOr(value, reason ?? "nothing was counted"), unit);

    public static FigureReference Share(string path, ProportionFinding share) =>
        Number(path + ".estimate", share.Estimate, Unit.Proportion, share.EstimateUndefined);

    public static FigureReference Lower(string path, ProportionFinding share) =>
        Number(path + ".widenedLower", share.WidenedLower, Unit.Proportion, share.EstimateUndefined);

    public static FigureReference Upper(string path, ProportionFinding share) =>
        Number(path + ".widenedUpper", share.WidenedUpper, Unit.Proportion, share.EstimateUndefined);

    /// <summary>A count as a word where the noun after it depends on it: "1 case", "2 cases".</summary>
    public static string Plural(long count, string one, string many) => count == 1 ? one : many;

    /// <summary>The confidence as it is read: 0.95 is "95 %".</summary>
    public static string Percent(double confidence) => (confidence * 100).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}
