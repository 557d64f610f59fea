using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>A control chart: its points with their limits, and what fired.</summary>
public sealed record ControlChartFinding
{
    /// <summary>What tells the chart from the others, such as <c>invalid-runs/share/week/site/North</c>.</summary>
    public required string Id { get; init; }

    /// <summary>What it watches.</summary>
    public required ChartMeasure Measure { get; init; }

    /// <summary>How.</summary>
    public required ChartKind Kind { get; init; }

    /// <summary>Of what part of the program: the whole, a site, a lot.</summary>
    public required Grouping By { get; init; }

    /// <summary>The part; empty for the whole program.</summary>
    public required string Level { get; init; }

    /// <summary>What its points are.</summary>
    public required PointKind PointsAre { get; init; }

    /// <summary>How its limits were made: exact, three-sigma, widened, moving-average, moving-average-widened, geometric or exponential.</summary>
    public required string Limits { get; init; }

    /// <summary>The method of its numbers by its name in the catalogue.</summary>
    public required string Method { get; init; }

    /// <summary>Why these limits.</summary>
    public required string Why { get; init; }

    /// <summary>The centre: a share, or the mean of tests or days between; null where undefined.</summary>
    public required double? Centre { get; init; }

    /// <summary>Why there is neither centre nor limits; null where there are.</summary>
    public required string? CentreUndefined { get; init; }

    /// <summary>What the centre is the rate of: own, these points; other-sites, the other sites that are not flagged; unflagged, those of the points that are not.</summary>
    public string CentreFrom { get; init; } = "own";

    /// <summary>The chance of points that vary as much if all had one rate; null where not looked at or not known.</summary>
    public double? DispersionP { get; init; }

    /// <summary>How many times the points vary from one to the next what chance alone makes them; null where not looked at or not known.</summary>
    public double? SigmaZ { get; init; }

    /// <summary>The rules in force, what they found and how often they fire by chance.</summary>
    public ImmutableArray<RuleFinding> Rules { get; init; } = [];

    /// <summary>Points from one false alarm to the next, on average, by all rules in force together; null where not computed.</summary>
    public double? RunLength { get; init; }

    /// <summary>Why there is no such number; null where there is one.</summary>
    public string? RunLengthUndefined { get; init; }

    /// <summary>The longest run of points on one side of their median; null where not looked at or undefined.</summary>
    public int? LongestRun { get; init; }

    /// <summary>The longest run that is no signal.</summary>
    public int? LongestRunLimit { get; init; }

    /// <summary>How often the line crosses the median.</summary>
    public int? Crossings { get; init; }

    /// <summary>The fewest crossings that are no signal.</summary>
    public int? CrossingsLimit { get; init; }

    /// <summary>The chance of a signal of runs or crossings where nothing is wrong.</summary>
    public double? RunsChance { get; init; }

    /// <summary>Points with a value.</summary>
    public int PointCount => Points.Length;

    /// <summary>Points above the upper limit.</summary>
    public int PointsAbove => Points.Count(point => point.Outside && point.Above);

    /// <summary>Points below the lower limit.</summary>
    public int PointsBelow => Points.Count(point => point.Outside && !point.Above);

    /// <summary>Points above the centre and inside the limits that complete a pattern which chance seldom makes.</summary>
    public int PatternsAbove => Points.Count(point => !point.Outside && point.Above && point.Signals.Length > 0);

    /// <summary>The same below the centre.</summary>
    public int PatternsBelow => Points.Count(point => !point.Outside && !point.Above && point.Signals.Length > 0);

    /// <summary>Points that are not complete yet.</summary>
    public int PointsIncomplete => Points.Count(point => point.Incomplete);

    /// <summary>Whether runs or crossings signal a shift or a drift.</summary>
    public bool RunsSignal => LongestRun > LongestRunLimit || Crossings < CrossingsLimit;

    /// <summary>The points at which a rule fired, in order; all points stand in the table of points.</summary>
    public ImmutableArray<ChartPointFinding> Signalling => [.. Points.Where(point => point.Signals.Length > 0)];

    /// <summary>The points in order.</summary>
    [JsonIgnore]
    public required ImmutableArray<ChartPointFinding> Points { get; init; }

    /// <summary>The chart in words.</summary>
    [JsonIgnore]
    public Sentence Sentence => ControlChartSentences.Of(this);

    /// <summary>Whether its points are in order of time, so that patterns of them mean something.</summary>
    [JsonIgnore]
    public bool InOrder => PointsAre is not (PointKind.Site or PointKind.Lot or PointKind.Operator);
}
