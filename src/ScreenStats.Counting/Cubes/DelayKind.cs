namespace ScreenStats.Counting.Cubes;

/// <summary>Which waiting time is counted.</summary>
public enum DelayKind
{
    /// <summary>From a followed-up run to the specimen that settled it.</summary>
    RunToSpecimen = 0,

    /// <summary>From the collection of a confirmatory specimen to its report.</summary>
    SpecimenToReport = 1,
}
