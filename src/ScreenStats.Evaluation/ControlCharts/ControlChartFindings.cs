using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>Control charts of unusable runs and refuted positives.</summary>
public sealed record ControlChartFindings : IFinding
{
    internal ControlChartFindings(ImmutableArray<ControlChartFinding> charts, int placesWithFewRuns, int placesBeyondMost)
    {
        Charts = charts;
        PlacesWithFewRuns = placesWithFewRuns;
        PlacesBeyondMost = placesBeyondMost;
        Table = ControlChartTables.Charts(charts);
        PointTable = ControlChartTables.Points(charts);
        Sentences = ControlChartSentences.Of(this);
    }

    /// <summary>The charts: the whole program first, then sites, then lots.</summary>
    public ImmutableArray<ControlChartFinding> Charts { get; }

    /// <summary>Sites that have runs, but too few for a chart of their own, added up over what is watched.</summary>
    public int PlacesWithFewRuns { get; }

    /// <summary>Sites and lots that could have a chart and have none, because others vary more and the number is limited.</summary>
    public int PlacesBeyondMost { get; }

    /// <summary>Points of the charts of shares.</summary>
    public int SharePoints => Shares.Sum(chart => chart.PointCount);

    /// <summary>Points of the charts of shares outside their limits.</summary>
    public int SharePointsOutside => Shares.Sum(chart => chart.PointsAbove + chart.PointsBelow);

    /// <summary>How many of them would lie outside, on average, by chance alone; null where no chart has limits.</summary>
    public double? SharePointsOutsideByChance => Shares.Any()
        ? Shares.Sum(chart => chart.Rules.Where(rule => rule.RunLength > 0).Take(1).Sum(rule => chart.PointCount / rule.RunLength!.Value))
        : null;

    /// <summary>The table of charts.</summary>
    [JsonIgnore]
    public Table<ControlChartFinding> Table { get; }

    /// <summary>The table of points.</summary>
    [JsonIgnore]
    public Table<ChartPointRow> PointTable { get; }

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table, PointTable];

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<Sentence> Sentences { get; }

    internal IEnumerable<ControlChartFinding> Shares => Charts.Where(chart => chart.Kind == ChartKind.Share && chart.Centre is not null);
}
