namespace ScreenStats.Evaluation.Model;

/// <summary>What a table cell holds.</summary>
public enum CellKind
{
    /// <summary>Nothing applies here (the level of the whole program, the period of the whole span).</summary>
    Empty = 0,

    /// <summary>A whole number.</summary>
    Count = 1,

    /// <summary>A finite number.</summary>
    Number = 2,

    /// <summary>A text.</summary>
    Text = 3,

    /// <summary>A calendar day.</summary>
    Date = 4,

    /// <summary>No value, for a stated reason.</summary>
    Undefined = 5,

    /// <summary>A value that is not shown, to protect people.</summary>
    Hidden = 6,
}
