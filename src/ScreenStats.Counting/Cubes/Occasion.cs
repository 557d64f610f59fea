namespace ScreenStats.Counting.Cubes;

/// <summary>Why a run was taken.</summary>
public enum Occasion
{
    /// <summary>As the program goes, or nothing is recorded.</summary>
    Routine = 0,

    /// <summary>Because of an outbreak at the site, by the export's own column or by the program file.</summary>
    Outbreak = 1,
}
