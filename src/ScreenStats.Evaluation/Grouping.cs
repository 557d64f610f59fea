namespace ScreenStats.Evaluation;

/// <summary>By what a rate is broken down.</summary>
public enum Grouping
{
    /// <summary>Not at all: the whole program over the whole span.</summary>
    Program = 0,

    /// <summary>By site.</summary>
    Site = 1,

    /// <summary>By lot; runs without a lot are a level of their own.</summary>
    Lot = 2,

    /// <summary>By operator; for training, not for discipline.</summary>
    Operator = 3,

    /// <summary>By where the swab was taken.</summary>
    Specimen = 4,

    /// <summary>By who collected the swab.</summary>
    Collection = 5,

    /// <summary>The whole program by reporting period.</summary>
    Period = 6,

    /// <summary>Each site by reporting period.</summary>
    SiteAndPeriod = 7,

    /// <summary>By kit (box).</summary>
    Kit = 8,
}
