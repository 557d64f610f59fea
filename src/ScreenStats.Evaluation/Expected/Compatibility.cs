namespace ScreenStats.Evaluation.Expected;

/// <summary>Whether the stated specificity of a device and the refuted positives agree.</summary>
public enum Compatibility
{
    /// <summary>There is nothing to compare: no stated specificity, or no valid test of the device.</summary>
    NotJudged = 0,

    /// <summary>The data agree with the stated specificity.</summary>
    Compatible = 1,

    /// <summary>The data do not agree with the stated specificity.</summary>
    NotCompatible = 2,

    /// <summary>Too much is unknown to say.</summary>
    CannotTell = 3,
}
