using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Reporting.Charts;

namespace ScreenStats.Reporting.Pages.ControlCharts;

/// <summary>Pictures of the control charts that say most.</summary>
internal static class ControlChartFigures
{
    /// <summary>The pictures.</summary>
    public static ImmutableArray<Chart> Of(Findings findings) => [];
}
