namespace ScreenStats.Statistics.Accuracy;

/// <summary>How a sensitivity, a specificity or a prevalence was stated.</summary>
public enum AccuracyKind
{
    /// <summary>As counts, for instance 61 of 97.</summary>
    Counts,

    /// <summary>As a value with an interval.</summary>
    Interval,

    /// <summary>As a bare value, taken as exact.</summary>
    Exact,

    /// <summary>Not stated but computed from other statements, for instance for two screens in a row.</summary>
    Combined,
}
