namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>How a control chart looks at what it watches.</summary>
public enum ChartKind
{
    /// <summary>The share of each point, as it is.</summary>
    Share = 0,

    /// <summary>An exponentially weighted moving average of the shares: sees small lasting shifts.</summary>
    MovingAverage = 1,

    /// <summary>Valid tests between one refuted positive and the next.</summary>
    TestsBetween = 2,

    /// <summary>Days between one refuted positive and the next.</summary>
    DaysBetween = 3,
}
