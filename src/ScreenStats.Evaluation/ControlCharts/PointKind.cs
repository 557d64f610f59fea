namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>What each point of a control chart is.</summary>
public enum PointKind
{
    /// <summary>A day.</summary>
    Day = 0,

    /// <summary>An ISO week.</summary>
    Week = 1,

    /// <summary>A month.</summary>
    Month = 2,

    /// <summary>A site.</summary>
    Site = 3,

    /// <summary>A lot, in the order of first use.</summary>
    Lot = 4,

    /// <summary>An operator.</summary>
    Operator = 5,

    /// <summary>What lies between one refuted positive and the next.</summary>
    RefutedPositive = 6,
}
