using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Flagging;

/// <summary>The columns that the tables of lots and of sites share.</summary>
internal static class JudgedColumns
{
    public static ImmutableArray<Column<TRow>> For<TRow>()
        where TRow : IJudgedLevel =>
    [
        new("runs", "Runs", Unit.Count, "All counted runs.", row => Cell.Count(row.Runs)),
        new("inconclusive", "Inconclusive", Unit.Count, "Runs with a test line and no control line.", row => Cell.Count(row.Inconclusive)),
        new("invalid", "Invalid", Unit.Count, "Runs with neither line.", row => Cell.Count(row.Invalid)),
        new("invalid_p", "p, unusable", Unit.PValue, "Exact one-sided chance of at least its inconclusive and invalid runs.", row => P(row.InvalidTest, row.InvalidP)) { Method = Methods.MethodNames.Hypergeometric },
        new("invalid_p_holm", "p adjusted, unusable", Unit.PValue, "The same adjusted for the number compared (Holm).", row => P(row.InvalidTest, row.InvalidPHolm)) { Method = Methods.MethodNames.StepDown },
        new("tests", "Valid tests", Unit.Count, "Negative and positive runs.", row => Cell.Count(row.Tests)),
        new("positives", "Positive", Unit.Count, "Positive runs.", row => Cell.Count(row.Positives)),
        new("confirmed", "Confirmed", Unit.Count, "Positive runs that the confirmatory test confirmed.", row => Cell.Count(row.Confirmed)),
        new("refuted", "Refuted", Unit.Count, "Positive runs that the confirmatory test refuted: its word, not the truth.", row => Cell.Count(row.Refuted)),
        new("refuted_p", "p, refuted", Unit.PValue, "Exact one-sided chance of at least its refuted positives.", row => P(row.RefutedTest, row.RefutedP)) { Method = Methods.MethodNames.Hypergeometric },
        new("refuted_p_holm", "p adjusted, refuted", Unit.PValue, "The same adjusted for the number compared (Holm).", row => P(row.RefutedTest, row.RefutedPHolm)) { Method = Methods.MethodNames.StepDown },
        new("flag", "Flag", Unit.Text, "What needs looking into: empty, refuted, invalid or refuted-and-invalid.", row => row.Flag == Flag.None ? Cell.Empty : Cell.Text(LevelNames.Of(row.Flag))),
        new("invalid_judged", "Unusable, judged", Unit.Count, "Inconclusive and invalid runs in the pool that was judged.", row => Judged(row.InvalidTest, row.InvalidTest.Events)),
        new("invalid_judged_runs", "Runs, judged", Unit.Count, "Runs in the pool that was judged.", row => Judged(row.InvalidTest, row.InvalidTest.Trials)),
        new("invalid_round", "Round, unusable", Unit.Count, "Round of the step-down that the p-values are of.", row => Judged(row.InvalidTest, row.InvalidTest.Round)),
        new("invalid_p_widened", "p widened, unusable", Unit.PValue, Widened, row => P(row.InvalidTest, row.InvalidTest.PWidened)) { Method = Methods.MethodNames.StepDown },
        new("refuted_judged", "Refuted, judged", Unit.Count, "Refuted positives in the pool that was judged.", row => Judged(row.RefutedTest, row.RefutedTest.Events)),
        new("refuted_judged_tests", "Valid tests, judged", Unit.Count, "Valid tests in the pool that was judged.", row => Judged(row.RefutedTest, row.RefutedTest.Trials)),
        new("refuted_p_widened", "p widened, refuted", Unit.PValue, Widened, row => P(row.RefutedTest, row.RefutedTest.PWidened)) { Method = Methods.MethodNames.StepDown },
        new("refuted_round", "Round, refuted", Unit.Count, "Round of the step-down that the p-values are of.", row => Judged(row.RefutedTest, row.RefutedTest.Round)),
    ];

    private const string Widened = "The same chance with lots compared within their sites, and with runs of one person not taken as independent; a flag needs both.";

    private static Cell P(FlagTest test, double? p) => Cell.NumberOr(p, test.PUndefined ?? "not tested");

    private static Cell Judged(FlagTest test, long value) => test.PUndefined is null ? Cell.Count(value) : Cell.Empty;
}
