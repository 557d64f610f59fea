namespace ScreenStats.Statistics.Proportions;

/// <summary>What was done to an end of an interval that its formula alone does not give (see <see cref="IntervalNotes.Describe"/>).</summary>
public enum IntervalNote
{
    /// <summary>The formula's lower end lies below 0 and was moved there.</summary>
    ClippedAtZero,

    /// <summary>The formula's upper end lies above 1 and was moved there.</summary>
    ClippedAtOne,

    /// <summary>No success was seen, and the lower end is 0 by convention instead of the quantile.</summary>
    ZeroByConvention,

    /// <summary>No failure was seen, and the upper end is 1 by convention instead of the quantile.</summary>
    OneByConvention,

    /// <summary>At so low a confidence the formula's interval lies beside the share observed, and its nearer end was moved there.</summary>
    StretchedToEstimate,
}
