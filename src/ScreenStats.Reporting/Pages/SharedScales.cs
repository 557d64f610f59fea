using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Pages;

/// <summary>Draws all pictures of one quantity to one scale, so that they can be compared; one that would be flattened, or cut, keeps its own and says so.</summary>
internal static class SharedScales
{
    /// <summary>A picture whose own scale ends below this share of the common one would be flat: it keeps its own.</summary>
    public const double Least = 1 / 3.0;

    /// <summary>The pages with their pictures to scale.</summary>
    /// <param name="groups">The pages.</param>
    /// <param name="kept">Which pictures the report has: what is left out decides nothing.</param>
    public static ImmutableArray<PageGroup> Of(ImmutableArray<PageGroup> groups, Func<Chart, bool> kept)
    {
        var tops = groups.SelectMany(group => group.Pages).SelectMany(page => page.Charts).Where(kept).Select(chart => chart.Scale).OfType<ChartScale>()
            .GroupBy(scale => scale.Quantity, StringComparer.Ordinal).Where(some => some.Count() > 1).ToDictionary(some => some.Key, some => Common([.. some.Select(scale => scale.Top)]), StringComparer.Ordinal);
        return
        [
            .. groups.Select(group => group with { Pages = [.. group.Pages.Select(page => page with { Charts = [.. page.Charts.Select(chart => kept(chart) ? ToScale(chart, tops) : chart)] })] }),
        ];
    }

    /// <summary>Where the common scale ends: so that most pictures can have it, and of such ends the highest.</summary>
    /// <param name="tops">Where the scale of each would end by itself.</param>
    public static double Common(ImmutableArray<double> tops) =>
        tops.OrderByDescending(top => tops.Count(other => Shares(other, top))).ThenByDescending(top => top).First();

    private static bool Shares(double top, double common) => top <= common && top >= Least * common;

    private static Chart ToScale(Chart chart, Dictionary<string, double> tops)
    {
        if (chart.Scale is not { } scale || !tops.TryGetValue(scale.Quantity, out var common)) return chart;
        if (Shares(scale.Top, common)) return scale.To(common) with { Scale = scale };
        return chart with
        {
            Caption = chart.Caption + new Sentence(
                "Its scale is its own: it ends near {0}, that of the other pictures of " + scale.Quantity + " near {1}.", OfThePage(scale.Top), OfThePage(common)),
        };
    }

    private static FigureReference OfThePage(double share) => new(Caption.OfThePage, Cell.Number(share), Unit.Proportion);
}
