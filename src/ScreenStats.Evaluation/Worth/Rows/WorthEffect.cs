namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>What screening is paid for.</summary>
public enum WorthEffect
{
    /// <summary>Infections averted.</summary>
    InfectionsAverted = 0,

    /// <summary>Infectious days at work removed.</summary>
    InfectiousDaysRemoved = 1,
}
