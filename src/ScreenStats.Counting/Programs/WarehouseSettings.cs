namespace ScreenStats.Counting.Programs;

/// <summary>A database that holds the screening and the confirmatory export, in place of files.</summary>
public sealed record WarehouseSettings
{
    /// <summary>Seconds that one query may take where the program file states nothing.</summary>
    public const int DefaultTimeoutSeconds = 3600;

    /// <summary>
    /// Where it is: <c>postgresql://host:port/database</c>, or <c>duckdb:file</c> with a file relative to the program's folder. Never
    /// holds a user or a password.
    /// </summary>
    public string Url { get; init; } = "";

    /// <summary>The view of screening runs, <c>schema.view</c>.</summary>
    public string Screening { get; init; } = "";

    /// <summary>The view of confirmatory specimens, <c>schema.view</c>; null where there is none.</summary>
    public string? Confirmatory { get; init; }

    /// <summary>Seconds after which a query is given up, from 1 to 86,400.</summary>
    public int TimeoutSeconds { get; init; } = DefaultTimeoutSeconds;
}
