using System.Globalization;

namespace ScreenStats.Evaluation.Model;

/// <summary>The one rule by which figures are printed for people. Files hold full precision and are never rounded.</summary>
public static class Rounding
{
    /// <summary>The rule in words, for readers.</summary>
    public const string Rule =
        "One rule rounds every number of this page; findings.json, the workbook and the tables beside it hold all digits. Counts stand in full. Shares are in per cent with three significant digits and at most four decimals; "
        + "from 50 % on, as many as show the distance from 100 % (99.97 %). Differences of shares are in percentage points with their sign. Other numbers have three significant digits, at most four decimals, and from 100 on none; "
        + "limits that stand on random draws and lie far from their figure have two. Hours and days have one decimal at most. A p has three decimals, below 0.01 four, and below 0.0001 reads \"< 0.0001\". Dates are ISO 8601.";

    /// <summary>Prints a cell. A difference of proportions is printed in percentage points with its sign. Proportions are printed as per cent with three significant digits, at most four decimals and at least none lost above 99 %.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>Text; an undefined cell prints "undefined", a hidden one "hidden", an empty one nothing.</returns>
    public static string Print(Cell cell, Unit unit) => cell.Kind switch
    {
        CellKind.Empty => "",
        CellKind.Hidden => "hidden",
        CellKind.Undefined => "undefined",
        CellKind.Text => cell.AsText,
        CellKind.Date => cell.AsDate.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        CellKind.Count => cell.AsCount.ToString("N0", CultureInfo.InvariantCulture),
        _ => Number(cell.AsNumber, unit),
    };

    private static string Number(double value, Unit unit) => unit switch
    {
        Unit.Proportion => Significant(value * 100, 100) + " %",
        Unit.Difference => (value > 0 ? "+" : "") + Significant(value * 100, double.PositiveInfinity) + " points",
        Unit.PValue => value < 0.0001 ? "< 0.0001" : value.ToString(value < 0.01 ? "0.0000" : "0.000", CultureInfo.InvariantCulture),
        Unit.Hours or Unit.Days => value.ToString("#,0.#", CultureInfo.InvariantCulture),
        Unit.Count => value.ToString("N0", CultureInfo.InvariantCulture),
        Unit.DrawnLimit => Drawn(value),
        _ => Significant(value, double.PositiveInfinity),
    };

    /// <summary>Two significant digits, at most four decimals.</summary>
    private static string Drawn(double value)
    {
        if (value == 0) return "0";
        var digits = 1 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        if (digits > 0) return value.ToString("#,0." + new string('#', Math.Min(digits, 4)), CultureInfo.InvariantCulture);
        var step = Math.Pow(10, -digits);
        return (Math.Round(value / step, MidpointRounding.AwayFromZero) * step).ToString("#,0", CultureInfo.InvariantCulture);
    }

    /// <summary>Three significant digits, at most four decimals; close to a whole (99.97 %) as many as show the distance from it.</summary>
    private static string Significant(double value, double whole)
    {
        var size = Math.Abs(value);
        if (size > whole) whole = double.PositiveInfinity; // growth by more than 100 % is near no whole
        if (size == 0 || size == whole) return value.ToString("0", CultureInfo.InvariantCulture);
        var distance = double.IsFinite(whole) && size > whole / 2 ? whole - size : size;
        var decimals = Math.Clamp((size > whole / 2 && double.IsFinite(whole) ? 1 : 2) - (int)Math.Floor(Math.Log10(Math.Max(distance, 1e-300))), 0, 4);
        if (size >= 10 && distance >= 1) decimals = size >= 100 && double.IsInfinity(whole) ? 0 : 1;
        return value.ToString("#,0." + new string('0', decimals), CultureInfo.InvariantCulture);
    }
}
