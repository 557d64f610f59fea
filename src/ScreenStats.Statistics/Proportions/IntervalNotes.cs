namespace ScreenStats.Statistics.Proportions;

/// <summary>The words for each <see cref="IntervalNote"/>.</summary>
public static class IntervalNotes
{
    /// <summary>Says in plain words what was done to an end.</summary>
    /// <param name="note">The note.</param>
    /// <returns>A clause without capital or full stop.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public static string Describe(this IntervalNote note) => note switch
    {
        IntervalNote.ClippedAtZero => "the formula's lower end lies below 0 and is clipped to 0",
        IntervalNote.ClippedAtOne => "the formula's upper end lies above 1 and is clipped to 1",
        IntervalNote.ZeroByConvention => "no success was seen, so the lower end is 0 by convention, not the quantile",
        IntervalNote.OneByConvention => "no failure was seen, so the upper end is 1 by convention, not the quantile",
        IntervalNote.StretchedToEstimate => "at so low a confidence the formula's interval lies beside the share observed, and its nearer end is moved there",
        _ => throw new ArgumentOutOfRangeException(nameof(note), note, "Not a note this library knows."),
    };
}
