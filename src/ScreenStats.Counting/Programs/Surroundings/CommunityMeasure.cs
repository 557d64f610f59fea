namespace ScreenStats.Counting.Programs.Surroundings;

/// <summary>What a community rate is a rate of.</summary>
public enum CommunityMeasure
{
    /// <summary>Share of positive tests among the tests of the community, in [0, 1].</summary>
    Positivity = 0,

    /// <summary>Cases in 100,000 people in a week.</summary>
    CasesPer100000PerWeek = 1,
}
