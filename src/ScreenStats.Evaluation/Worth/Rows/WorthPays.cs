namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>On which side of a break-even the option judged pays.</summary>
public enum WorthPays
{
    /// <summary>Not known.</summary>
    NotKnown = 0,

    /// <summary>Above the break-even.</summary>
    Above = 1,

    /// <summary>Below it.</summary>
    Below = 2,

    /// <summary>At every value that the figure can take.</summary>
    Always = 3,

    /// <summary>At none.</summary>
    Never = 4,

    /// <summary>Between it and the other break-even.</summary>
    Between = 5,
}
