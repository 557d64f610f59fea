using System.Globalization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Tests.WhatIf;

/// <summary>How far interpolated figures are from exact ones, measured in halves of the last digit that is printed.</summary>
internal sealed class PrintedError
{
    private readonly Dictionary<string, (double Largest, string Where, long Points, long Differing)> figures = new(StringComparer.Ordinal);

    /// <summary>The largest error of any figure: below 1 it is below half of the last printed digit.</summary>
    public double Largest => figures.Values.Max(one => one.Largest);

    /// <summary>Of all figures, the share printed with another last digit.</summary>
    public double Differing => (double)figures.Values.Sum(one => one.Differing) / figures.Values.Sum(one => one.Points);

    public void Add(string figure, double interpolated, double exact, Unit unit, string where)
    {
        var text = Rounding.Print(Cell.Number(exact), unit);
        var digits = text.Split(' ')[0];
        var decimals = digits.Contains('.', StringComparison.Ordinal) ? digits.Length - digits.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        var scale = unit == Unit.Proportion ? 100 : 1;
        var error = Math.Abs(interpolated - exact) * scale / (0.5 * Math.Pow(10, -decimals));
        var other = Rounding.Print(Cell.Number(interpolated), unit) == text ? 0 : 1;
        var known = figures.GetValueOrDefault(figure);
        figures[figure] = (Math.Max(known.Largest, error), error > known.Largest ? where : known.Where, known.Points + 1, known.Differing + other);
    }

    public override string ToString() => string.Join('\n', figures.Select(one => string.Create(
        CultureInfo.InvariantCulture, $"{one.Key}: {one.Value.Largest:0.0000} of half a digit, at {one.Value.Where}; {one.Value.Differing} of {one.Value.Points} printed differently")));
}
