namespace ScreenStats.Counting.Cubes;

/// <summary>Ways of carrying out a run that are accepted and reported.</summary>
public enum ConductKind
{
    /// <summary>The lot had expired on the day of the run.</summary>
    ExpiredLot = 0,

    /// <summary>Read before or after the kit's reading window.</summary>
    ReadOutsideWindow = 1,

    /// <summary>More runs from one kit (the same site, lot and kit) than it holds: each run beyond that number.</summary>
    BeyondKitContents = 2,

    /// <summary>A run on a person within the isolation period after a confirmatory positive.</summary>
    WithinIsolation = 3,

    /// <summary>A run of a device with a reading window whose reading time is not recorded: whether it was read in time cannot be told.</summary>
    ReadingNotRecorded = 4,
}
