namespace ScreenStats.Statistics.Trends.SlopeChanges;

/// <summary>How the number of changes of slope is chosen.</summary>
public enum SlopeChangeSelection
{
    /// <summary>Permutation tests of fewer against more changes, one after the other.</summary>
    Permutation,

    /// <summary>The least deviance / dispersion + (2 + 2 changes) ln(periods): a change costs its slope and its place.</summary>
    InformationCriterion,

    /// <summary>The least deviance / dispersion + (2 + 3 changes) ln(periods): a place costs twice, since it may lie anywhere.</summary>
    StrictInformationCriterion,
}
