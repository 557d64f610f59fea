namespace ScreenStats.Evaluation.Trends;

/// <summary>How series are cut and what is too little to fit.</summary>
internal static class TrendRules
{
    /// <summary>More periods than this are taken together: days to weeks, weeks to months.</summary>
    public const int MostPeriods = 300;

    /// <summary>More weeks than this are fitted by month.</summary>
    public const int MostFitted = 300;

    /// <summary>Spans of fewer weeks than this are fitted by day.</summary>
    public const int FewestWeeks = 6;

    /// <summary>More sites than this have no growth of their own.</summary>
    public const int MostSites = 12;

    /// <summary>A weekday with less than this share of the runs is one on which nobody tests: a week is over without it.</summary>
    public const double IdleWeekday = 0.02;

    /// <summary>Fewer complete points with trials than this make no line.</summary>
    public const int FewestPoints = 4;

    /// <summary>A stretch of fewer days than this has no growth a week: it would be told of days that nobody saw.</summary>
    public const int FewestDays = 14;

    /// <summary>Fewer events, or trials without one, than this make no line.</summary>
    public const long FewestEvents = 10;

    /// <summary>With fewer points than this errors are not made robust to autocorrelation: they would come out too small.</summary>
    public const int FewestRobust = 10;

    /// <summary>With fewer points than this no change of slope is looked for.</summary>
    public const int FewestForChange = 10;

    /// <summary>With fewer events than this no change of slope is looked for.</summary>
    public const long FewestEventsForChange = 30;

    /// <summary>With fewer points than this one change of slope is looked for, with fewer than twice as many two.</summary>
    public const int FewestForChanges = 20;

    /// <summary>With more points than this a criterion, not permutations, says how many changes there are.</summary>
    public const int MostPermuted = 80;

    /// <summary>The chance, for each measure, of finding a change of slope where there is none. It is told in words only where a segment has a direction.</summary>
    public const double ChangeSignificance = 0.05;

    /// <summary>So many weeks at most are looked at on each side of a dated change.</summary>
    public const int MostAround = 26;

    /// <summary>A dated change needs so many complete weeks on each side.</summary>
    public const int FewestOnASide = 4;

    /// <summary>Fewer complete periods with trials than this have no smooth.</summary>
    public const int FewestSmoothed = 3;

    /// <summary>Up to so many periods the band of the smooth is averaged over how far the level may wander.</summary>
    public const int MostAveraged = 150;

    /// <summary>Segments of the spline at most: it is to follow slow changes.</summary>
    public const int MostSegments = 40;

    /// <summary>With more site-weeks with events than this, days of the week are compared within weeks.</summary>
    public const int MostSiteWeeks = 1_000;

    /// <summary>More periods than this, as a mistyped year makes of months, are not smoothed.</summary>
    public const int MostSmoothed = 600;
}
