using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Shared;

/// <summary>Figures for sentences, each with its path in findings.json.</summary>
internal static class Say
{
    /// <summary>At or below this many events (or, from the other side, non-events) a figure is said to rest on few.</summary>
    public const long Few = 5;

    public static FigureReference Count(string id, long value) => new(id, Cell.Count(value), Unit.Count);

    public static FigureReference Share(string id, double? value) =>
        new(id, Cell.NumberOr(value, "nothing was counted"), Unit.Proportion);

    public static FigureReference PerThousand(string id, double? value) =>
        new(id, Cell.NumberOr(value, "nothing was counted"), Unit.PerThousand);

    public static FigureReference Ratio(string id, double? value) => new(id, Cell.NumberOr(value, "nothing was counted"), Unit.Ratio);

    public static FigureReference Hours(string id, double? value) => new(id, Cell.NumberOr(value, "nothing was counted"), Unit.Hours);

    public static FigureReference Days(string id, double? value) => new(id, Cell.NumberOr(value, "nothing was counted"), Unit.Days);

    public static FigureReference Name(string id, string value) => new(id, Cell.Text(value), Unit.Text);

    /// <summary>A confidence as it is spoken of: 95 %, 99.9 %.</summary>
    public static FigureReference Confidence(string id, double value) =>
        new(id, Cell.Text((value * 100).ToString("0.####", CultureInfo.InvariantCulture) + " %"), Unit.Text);

    /// <summary>The name of a level as it is spoken of.</summary>
    public static string Level(string level) => level == Levels.None ? "no recorded name" : level;

    /// <summary>One or many, without the number.</summary>
    public static string Plural(long count, string one, string many) => count == 1 ? one : many;
}
