using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Model;

/// <summary>An axis of a chart.</summary>
/// <param name="Label">What it measures; empty where the ticks say it.</param>
/// <param name="From">Its lower end.</param>
/// <param name="To">Its upper end.</param>
/// <param name="Ticks">Labelled places, within the ends.</param>
/// <param name="Scale">How positions are laid out.</param>
/// <param name="Lines">Whether lines are drawn across the chart at the ticks.</param>
internal sealed record Axis(
    string Label, double From, double To, ImmutableArray<Tick> Ticks, AxisScale Scale = AxisScale.Linear, bool Lines = true)
{
    /// <summary>Where a position is drawn.</summary>
    public double Place(double position) => Scale == AxisScale.Logarithmic ? Math.Log10(position) : position;
}
