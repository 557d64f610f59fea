namespace ScreenStats.Statistics.Monitoring.Sequential.NormalSums;

/// <summary>Whether a cumulative sum watches for a rise only, or one sum each for a rise and a fall run side by side.</summary>
public enum CumulativeSumSides
{
    /// <summary>A rise only.</summary>
    One,

    /// <summary>A rise and a fall; the first of the two to signal counts.</summary>
    Two,
}
