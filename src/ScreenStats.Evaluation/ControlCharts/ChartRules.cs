namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>Which charts are worth making: where there is too little to see there is none, and their number has an end.</summary>
internal static class ChartRules
{
    /// <summary>Fewer periods with runs than this make no chart of a site.</summary>
    public const int FewestPeriods = 10;

    /// <summary>Fewer events than this make no chart of a site.</summary>
    public const long FewestEvents = 5;

    /// <summary>Fewer refuted positives than this make no chart of what lies between them.</summary>
    public const long FewestBetween = 8;

    /// <summary>More refuted positives in a period than this, on average, are not rare: a chart of shares shows them.</summary>
    public const double MostRare = 5;

    /// <summary>Fewer events in a period than this, on average, make no moving average: its limits are those of a normal distribution.</summary>
    public const double FewestForAverage = 1;

    /// <summary>More periods than this are taken together: days to weeks, weeks to months.</summary>
    public const int MostPeriods = 400;

    /// <summary>Of each kind and measure, this many sites or lots at most.</summary>
    public const int MostPlaces = 24;

    /// <summary>More sites, lots or operators than this are not compared in one chart; those with most trials are.</summary>
    public const int MostLevels = 400;

    /// <summary>With fewer sites, lots or operators side by side than this, one that lies far out would itself set limits that are widened by the variation.</summary>
    public const int FewestForWidened = 20;

    /// <summary>The weight of the newest point of a moving average, and the distance of its limits in standard errors.</summary>
    public const double AverageWeight = 0.2, AverageWidth = 2.962;

    /// <summary>Points between false alarms of such an average (Lucas and Saccucci 1990; tested against the computed length).</summary>
    public const double AverageRunLength = 500;
}
