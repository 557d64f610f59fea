namespace ScreenStats.Statistics.Cadence.Courses;

/// <summary>From which result on a person found by a screen isolates.</summary>
public enum IsolationTrigger
{
    /// <summary>From the result of the screen.</summary>
    Screen,

    /// <summary>From the result of the confirmatory test; until then the person goes on as before.</summary>
    Confirmation,
}
