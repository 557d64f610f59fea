namespace ScreenStats.Statistics.Monitoring.Runs;

/// <summary>The four classical rules by which points of a chart signal.</summary>
/// <remarks>Each fires at the point that completes it, and again at each later point that does; points without a value are passed over.</remarks>
public enum RunRule
{
    /// <summary>A point outside the limits.</summary>
    OutsideLimits,

    /// <summary>Two of three points in a row more than two standard errors from the centre, on one side.</summary>
    TwoOfThreeFar,

    /// <summary>Four of five points in a row more than one standard error from the centre, on one side.</summary>
    FourOfFiveOff,

    /// <summary>Eight points in a row on one side of the centre.</summary>
    EightOnOneSide,
}
