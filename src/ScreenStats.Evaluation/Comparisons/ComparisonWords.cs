using ScreenStats.Counting.Programs;

namespace ScreenStats.Evaluation.Comparisons;

/// <summary>Words for what is compared.</summary>
internal static class ComparisonWords
{
    /// <summary>The word in tables: <c>site</c>, <c>operator</c>, <c>kit</c>, <c>specimen</c> or <c>region</c>.</summary>
    public static string Of(CompareBy by) => by switch
    {
        CompareBy.Site => "site",
        CompareBy.Operator => "operator",
        CompareBy.Kit => "kit",
        CompareBy.Specimen => "specimen",
        CompareBy.Region => "region",
        _ => throw new ArgumentOutOfRangeException(nameof(by), by, "Not a member of the enumeration."),
    };
}
