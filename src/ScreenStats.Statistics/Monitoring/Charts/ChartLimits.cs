namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>How the limits of a chart are made.</summary>
public enum ChartLimits
{
    /// <summary>A stated chance of lying outside on either side, from the distribution itself.</summary>
    Probability,

    /// <summary>Three standard errors either side of the centre. Wrong by much where events are rare.</summary>
    ThreeSigma,

    /// <summary>Ryan and Schwertman's regression on the square root of the expected count.</summary>
    Regression,

    /// <summary>Three standard errors, widened by the variation between points beyond chance.</summary>
    Widened,

    /// <summary>A multiple of the standard error of an exponentially weighted moving average.</summary>
    MovingAverage,

    /// <summary>Three standard errors on a power of the values, brought back to their scale.</summary>
    Transformed,
}
