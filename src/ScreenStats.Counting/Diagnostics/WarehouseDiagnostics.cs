using System.Collections.Immutable;

namespace ScreenStats.Counting.Diagnostics;

/// <summary>What is found where a program is counted in a database.</summary>
public static class WarehouseDiagnostics
{
    /// <summary>The optional assembly is not there.</summary>
    public const string NotInstalled = "warehouse-not-installed";

    /// <summary>The database cannot be reached, or refuses.</summary>
    public const string Unreachable = "warehouse-unreachable";

    /// <summary>The connection broke, or a shard stopped.</summary>
    public const string Interrupted = "warehouse-interrupted";

    /// <summary>A query took too long.</summary>
    public const string TimedOut = "warehouse-timeout";

    /// <summary>A view is not as agreed.</summary>
    public const string WrongView = "warehouse-view";

    /// <summary>Local dates and times of the view disagree.</summary>
    public const string LocalDates = "warehouse-local-dates";

    /// <summary>Buckets do not hold whole people.</summary>
    public const string WrongBuckets = "warehouse-buckets";

    /// <summary>The shards do not group by themselves.</summary>
    public const string NotPushed = "warehouse-not-pushed";

    /// <summary>Every code with its severity, meaning and advice.</summary>
    public static ImmutableArray<DiagnosticDescription> All { get; } =
    [
        new(NotInstalled, Severity.Error, "The program file names a warehouse, but the optional assembly that reads one is not there.", "Build with -p:Warehouse=true, or add the package ScreenStats.Warehouse."),
        new(Unreachable, Severity.Error, "The database of the warehouse cannot be reached, does not let you in, or its file cannot be opened.", "Check the url in the program file, and PGUSER, PGPASSWORD or PGPASSFILE, and PGSSLMODE in the environment."),
        new(Interrupted, Severity.Error, "The database, or a shard behind it, stopped or refused in the middle of a query. Nothing was written.", "See that all servers run, and run the same command again."),
        new(TimedOut, Severity.Error, "A query took longer than the program file allows. Nothing was written.", "State a larger timeoutSeconds under warehouse, or run it when the server is idle."),
        new(WrongView, Severity.Error, "A view of the warehouse, or a column of it, is missing or has another type than agreed.", "Correct the view; its columns and their types stand in the README of ScreenStats.Warehouse."),
        new(LocalDates, Severity.Error, "Dates in collected_on are not the local dates of collected_at in the program's time zone.", "Correct the view, or timeZone in the program file."),
        new(WrongBuckets, Severity.Error, "The column bucket is NULL somewhere, or a person has two buckets.", "Derive the bucket from the person alone."),
        new(NotPushed, Severity.Warning, "A sharded server does not let its shards group by themselves, so that rows move in place of counts. The counts are right.", "Partition by bucket, ANALYZE on both sides, and look at the plan with EXPLAIN VERBOSE."),
    ];
}
