using System.Globalization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Files.Workbooks;

/// <summary>
/// How the numbers of a column are shown. The cells hold full precision; the format shows about three significant digits of the smallest
/// number of the column, at most four decimals, as pages print them.
/// </summary>
internal static class NumberFormats
{
    private const int MostDecimals = 4;
    private const string Large = "[>=1000]";
    private const string Middling = "[>=10]";

    /// <summary>The unit that a heading names; empty where the heading says it or there is none.</summary>
    public static string Words(Unit unit) => unit switch
    {
        Unit.Proportion => "%",
        Unit.Difference => "percentage points",
        Unit.PerThousand => "per 1,000",
        Unit.PValue => "probability",
        Unit.Hours => "hours",
        Unit.Days => "days",
        _ => "",
    };

    /// <summary>A heading with its unit.</summary>
    public static string Heading(ColumnInfo column) =>
        Words(column.Unit) is { Length: > 0 } words && !column.Heading.Contains(words, StringComparison.OrdinalIgnoreCase) ? $"{column.Heading} ({words})" : column.Heading;

    /// <summary>The format of a column.</summary>
    /// <param name="unit">Its unit.</param>
    /// <param name="numbers">Its numbers.</param>
    public static string Of(Unit unit, IEnumerable<double> numbers) => unit switch
    {
        Unit.Text => "",
        Unit.Date => "yyyy-mm-dd",
        Unit.Count => "#,##0",
        Unit.Proportion => Fixed("0", Math.Max(1, Decimals(numbers.SelectMany(Shares)))) + "%",
        Unit.Difference => Signed(Fixed("0", Math.Max(1, Decimals(numbers.Select(number => number * 100)))) + "%"),
        Unit.PValue => "[<0.0001]\"< 0.0001\";0.0000",
        Unit.Hours or Unit.Days => "#,##0.0",
        _ => Wide([.. numbers]),
    };

    /// <summary>How many letters a number takes in a format.</summary>
    public static int Length(string format, double number)
    {
        if (format.StartsWith("[<", StringComparison.Ordinal)) return "< 0.0001".Length;
        var sections = format.Split(';');
        var section = !format.StartsWith('[') ? sections[0] : number >= 1000 ? sections[0][Large.Length..] : number >= 10 ? sections[1][Middling.Length..] : sections[2];
        var (percent, signed) = (section.EndsWith('%'), section.StartsWith('+'));
        var point = section.IndexOf('.', StringComparison.Ordinal);
        var decimals = point < 0 ? 0 : section.Length - point - 1 - (percent ? 1 : 0);
        var digits = Math.Abs(percent ? number * 100 : number).ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return digits.Length + (signed || number < 0 ? 1 : 0) + (percent ? 1 : 0);
    }

    // A column of figures of different kinds: shares beside thousands of screens. Large ones need no decimals.
    private static string Wide(double[] numbers) => (Fixed("#,##0", Decimals(numbers)), numbers.Any(number => number >= 1000)) is var (small, large) && large && small.Contains('.', StringComparison.Ordinal)
        ? $"{Large}#,##0;{Middling}#,##0.0;{small}" : small;

    // Near all of it the distance from all counts: 99.97 %, not 100.0 %. It needs a digit less.
    private static IEnumerable<double> Shares(double share) => share > 0.5 && share < 1 ? [(1 - share) * 1000] : [share * 100];

    private static string Fixed(string whole, int decimals) => decimals == 0 ? whole : $"{whole}.{new string('0', decimals)}";

    private static string Signed(string format) => $"+{format};-{format};{format}";

    private static int Decimals(IEnumerable<double> numbers)
    {
        var (smallest, whole) = (double.PositiveInfinity, true);
        foreach (var number in numbers)
        {
            whole &= number == Math.Floor(number);
            if (number != 0) smallest = Math.Min(smallest, Math.Abs(number));
        }

        return whole ? 0 : Math.Clamp(2 - (int)Math.Floor(Math.Log10(smallest)), 0, MostDecimals);
    }
}
