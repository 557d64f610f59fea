namespace ScreenStats.Counting.Cubes;

/// <summary>How it is known which negative runs a sampling stratum holds.</summary>
public enum StratumOrigin
{
    /// <summary>The audits name one stratum or none: it is the whole program.</summary>
    WholeProgram = 0,

    /// <summary>Every label is the name of a site, and is taken as that site.</summary>
    Site = 1,

    /// <summary>Every label is the name of a lot, and is taken as that lot.</summary>
    Lot = 2,

    /// <summary>The program file describes it by patterns.</summary>
    Patterns = 3,

    /// <summary>The program file states its number of negative runs.</summary>
    StatedNumber = 4,

    /// <summary>Nothing explains the labels: all audits together, without weights.</summary>
    Unexplained = 5,
}
