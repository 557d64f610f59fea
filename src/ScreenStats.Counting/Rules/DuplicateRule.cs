namespace ScreenStats.Counting.Rules;

/// <summary>When two rows that may be the same run are a duplicate, a conflict, or only possibly the same.</summary>
/// <remarks>
/// Rows with a screen_id are compared with the first row of that screen_id only: equal in every mapped column it is a duplicate, else
/// it conflicts and is set aside, also where the person differs and also where it repeats an earlier conflicting row (set aside goes
/// before duplicate in the ledger). Rows without a screen_id are compared with the rows of the same person at the same time.
/// </remarks>
public static class DuplicateRule
{
    /// <summary>What a row is that means the same, in every mapped column, as an earlier one.</summary>
    /// <param name="hasScreenId">True where it has a screen_id.</param>
    /// <param name="hasTimeOfDay">True where it has a time of day.</param>
    /// <returns>
    /// True for a duplicate. False for a possible duplicate, which is counted and reported: without a screen_id and a time of day two
    /// runs of one day (or two control swabs) look the same.
    /// </returns>
    public static bool IsProof(bool hasScreenId, bool hasTimeOfDay) => hasScreenId || hasTimeOfDay;
}
