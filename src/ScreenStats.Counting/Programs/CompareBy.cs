namespace ScreenStats.Counting.Programs;

/// <summary>By what runs are grouped where they are compared side by side.</summary>
public enum CompareBy
{
    /// <summary>By site: the default.</summary>
    Site = 0,

    /// <summary>By operator.</summary>
    Operator = 1,

    /// <summary>By the screening device that the program file names for the lot.</summary>
    Kit = 2,

    /// <summary>By where the swab was taken.</summary>
    Specimen = 3,

    /// <summary>By the region that the export of sites names.</summary>
    Region = 4,
}
