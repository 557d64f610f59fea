using System.Globalization;
using ScreenStats.Cli.Results;

namespace ScreenStats.Cli.Terminal;

/// <summary>How figures are shown to people: invariant, and rounded only here.</summary>
internal static class Show
{
    /// <summary>Six significant digits: enough to compare methods, few enough to read.</summary>
    public static string Number(double value) =>
        value.ToString(value != 0 && Math.Abs(value) < 1e-4 ? "0.#####e+0" : "G6", CultureInfo.InvariantCulture);

    public static string Number(Figure figure) => figure.Value is { } value ? Number(value) : "undefined";

    /// <summary>A p-value; one too small for a double is not shown as 0.</summary>
    public static string PValue(Figure figure) => figure.Value is 0 ? "p < 1e-300" : "p = " + Number(figure);

    /// <summary>Why figures are missing: one line a reason, with the names of those it holds for, unless it holds for all.</summary>
    public static IEnumerable<string> Reasons(IReadOnlyList<(string Name, string? Reason)> figures) => figures
        .Where(figure => figure.Reason is not null)
        .GroupBy(figure => figure.Reason!, StringComparer.Ordinal)
        .Select(group => group.Count() == figures.Count
            ? "undefined: " + group.Key
            : $"{string.Join(", ", group.Select(figure => figure.Name).Distinct())}: {group.Key}");

    public static string Rounded(Figure figure, string format) =>
        figure.Value is { } value ? value.ToString(format, CultureInfo.InvariantCulture) : "undefined";

    public static string Count(long value) => value.ToString("N0", CultureInfo.InvariantCulture);

    public static string Confidence(double value) =>
        ((decimal)value * 100).ToString("0.######", CultureInfo.InvariantCulture) + " %";
}
