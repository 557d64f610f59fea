namespace ScreenStats.Counting.Programs;

/// <summary>How limits of control charts of shares are made, where the points vary no more than chance explains.</summary>
public enum ControlLimits
{
    /// <summary>By the binomial distribution: the default, right also where few events are expected.</summary>
    Exact = 0,

    /// <summary>Three standard errors either side of the centre, as in older handbooks.</summary>
    ThreeSigma = 1,
}
