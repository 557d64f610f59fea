namespace ScreenStats.Statistics.Economics.Frontier;

/// <summary>Where an option stands among others.</summary>
public enum OptionStanding
{
    /// <summary>On the frontier: for some value of an effect nothing does better.</summary>
    OnFrontier,

    /// <summary>Another option costs no more and does no less, and is better in one of the two.</summary>
    StrictlyDominated,

    /// <summary>A mix of two others does as much for less: its next step costs more per effect than the step after.</summary>
    ExtendedlyDominated,

    /// <summary>An earlier option has the same cost and the same effect, and stands for both.</summary>
    SameAsEarlier,
}
