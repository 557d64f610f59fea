using System.Globalization;

namespace ScreenStats.Statistics.Tests.Economics;

/// <summary>Lists of figures in the fields of a reference row.</summary>
internal static class Lists
{
    public static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    public static string[] Words(this ReferenceRow row, string column) => row.Text(column).Split(' ', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Figures separated by blanks, lists of them by bars.</summary>
    public static double[][] Rows(this ReferenceRow row, string column) =>
        [.. row.Text(column).Split('|').Select(list => list.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Number).ToArray())];

    /// <summary>Pairs such as 1:2, separated by blanks.</summary>
    public static (double First, double Second)[] Pairs(this ReferenceRow row, string column) =>
        [.. row.Words(column).Select(pair => (Number(pair.Split(':')[0]), Number(pair.Split(':')[1])))];

    /// <summary>What differs between a list of a row and one computed, where <c>undefined</c> stands for null.</summary>
    public static IEnumerable<string?> Differences(this ReferenceRow row, string column, IReadOnlyList<double?> actual)
    {
        var words = row.Words(column);
        if (words.Length != actual.Count) yield return $"{row}: {column} has {words.Length} figures, {actual.Count} were computed";
        foreach (var (word, value) in words.Zip(actual))
        {
            var right = word == "undefined" ? value is null : value is { } known && row.Within(Number(word), known);
            if (!right) yield return string.Create(CultureInfo.InvariantCulture, $"{row}: {column} should hold {word}, holds {(value is { } found ? found.ToString("R", CultureInfo.InvariantCulture) : "undefined")}");
        }
    }

    public static string? Same(this ReferenceRow row, string column, string actual) =>
        row.Text(column) == actual ? null : $"{row}: {column} should be {row.Text(column)}, is {actual}";
}
