using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.StandOuts;

/// <summary>What stands out among lots and sites, ranked.</summary>
internal static class StandOutPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "stand-outs", "What stands out, and what does not", findings.StandOuts,
        "Why a lot or site stands out. A fault that touches all of them alike stands out nowhere.",
        "Joins the flags, which compare with all lots or sites of the program, and the exact tests within the same sites, lots and weeks; nothing is judged anew. " +
        "Ranked: what may miss infected people first, then material excesses, then flags that are not material within their weeks; within these invalid runs last, and by the adjusted p.")
    {
        Caution = "Standing out asks for a look. It does not say that positives were false, nor that anybody may return to work.",
        Tables =
        [
            new TableView(
                findings.StandOuts.Table.Only(row => row.StandsOut || row.Verdict == Evaluation.StandOuts.StandOutVerdict.NotMaterial), "Lots and sites that stand out",
                [ViewColumn.Part, "rank", "measure", "verdict", "observed", "expected", "ratio", new ViewColumn("lower", "Limits", "upper"), "p_holm"]),
        ],
    };
}
