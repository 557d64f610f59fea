using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Cli.Terminal.Worth;

/// <summary>Which option gains most for how much infection, beside where each begins to pay at all.</summary>
internal static class LadderTable
{
    public static void Render(WorthFindings worth, Screen screen)
    {
        if (worth.Ladder.Length < 2) return;
        WorthScreen.Heading("The option by how much infection there is", screen);
        screen.Table(
            [new("gains most"), new("from", true), new("up to", true), new("now")],
            worth.Ladder.Select(rung => new[] { Word(rung.Option, rung.Confirmation), WorthScreen.Number(rung.From), rung.To is { } to ? WorthScreen.Number(to) : "", rung.IsPresent ? "here" : "" }));
        screen.Text("Infected in a week of 1,000 people; all else at the central figures. Where one option no longer pays the one above it in this table still may: step down before you stop.");
        if (worth.Periods.IsEmpty) return;
        screen.Line();
        screen.Table(
            [new("days of the data"), new("cases", true), new("per 1,000 a week", true), new("limits", true), new("gains most there")],
            worth.Periods.Select(row => new[]
            {
                row.Period == "all-days" ? $"all {Show.Count(row.Days)}" : $"the last {Show.Count(row.Days)}", Show.Count(row.Cases), WorthScreen.Number(row.WeeklyIncidence),
                WorthScreen.Limits(row.WeeklyIncidence.Lower, row.WeeklyIncidence.Upper), Word(row.Option, row.Confirmation),
            }));
    }

    // The usual confirmatory test goes without saying.
    private static string Word(string option, WorthConfirmation confirmation) => confirmation switch
    {
        WorthConfirmation.NotNeeded => "no screening",
        WorthConfirmation.Pooled => option + ", in pools",
        WorthConfirmation.Without => option + ", unconfirmed",
        _ => option,
    };
}
