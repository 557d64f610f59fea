namespace ScreenStats.Counting.Cubes;

/// <summary>Where the screening swab was taken.</summary>
public enum Specimen
{
    /// <summary>The export does not say.</summary>
    NotRecorded = 0,

    /// <summary>Anterior or mid-turbinate nasal swab.</summary>
    Nasal = 1,

    /// <summary>Nasopharyngeal swab.</summary>
    Nasopharyngeal = 2,

    /// <summary>Throat swab.</summary>
    Throat = 3,

    /// <summary>Saliva.</summary>
    Saliva = 4,

    /// <summary>Another specimen.</summary>
    Other = 5,
}
