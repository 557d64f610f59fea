using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cautions;

/// <summary>The cautions that every report shows.</summary>
public static class StandardCautions
{
    /// <summary>All of them, in the order in which they are read.</summary>
    public static ImmutableArray<Caution> All { get; } =
    [
        Standard("not-a-diagnosis", "Screening is not diagnosis."),
        Standard("confirm-positives", "A positive or inconclusive screen needs a confirmatory test."),
        Standard("negatives-rule-nothing-out", "A negative screen does not rule out infection."),
        Standard(
            "local-rules",
            "How long to isolate, who must be told and what is recorded are set by local public-health and occupational-health rules and by licensed practitioners, not by this report."),
        Standard("operators-for-training", "Tables by operator are for training, not for discipline."),
        Standard("few-counts-are-marked", "Figures with few counts or with unverified positives are marked where they stand; read them with care."),
        Standard("refuted-is-not-false", "Refuted is the confirmatory test's word: a refuted positive need not have been false, nor a confirmed one true."),
    ];

    private static Caution Standard(string id, string text) => new(id, new Sentence(text), false);
}
