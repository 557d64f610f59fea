namespace ScreenStats.Statistics.Comparison;

/// <summary>How the interval of a difference, ratio or odds ratio is computed.</summary>
public enum ContrastMethod
{
    /// <summary>Newcombe's hybrid score interval of a difference: both Wilson intervals, squared and added.</summary>
    Newcombe,

    /// <summary>The same from Wilson intervals with continuity correction.</summary>
    NewcombeContinuity,

    /// <summary>Miettinen and Nurminen's score interval of a difference or ratio, with the factor N / (N - 1).</summary>
    MiettinenNurminen,

    /// <summary>Katz's interval of a ratio on the logarithm.</summary>
    Katz,

    /// <summary>Koopman's score interval of a ratio.</summary>
    Koopman,

    /// <summary>Woolf's interval of an odds ratio on the logarithm.</summary>
    Woolf,

    /// <summary>The exact interval of an odds ratio, given both margins of the table.</summary>
    ConditionalExact,

    /// <summary>Newcombe's score interval of a difference within pairs.</summary>
    NewcombePaired,
}
