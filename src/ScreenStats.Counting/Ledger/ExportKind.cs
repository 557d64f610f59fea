namespace ScreenStats.Counting.Ledger;

/// <summary>The kinds of exports a program has.</summary>
public enum ExportKind
{
    /// <summary>Screening runs.</summary>
    Screening = 0,

    /// <summary>Confirmatory specimens.</summary>
    Confirmatory = 1,

    /// <summary>Runs of control swabs kept in a file of their own.</summary>
    Controls = 2,

    /// <summary>People eligible by site and week.</summary>
    Headcount = 3,

    /// <summary>The region of each site.</summary>
    Sites = 4,
}
