namespace ScreenStats.Evaluation.Trends.Changes;

/// <summary>How a change of a trend came to be looked at.</summary>
public enum TrendChangeKind
{
    /// <summary>A change of slope found in the counts.</summary>
    Found = 0,

    /// <summary>A change that the program file dates.</summary>
    Dated = 1,

    /// <summary>The same day at the sites that the change did not touch.</summary>
    DatedElsewhere = 2,
}
