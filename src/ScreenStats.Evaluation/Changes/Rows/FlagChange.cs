namespace ScreenStats.Evaluation.Changes.Rows;

/// <summary>What became of a lot or site between two evaluations.</summary>
public enum FlagChange
{
    /// <summary>Flagged now, and not before, or not for this.</summary>
    NewFlag = 0,

    /// <summary>Flagged before and now.</summary>
    StillFlagged = 1,

    /// <summary>Flagged before, in use since, and not flagged now.</summary>
    ClosedFlag = 2,

    /// <summary>Flagged before, and not in the later data at all.</summary>
    FlaggedAndGone = 3,

    /// <summary>In the later data only, and not flagged.</summary>
    New = 4,

    /// <summary>In the earlier data only, and not flagged there.</summary>
    Gone = 5,

    /// <summary>Flagged before for two reasons, and now for one of them only.</summary>
    PartlyClosed = 6,
}
