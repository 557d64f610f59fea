namespace ScreenStats.Counting.Cubes;

/// <summary>Who collected the screening specimen.</summary>
public enum CollectedBy
{
    /// <summary>The export does not say.</summary>
    NotRecorded = 0,

    /// <summary>Collected or watched by trained staff.</summary>
    Supervised = 1,

    /// <summary>Collected by the person alone.</summary>
    Self = 2,
}
