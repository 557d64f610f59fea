using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Charts.Words;

/// <summary>Round places on axes, and their labels.</summary>
internal static class Ticks
{
    /// <summary>Places from 0 to an end, for fractions shown as per cent: steps of 1, 2 or 5 times a power of ten, four to seven of them.</summary>
    /// <param name="to">Upper end, above 0.</param>
    public static ImmutableArray<Tick> PerCent(double to)
    {
        var step = Step(to * 100 / 5);
        var decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(step) + 1e-9));
        var ticks = ImmutableArray.CreateBuilder<Tick>();
        for (var index = 0; index * step <= to * 100 * (1 + 1e-9); index++)
        {
            ticks.Add(new Tick(index * step / 100, index == 0 ? "0" : Print(index * step, decimals) + " %"));
        }

        return ticks.ToImmutable();
    }

    /// <summary>Places from 0 to an end for counts: whole steps.</summary>
    /// <param name="to">Upper end, above 0.</param>
    public static ImmutableArray<Tick> Counts(double to)
    {
        var step = Math.Max(1, Step(to / 5));
        var ticks = ImmutableArray.CreateBuilder<Tick>();
        for (var index = 0; index * step <= to * (1 + 1e-9); index++) ticks.Add(new Tick(index * step, Print(index * step, 0)));
        return ticks.ToImmutable();
    }

    /// <summary>Places between two ends for counts: whole steps, four to seven of them where the ends lie that far apart.</summary>
    /// <param name="from">Lower end, 0 or more.</param>
    /// <param name="to">Upper end, above the lower one.</param>
    public static ImmutableArray<Tick> Counts(double from, double to)
    {
        var step = Math.Max(1, Step((to - from) / 5));
        var ticks = ImmutableArray.CreateBuilder<Tick>();
        for (var at = step * Math.Ceiling(from / step); at <= to * (1 + 1e-9); at += step) ticks.Add(new Tick(at, Print(at, 0)));
        return ticks.ToImmutable();
    }

    /// <summary>Round places between two ends, with as many decimals as their steps need.</summary>
    /// <param name="from">Lower end.</param>
    /// <param name="to">Upper end, above the lower one.</param>
    public static ImmutableArray<Tick> Numbers(double from, double to)
    {
        var step = Step((to - from) / 5);
        var decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(step) + 1e-9));
        var ticks = ImmutableArray.CreateBuilder<Tick>();
        for (var index = Math.Ceiling((from / step) - 1e-9); index * step <= to + (1e-9 * step); index++) ticks.Add(new Tick(index * step, index == 0 ? "0" : Print(index * step, decimals)));
        return ticks.ToImmutable();
    }

    /// <summary>Counts on a logarithmic axis: powers of ten, and 2 and 5 times them where the ends lie less than three powers apart.</summary>
    /// <param name="from">Lower end, above 0.</param>
    /// <param name="to">Upper end, above the lower one.</param>
    public static ImmutableArray<Tick> PowersOfTen(double from, double to)
    {
        ReadOnlySpan<int> steps = Math.Log10(to / from) < 3 ? [1, 2, 5] : [1];
        var ticks = ImmutableArray.CreateBuilder<Tick>();
        for (var power = (int)Math.Floor(Math.Log10(from)); power <= Math.Log10(to); power++)
        {
            foreach (var step in steps)
            {
                var at = step * Math.Pow(10, power);
                if (at >= Math.Max(1, from) * (1 - 1e-9) && at <= to * (1 + 1e-9)) ticks.Add(new Tick(at, Print(at, 0)));
            }
        }

        return ticks.ToImmutable();
    }

    /// <summary>Powers of ten between two ends, for fractions shown as per cent on a logarithmic axis.</summary>
    public static ImmutableArray<Tick> PowersOfTenPerCent(double from, double to)
    {
        var ticks = ImmutableArray.CreateBuilder<Tick>();
        for (var power = (int)Math.Ceiling(Math.Log10(from) - 1e-9); power <= Math.Log10(to) + 1e-9; power++)
        {
            ticks.Add(new Tick(Math.Pow(10, power), Print(Math.Pow(10, power + 2), Math.Max(0, -power - 2)) + " %"));
        }

        return ticks.ToImmutable();
    }

    /// <summary>First days of months between two days (Mondays where the span is short), every so many that at most eight are labelled.</summary>
    public static ImmutableArray<Tick> Days(DateOnly from, DateOnly to)
    {
        var span = to.DayNumber - from.DayNumber;
        if (span <= 70) return Mondays(from, to, span <= 49 ? 7 : 14);
        var months = span / 30.44;
        var every = months <= 8 ? 1 : months <= 16 ? 2 : months <= 24 ? 3 : months <= 48 ? 6 : 12 * (int)Math.Ceiling(months / 96);
        var ticks = ImmutableArray.CreateBuilder<Tick>();
        var month = new DateOnly(from.Year, from.Month, 1);
        for (; month <= to; month = month.AddMonths(1))
        {
            if (month < from || (month.Year * 12 + month.Month - 1) % every != 0) continue;
            var withYear = ticks.Count == 0 || month.Month == 1 || every > 6;
            ticks.Add(new Tick(month.DayNumber, month.ToString(withYear ? "MMM yyyy" : "MMM", CultureInfo.InvariantCulture)));
        }

        return ticks.ToImmutable();
    }

    private static ImmutableArray<Tick> Mondays(DateOnly from, DateOnly to, int days)
    {
        var first = from.DayNumber + (8 - (int)from.DayOfWeek) % 7;
        var ticks = ImmutableArray.CreateBuilder<Tick>();
        for (var day = first; day <= to.DayNumber; day += days)
        {
            ticks.Add(new Tick(day, DateOnly.FromDayNumber(day).ToString(ticks.Count == 0 ? "d MMM yyyy" : "d MMM", CultureInfo.InvariantCulture)));
        }

        if (ticks.Count == 0) ticks.Add(new Tick(from.DayNumber, from.ToString("d MMM yyyy", CultureInfo.InvariantCulture)));
        return ticks.ToImmutable();
    }

    private static double Step(double rough)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var lead = rough / power;
        return power * (lead <= 1.000001 ? 1 : lead <= 2.000001 ? 2 : lead <= 5.000001 ? 5 : 10);
    }

    private static string Print(double value, int decimals) =>
        value.ToString("#,0." + new string('0', decimals), CultureInfo.InvariantCulture);
}
