namespace ScreenStats.Counting.Cubes;

/// <summary>Why a confirmatory specimen was taken.</summary>
public enum SpecimenReason
{
    /// <summary>The export does not say.</summary>
    NotRecorded = 0,

    /// <summary>To follow up a screen.</summary>
    FollowUp = 1,

    /// <summary>To verify a sample of negative runs.</summary>
    Audit = 2,

    /// <summary>Another reason.</summary>
    Other = 3,
}
