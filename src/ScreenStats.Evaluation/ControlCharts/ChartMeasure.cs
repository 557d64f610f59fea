namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>What a control chart watches.</summary>
public enum ChartMeasure
{
    /// <summary>Inconclusive and invalid runs among all runs.</summary>
    InvalidRuns = 0,

    /// <summary>Refuted positive runs among valid tests.</summary>
    Refuted = 1,
}
