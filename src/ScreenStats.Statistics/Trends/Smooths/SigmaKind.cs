namespace ScreenStats.Statistics.Trends.Smooths;

/// <summary>Where the standard deviation of the steps of a level comes from.</summary>
public enum SigmaKind
{
    /// <summary>It was given.</summary>
    Given,

    /// <summary>It is the most likely one.</summary>
    MostLikely,

    /// <summary>The most likely one is 0: the periods differ no more than chance makes them, so the smooth is one constant rate.</summary>
    Zero,

    /// <summary>The figures are averaged over it; the one stated is the most likely.</summary>
    Averaged,
}
