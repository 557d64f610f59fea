using System.Globalization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Shared;

/// <summary>Figures of sentences that are no plain counts or proportions.</summary>
internal static class Say
{
    public static FigureReference Share(string id, double? value) => Figure.Number(id, value, Unit.Proportion);

    public static FigureReference Difference(string id, double? value) => Figure.Number(id, value, Unit.Difference);

    public static FigureReference PerThousand(string id, double? value) => Figure.Number(id, value, Unit.PerThousand);

    public static FigureReference Ratio(string id, double? value) => Figure.Number(id, value, Unit.Ratio);

    /// <summary>A confidence as it is spoken of: 95 %.</summary>
    public static FigureReference Confidence(string id, double value) => Figure.Name(id, Figure.Percent(value));

    /// <summary>Names of a list, and the text with one placeholder for each: "{3}, {4} and {5}".</summary>
    public static (string Text, IEnumerable<FigureReference> Figures) Names(string list, IReadOnlyList<string> names, int firstPlaceholder)
    {
        var text = new System.Text.StringBuilder();
        for (var index = 0; index < names.Count; index++)
        {
            if (index > 0) text.Append(index == names.Count - 1 ? " and " : ", ");
            text.Append('{').Append((firstPlaceholder + index).ToString(CultureInfo.InvariantCulture)).Append('}');
        }

        return (text.ToString(), names.Select(name => Figure.Name(FigurePath.Row(list, name), name)));
    }

    public static FigureReference Hours(string id, double? value) => Figure.Number(id, value, Unit.Hours);

    public static FigureReference Days(string id, double? value) => Figure.Number(id, value, Unit.Days);
}
