namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>What screening is paid for.</summary>
public enum WorthEffect
{
    /// <summary>Infections averted.</summary>
    InfectionsAverted = 0,

    /// <summary>Infectious days outside isolation, days off included, that are removed.</summary>
    InfectiousDaysRemoved = 1,
}
