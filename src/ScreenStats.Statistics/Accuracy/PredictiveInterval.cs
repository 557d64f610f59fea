namespace ScreenStats.Statistics.Accuracy;

/// <summary>How the interval of a predictive value is computed.</summary>
public enum PredictiveInterval
{
    /// <summary>Wald's on the logit scale: the default; never leaves [0, 1].</summary>
    Logit,

    /// <summary>Wald's by the delta method on the scale of the share, cut to [0, 1]: too short where the share is near 0 or 1.</summary>
    Wald,
}
