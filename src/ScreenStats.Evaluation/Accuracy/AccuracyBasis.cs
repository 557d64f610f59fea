namespace ScreenStats.Evaluation.Accuracy;

/// <summary>What a figure of accuracy stands on.</summary>
public enum AccuracyBasis
{
    /// <summary>Nothing: no negative run was audited with a conclusive result.</summary>
    None = 0,

    /// <summary>Audits drawn from all negative runs at one rate.</summary>
    OneDraw = 1,

    /// <summary>Audits weighted by how many negative runs each of theirs stands for in its sampling stratum.</summary>
    Reweighted = 2,

    /// <summary>Audits of strata that nothing explains, taken as one draw: biased where strata were sampled at different rates.</summary>
    Unweighted = 3,

    /// <summary>Too few audited or none missed: the figure is at least so much.</summary>
    OneSidedLimit = 4,

    /// <summary>The counts alone: every run that was not verified may have been infected or not.</summary>
    NoAssumption = 5,
}
