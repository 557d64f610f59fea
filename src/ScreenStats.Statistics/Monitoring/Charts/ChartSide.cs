namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>On which side of its centre a point of a chart lies.</summary>
public enum ChartSide
{
    /// <summary>Neither above nor below; such a point ends a run.</summary>
    On,

    /// <summary>Below the centre.</summary>
    Below,

    /// <summary>Above the centre.</summary>
    Above,
}
