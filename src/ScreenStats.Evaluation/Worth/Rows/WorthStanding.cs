namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>Where an option stands among the others, at the central figures.</summary>
public enum WorthStanding
{
    /// <summary>Its cost or its effect is not known.</summary>
    NotKnown = 0,

    /// <summary>On the frontier: for some value of an effect nothing does better.</summary>
    OnFrontier = 1,

    /// <summary>Another option costs no more and does no less, and is better in one of the two.</summary>
    Dominated = 2,

    /// <summary>A mix of two others does as much for less.</summary>
    ExtendedlyDominated = 3,

    /// <summary>An earlier option has the same cost and effect.</summary>
    SameAsEarlier = 4,

    /// <summary>What was done, and no option to choose: none of the options does better for less.</summary>
    NoOption = 5,
}
