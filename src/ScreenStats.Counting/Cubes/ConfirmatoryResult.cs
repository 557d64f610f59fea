namespace ScreenStats.Counting.Cubes;

/// <summary>What the laboratory reported for a confirmatory specimen.</summary>
public enum ConfirmatoryResult
{
    /// <summary>Conclusive, negative.</summary>
    Negative = 0,

    /// <summary>Conclusive, positive.</summary>
    Positive = 1,

    /// <summary>Tested without a conclusion.</summary>
    Indeterminate = 2,

    /// <summary>Not tested: the specimen was unfit.</summary>
    Rejected = 3,
}
