using ScreenStats.Evaluation.Comparisons.Rows;

namespace ScreenStats.Reporting.Pages.Comparisons;

/// <summary>Words for what is compared.</summary>
/// <param name="One">The singular.</param>
/// <param name="Many">The plural.</param>
/// <param name="NamesPeople">Whether the levels are people, whom the page does not name.</param>
internal sealed record ComparedWords(string One, string Many, bool NamesPeople = false)
{
    /// <summary>The plural, at the beginning of a heading.</summary>
    public string Title => Capital(Many);

    /// <summary>The singular, as a heading.</summary>
    public string Singular => Capital(One);

    /// <summary>What must be known before acting on it.</summary>
    public string Caution => NamesPeople
        ? "Operators are people: they are compared in the files only, for training, not for discipline. Whom they tested, and when, differs between them."
        : "What lies above or below needs looking into: that is no verdict on anybody, and within does not say that all is well.";

    /// <summary>The words of what is compared.</summary>
    public static ComparedWords Of(string by) => by switch
    {
        "kit" => new("device", "devices"),
        "specimen" => new("specimen type", "specimen types"),
        "region" => new("region", "regions"),
        "operator" => new("operator", "operators", NamesPeople: true),
        _ => new("site", "sites"),
    };

    /// <summary>By what they are compared.</summary>
    public static string Measure(ComparisonMeasure measure) => measure switch
    {
        ComparisonMeasure.InvalidRuns => "unusable runs",
        ComparisonMeasure.Refuted => "refuted positives",
        _ => "positivity",
    };

    /// <summary>What is counted.</summary>
    public static string Events(ComparisonMeasure measure) => measure switch
    {
        ComparisonMeasure.InvalidRuns => "Unusable",
        ComparisonMeasure.Refuted => "Refuted",
        _ => "Positive",
    };

    /// <summary>Of what it is counted.</summary>
    public static string Trials(ComparisonMeasure measure) => measure switch
    {
        ComparisonMeasure.InvalidRuns => "Runs",
        ComparisonMeasure.Refuted => "Confirmed or refuted",
        _ => "Valid tests",
    };

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
