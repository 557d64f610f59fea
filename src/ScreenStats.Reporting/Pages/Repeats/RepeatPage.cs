using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Repeats;

/// <summary>Whether unusable runs were repeated.</summary>
internal static class RepeatPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "repeats", "Whether unusable runs were repeated", findings.Repeats,
        "A repeat at another place or under another pseudonym is not seen.",
        "A repeat is due after an inconclusive or invalid run, and done where the same person has a later run on the same day. Without times of day, a person-day with " +
        "an unusable and a usable run counts as one repeat done.")
    {
        Tables = [.. findings.Repeats.Tables.Select(TableViews.Whole)],
        Caution = "Where an unusable run was not repeated somebody went to work untested: call them back as local rules say.",
    };
}
