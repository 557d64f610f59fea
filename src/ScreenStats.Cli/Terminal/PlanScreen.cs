using ScreenStats.Cli.Results;

namespace ScreenStats.Cli.Terminal;

/// <summary>Shows the answers of <c>plan</c>: the number, what is achieved with it, and what one fewer would give.</summary>
internal static class PlanScreen
{
    public static void Write(WidthPlanResult plan, Screen screen)
    {
        Title(screen, plan.Tests, "tests");
        if (plan.Tests.Value is not null)
        {
            screen.Line($"A proportion of {Show.Number(plan.Proportion)} then has the Wilson interval {Show.Number(plan.Lower)} to {Show.Number(plan.Upper)},");
            screen.Line($"{Show.Number(plan.Achieved)} wide; {Show.Number(plan.Width)} was asked. With one test fewer: {Show.Number(plan.WidthWithOneFewer)}.");
        }

        screen.Line();
        screen.Line($"Confidence {Show.Confidence(plan.Confidence)}, two-sided; design effect {Show.Number(plan.DesignEffect)}. If more or fewer are found than expected, the interval is wider or narrower.");
        screen.Caution();
    }

    public static void Write(ZeroEventsPlanResult plan, Screen screen)
    {
        Title(screen, plan.Tests, "tests, none positive");
        if (plan.Tests.Value is not null)
        {
            screen.Line($"A rate of {Show.Number(plan.Rate)} or more is then ruled out with confidence {Show.Number(plan.Achieved)}; {Show.Number(plan.Confidence)} was asked.");
            screen.Line($"One-sided upper limit {Show.Number(plan.UpperLimit)}. With one test fewer the confidence is {Show.Number(plan.ConfidenceWithOneFewer)}.");
        }

        screen.Line();
        screen.Line($"Exact (Clopper-Pearson), one-sided; design effect {Show.Number(plan.DesignEffect)}. One positive test, and it is not ruled out.");
        screen.Line("The rate is that of positive tests: what the test misses it does not rule out.");
        screen.Caution();
    }

    public static void Write(AuditPlanResult plan, Screen screen)
    {
        Title(screen, plan.Fewest.ConfirmatoryTests, "confirmatory tests");
        screen.Line($"{Show.Count(plan.Screens)} screens are expected to give {Show.Count(plan.ExpectedPositives)} positive and {Show.Count(plan.ExpectedNegatives)} negative ones.");
        screen.Line();
        screen.Table(
            [new("sample"), new("positives", true), new("negatives", true), new("in all", true), new("missed among them", true), new("lower", true), new("upper", true), new("width", true)],
            [Row("every positive verified", plan.AllPositives), Row("fewest in all", plan.Fewest)]);
        screen.Line();
        screen.Line($"Confidence {Show.Confidence(plan.Confidence)}, logit limits of the corrected sensitivity (Begg-Greenes) at the expected counts.");
        screen.Line("Negatives must be drawn at random, never because of symptoms. With fewer than five missed expected, the interval is rough.");
        screen.Caution();
    }

    public static void Write(LotPlanResult plan, Screen screen)
    {
        Title(screen, plan.Runs, "valid tests with the lot");
        if (plan.Runs.Value is not null)
        {
            screen.Line($"A lot with {Show.Number(plan.ExpectedRate + plan.Excess)} refuted positives per test among {Show.Count(plan.Lots)} lots is then flagged with power {Show.Number(plan.Achieved)}; {Show.Number(plan.Power)} was asked.");
            screen.Line($"With one run fewer: {Show.Number(plan.PowerWithOneFewer)}. The power stays reached as far as {Whole(plan.CheckedTo)} runs (each computed).");
            screen.Line($"Where the other lots have {Whole(plan.RefutedInOtherLots)} refuted positives, {Whole(plan.FlaggedFrom)} flag the lot.");
        }

        screen.Line();
        screen.Line($"Flagged as in the evaluation: exact one-sided tail, Holm over the lots, below {Show.Number(plan.Threshold)}. Exact power can dip as runs are added,");
        screen.Line("so a smaller number may reach it and lose it again. Every positive is taken as verified, and runs as independent.");
        screen.Caution();
    }

    private static void Title(Screen screen, Figure answer, string of)
    {
        screen.Title(answer.Value is null ? "No answer" : $"{Whole(answer)} {of}");
        if (answer.Reason is { } reason) screen.Line("undefined: " + reason);
    }

    private static string[] Row(string name, AuditSampleResult sample) =>
    [
        name, Whole(sample.VerifiedPositives), Whole(sample.AuditedNegatives), Whole(sample.ConfirmatoryTests), Show.Rounded(sample.ExpectedMissed, "#,0.0"),
        Show.Number(sample.Lower), Show.Number(sample.Upper), Show.Number(sample.Achieved),
    ];

    private static string Whole(Figure figure) => Show.Rounded(figure, "#,0");
}
