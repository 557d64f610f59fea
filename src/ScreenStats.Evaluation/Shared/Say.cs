using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Shared;

/// <summary>Figures of sentences that are no plain counts or proportions.</summary>
internal static class Say
{
    public static FigureReference Share(string id, double? value) => Figure.Number(id, value, Unit.Proportion);

    public static FigureReference PerThousand(string id, double? value) => Figure.Number(id, value, Unit.PerThousand);

    public static FigureReference Ratio(string id, double? value) => Figure.Number(id, value, Unit.Ratio);

    /// <summary>A confidence as it is spoken of: 95 %.</summary>
    public static FigureReference Confidence(string id, double value) => Figure.Name(id, Figure.Percent(value));

    public static FigureReference Hours(string id, double? value) => Figure.Number(id, value, Unit.Hours);

    public static FigureReference Days(string id, double? value) => Figure.Number(id, value, Unit.Days);
}
