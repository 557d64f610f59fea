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
}
