namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>What is taken of how many infections are brought in, and how many spread inside.</summary>
public enum CadenceBasis
{
    /// <summary>The figure does not depend on it.</summary>
    Either = 0,

    /// <summary>As the program file states it.</summary>
    AsStated = 1,

    /// <summary>All are brought in: as many come whatever the option. One bound where nothing is stated.</summary>
    AllBroughtIn = 2,

    /// <summary>All spread inside: under the screening of the data each case causes one more. The other bound.</summary>
    AllInside = 3,
}
