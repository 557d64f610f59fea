using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Trends.Changes;
using ScreenStats.Evaluation.Trends.Growth;
using ScreenStats.Evaluation.Trends.Weekdays;
using ScreenStats.Evaluation.Trends.Words;

namespace ScreenStats.Evaluation.Trends;

/// <summary>Positivity, unusable runs and predictive value over time.</summary>
public sealed record TrendFindings : IFinding
{
    /// <summary>One entry for each series: what it stands on and how it was fitted.</summary>
    public required ImmutableArray<TrendSeriesFinding> Series { get; init; }

    /// <summary>Every series by period.</summary>
    public required ImmutableArray<TrendRow> Points { get; init; }

    /// <summary>How fast it grew, over which stretch.</summary>
    public required ImmutableArray<GrowthRow> Growth { get; init; }

    /// <summary>Changes of slope that were found, and changes that the program file dates.</summary>
    public required ImmutableArray<TrendChangeRow> Changes { get; init; }

    /// <summary>The days of the week.</summary>
    public required ImmutableArray<WeekdayRow> Weekdays { get; init; }

    /// <summary>What the external rate is a rate of: positivity, or cases-per-100000-per-week; null where the program file gives none.</summary>
    public required string? CommunityMeasure { get; init; }

    /// <summary>Where the external rate is from, in the program file's words; null where it gives none.</summary>
    public required string? CommunitySource { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [PointTable, GrowthTable, ChangeTable, WeekdayTable];

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<Sentence> Sentences => TrendSentences.Of(this);

    /// <summary>The series as a table.</summary>
    [JsonIgnore]
    public Table<TrendRow> PointTable => TrendTables.Points(this);

    /// <summary>Growth as a table.</summary>
    [JsonIgnore]
    public Table<GrowthRow> GrowthTable => TrendTables.Growth(Growth);

    /// <summary>Changes as a table.</summary>
    [JsonIgnore]
    public Table<TrendChangeRow> ChangeTable => TrendTables.Changes(Changes);

    /// <summary>The days of the week as a table.</summary>
    [JsonIgnore]
    public Table<WeekdayRow> WeekdayTable => TrendTables.Weekdays(Weekdays);

    /// <summary>The series that leads for a measure; null where nothing of it was counted.</summary>
    /// <param name="measure">What is followed.</param>
    /// <returns>The series, or null.</returns>
    public TrendSeriesFinding? Leading(TrendMeasure measure) => Series.FirstOrDefault(series => series.Measure == measure && series.Leads);
}
