namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>Where an assumption comes from.</summary>
public enum CadenceOrigin
{
    /// <summary>The program file states it.</summary>
    Stated = 0,

    /// <summary>It is taken from the data of the program.</summary>
    Data = 1,

    /// <summary>Neither; what is done without it stands beside it.</summary>
    NotKnown = 2,
}
