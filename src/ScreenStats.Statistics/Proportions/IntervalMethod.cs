namespace ScreenStats.Statistics.Proportions;

/// <summary>How the interval of one proportion is computed.</summary>
public enum IntervalMethod
{
    /// <summary>Wilson's score interval: the default; coverage near the nominal on average, for small counts too.</summary>
    Wilson,

    /// <summary>Wilson's score interval with continuity correction: wider, near Clopper-Pearson.</summary>
    WilsonContinuity,

    /// <summary>Clopper and Pearson's exact interval: covers at least as often as it says.</summary>
    ClopperPearson,

    /// <summary>Agresti and Coull's: Wald after adding z squared trials, half of them successes; clipped to [0, 1].</summary>
    AgrestiCoull,

    /// <summary>Jeffreys': quantiles of Beta(x + 1/2, n - x + 1/2); 0 at no success and 1 at no failure.</summary>
    Jeffreys,

    /// <summary>Mid-P exact: half the probability of what was seen counts as tail.</summary>
    MidP,
}
