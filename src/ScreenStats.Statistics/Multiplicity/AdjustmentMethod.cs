namespace ScreenStats.Statistics.Multiplicity;

/// <summary>How p-values are adjusted for the number of comparisons made at once.</summary>
public enum AdjustmentMethod
{
    /// <summary>Each p times their number. Chance of any false finding, whatever the dependence.</summary>
    Bonferroni,

    /// <summary>Holm's step-down. Chance of any false finding, whatever the dependence; never worse than Bonferroni.</summary>
    Holm,

    /// <summary>Hochberg's step-up. Chance of any false finding, for independent or positively dependent comparisons.</summary>
    Hochberg,

    /// <summary>Hommel's. As Hochberg's, never worse.</summary>
    Hommel,

    /// <summary>Benjamini and Hochberg's step-up. Expected share of false findings, for independent or positively dependent comparisons.</summary>
    BenjaminiHochberg,

    /// <summary>Benjamini and Yekutieli's. Expected share of false findings, whatever the dependence.</summary>
    BenjaminiYekutieli,
}
