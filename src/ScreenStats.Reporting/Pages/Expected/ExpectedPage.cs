using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Expected;

/// <summary>Stated accuracy against what was seen.</summary>
internal static class ExpectedPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "expected", "What was to be expected of the devices", findings.Expected,
        "A stated accuracy comes from other people than those screened here, often with symptoms. A prevalence corrected by a device's own accuracy cannot judge that device.",
        "Refuted positives per valid test, with bounds for those without a conclusive result, against 1 - stated specificity: compatible, not compatible, or cannot tell, by a fixed rule on both intervals. " +
        "Expected predictive values are Bayes' theorem at each prevalence; corrected prevalence is by W. J. Rogan and B. Gladen, 1978, American Journal of Epidemiology 107:71.")
    {
        Charts = ExpectedFigures.Of(findings),
        Tables = 
        [
            new TableView(findings.Expected.Table, "Stated specificity against refuted positives",
            [
                "device", "stated_false_positive_rate", new("stated_lower", "Limits of it", "stated_upper"), "tests", "refuted", "without_conclusion", "estimate",
                ViewColumn.Limits, "bound_upper", "outcome", ViewColumn.Remark,
            ]),
            new TableView(findings.Expected.Table, "Prevalence behind the positivity, by each device's stated accuracy",
                ["device", "tests", "positives", "stated_specificity", "corrected_prevalence", new("corrected_lower", "Limits", "corrected_upper")]),
            TableViews.Whole(findings.Expected.CurveTable) with { Folded = true },
        ],
        Caution = "What is to be expected of many people says nothing of one: whoever tests positive needs a confirmatory test, however low the value is at this prevalence.",
    };
}
