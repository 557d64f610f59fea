using System.Collections.Immutable;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Comparisons.Rows;

namespace ScreenStats.Evaluation.Comparisons;

/// <summary>Words for what is compared, by what, and what is adjusted for.</summary>
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

    /// <summary>One of what is compared, in a sentence.</summary>
    public static string One(string by) => by switch
    {
        "kit" => "device",
        "specimen" => "specimen type",
        _ => by,
    };

    /// <summary>Several of them.</summary>
    public static string Many(string by) => One(by) + "s";

    /// <summary>Where something happened: at a site, with a device.</summary>
    public static string At(string by) => by switch
    {
        "site" => "at",
        "region" => "in",
        _ => "with",
    };

    /// <summary>A measure at the beginning of a sentence.</summary>
    public static string Of(ComparisonMeasure measure) => measure switch
    {
        ComparisonMeasure.Positivity => "Positivity",
        ComparisonMeasure.InvalidRuns => "The share of inconclusive and invalid runs",
        _ => "The share of conclusive positives that were refuted",
    };

    /// <summary>The events of a measure.</summary>
    public static string Events(ComparisonMeasure measure) => measure switch
    {
        ComparisonMeasure.Positivity => "positives",
        ComparisonMeasure.InvalidRuns => "inconclusive and invalid runs",
        _ => "refuted positives",
    };

    /// <summary>What was adjusted for, in words: "periods and devices".</summary>
    public static string Adjusted(ImmutableArray<string> adjusted)
    {
        string[] words = [.. adjusted.Select(word => word switch { "period" => "period", "kit" => "device", "specimen" => "specimen type", _ => word })];
        return words.Length switch
        {
            0 => "",
            1 => words[0],
            _ => string.Join(", ", words[..^1]) + " and " + words[^1],
        };
    }
}
