using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Changes.Snapshots;

/// <summary>What of an evaluation can be compared with another one: read from its findings.json, or taken from findings.</summary>
public sealed record EvaluationSnapshot
{
    /// <summary>First day with a counted run; null where nothing was counted.</summary>
    public required DateOnly? FirstDay { get; init; }

    /// <summary>Last day with a counted run; null where nothing was counted.</summary>
    public required DateOnly? LastDay { get; init; }

    /// <summary>Counts from 1 to one less than this are hidden; 0 where none is.</summary>
    public required long SuppressBelow { get; init; }

    /// <summary>Shares of the whole program, its sites and its lots.</summary>
    public required ImmutableArray<SnapshotShare> Shares { get; init; }

    /// <summary>Figures that are no shares of counts, each with limits.</summary>
    public required ImmutableArray<SnapshotFigure> Figures { get; init; }

    /// <summary>Counts of the whole program by period, in order; empty where they are hidden.</summary>
    public required ImmutableArray<SnapshotPeriod> Periods { get; init; }

    /// <summary>Every lot and site with its flag.</summary>
    public required ImmutableArray<SnapshotLevel> Levels { get; init; }

    /// <summary>How it was made, as far as findings.json says.</summary>
    public required ImmutableArray<SnapshotText> Settings { get; init; }

    /// <summary>The answers to the readers' questions.</summary>
    public required ImmutableArray<SnapshotAnswer> Answers { get; init; }

    /// <summary>Names of the sites.</summary>
    public IEnumerable<string> Sites => Levels.Where(level => level.By == Grouping.Site).Select(level => level.Level);
}
