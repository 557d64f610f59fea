namespace ScreenStats.Counting.Programs;

/// <summary>The exports of a program.</summary>
public sealed record ExportsSettings
{
    /// <summary>Screening runs. Required.</summary>
    public ExportSettings Screening { get; init; } = new();

    /// <summary>Confirmatory specimens.</summary>
    public ExportSettings Confirmatory { get; init; } = new();

    /// <summary>Runs of control swabs in a file of their own.</summary>
    public ExportSettings Controls { get; init; } = new();

    /// <summary>Eligible people.</summary>
    public ExportSettings Headcount { get; init; } = new();

    /// <summary>What each site is part of.</summary>
    public ExportSettings Sites { get; init; } = new();
}
