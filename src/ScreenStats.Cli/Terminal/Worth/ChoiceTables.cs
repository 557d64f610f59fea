using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Cli.Terminal.Worth;

/// <summary>What to choose and when that turns, in tables of 80 columns.</summary>
internal static class ChoiceTables
{
    public static void Render(WorthFindings worth, Screen screen)
    {
        Options(worth, screen);
        FollowUp(worth, screen);
        Turns(worth, screen);
        LadderTable.Render(worth, screen);
    }

    /// <summary>Each way of screening with the follow-up that is worth most with it.</summary>
    private static void Options(WorthFindings worth, Screen screen)
    {
        var ways = worth.Options.GroupBy(option => option.Option).Select(way => way.MaxBy(option => option.NetBenefit.Estimate ?? -option.Cost.Estimate ?? double.NegativeInfinity)!).ToList();
        if (ways.Count == 0) return;
        WorthScreen.Heading($"What to choose, over {Show.Count(worth.Days)} days for {Show.Count(worth.People)} {(worth.People == 1 ? "person" : "people")}", screen);
        (string Heading, Func<WorthOption, string> Cell)[] columns =
        [
            ("net\ncost", option => WorthScreen.Number(option.Cost)), (worth.Effect == WorthEffect.InfectionsAverted ? "averted" : "days\nremoved", option => WorthScreen.Number(option.Effect)),
            ("one more,\nnet", Ratio), ("net\nbenefit", option => WorthScreen.Number(option.NetBenefit)), ("best in", option => option.BestShare is { } share ? WorthScreen.Share(share) : ""),
        ];
        // What is known of no way but of no screening, where it is 0, is no column.
        var known = columns.Where(column => ways.Any(option => !option.IsNone && column.Cell(option) is not ("" or WorthScreen.Undefined))).ToList();
        if (known.Count > 0)
        {
            screen.Table(
                [new("option"), new("confirmed"), .. known.Select(column => new TableColumnPlan(column.Heading, true))],
                ways.Select(option => (string[])[Name(option), After(option.Confirmation), .. known.Select(column => column.Cell(option))]));
            screen.Text("Against no screening; net: less what illness and outbreaks averted save, where these are priced. Each way stands with the follow-up of positives that is worth most with it."
                + (known.Any(column => column.Cell == columns[2].Cell) ? " One more: what it costs against the next cheaper option on the frontier. Best in: the share of draws in which nothing is worth more." : "")
                + (worth.AsDone is null ? "" : " What was done, site by site, is no option to choose: it stands beside them."));
        }

        foreach (var option in ways.Where(option => option.DominatedBy.Length > 0))
            screen.Indented($"{Name(option)}: {(option.Standing == WorthStanding.Dominated ? "dominated by" : "extendedly dominated, by a mix of")} {option.DominatedBy}");
        foreach (var reason in Reasons(ways)) screen.Text($"Undefined: {WorthScreen.Alone(reason)}.");
    }

    /// <summary>What follows a positive, for the way that the verdict is of.</summary>
    private static void FollowUp(WorthFindings worth, Screen screen)
    {
        if (worth.Judged is not { } judged) return;
        var ways = worth.Options.Where(option => option.Option == judged.Option && option.Cost.Estimate is not null).ToList();
        if (ways.Count < 2) return;
        screen.Line();
        screen.Line($"For {judged.Option}, by whether positives are confirmed:");
        screen.Table(
            [new("confirmed"), new("net cost", true), new("limits", true), new("net benefit", true), new("limits", true)],
            ways.Select(option => new[]
            {
                After(option.Confirmation), WorthScreen.Number(option.Cost), WorthScreen.Limits(option.Cost.Lower, option.Cost.Upper),
                WorthScreen.Number(option.NetBenefit), WorthScreen.Limits(option.NetBenefit.Lower, option.NetBenefit.Upper),
            }));
    }

    private static void Turns(WorthFindings worth, Screen screen)
    {
        if (worth.Turns.IsEmpty) return;
        WorthScreen.Heading(worth.Judged is { } judged ? $"When it turns, for {judged.Option}" : "When it turns", screen);
        screen.Table(
            [new("figure"), new("as it is", true), new("limits", true), new("turns at", true), new("pays")],
            worth.Turns.Select(turn => new[]
            {
                Words(turn), turn.Present is { } present ? WorthScreen.Number(present) : WorthScreen.Undefined, WorthScreen.Limits(turn.Lower, turn.Upper),
                turn.BreakEven is { } value ? WorthScreen.Number(value) : "nowhere", Pays(turn),
            }));
        if (worth.Turn("half-false-prevalence") is not null) screen.Text("Below the last of these, whatever it costs, most alarms are false"
            + (worth.Figure("real-positives", "counted-without-flagged-lots") is null ? "." : "; it leaves out flagged lots, whose false alarms stand in the share of real positives above."));
        foreach (var reason in Show.Reasons([.. worth.Turns.Select(turn => (Words(turn), turn.BreakEvenUndefined))])) screen.Text($"Turns nowhere: {WorthScreen.Alone(reason)}.");
    }

    // Short enough for a narrow table; what is new to it has a name of its own.
    private static string Words(WorthTurn turn) => turn.Figure switch
    {
        "weekly-incidence" => "infected in a week, per 1,000",
        "prevalence" => "infected among those screened",
        "specificity" => "specificity of a screen",
        "cost-of-screen" => "cost of a screen",
        "participation" => "share of due screens taken",
        "half-false-prevalence" => "infected, half of alarms false",
        _ => turn.Name,
    };

    private static string Name(WorthOption option) => option.IsAsDone ? "what was done" : option.Option;

    private static string After(WorthConfirmation confirmation) => confirmation switch
    {
        WorthConfirmation.Confirmed => "yes",
        WorthConfirmation.Pooled => "in pools",
        WorthConfirmation.Without => "no",
        _ => "",
    };

    // What is dominated has no ratio: no value of an effect makes it the one to choose.
    private static string Ratio(WorthOption option) => option.Standing switch
    {
        WorthStanding.Dominated => "dominated",
        WorthStanding.ExtendedlyDominated => "by a mix",
        WorthStanding.SameAsEarlier => "the same",
        _ => option.IncrementalRatio.Estimate is { } ratio ? WorthScreen.Number(ratio) : "",
    };

    private static string Pays(WorthTurn turn) => turn.Pays switch
    {
        WorthPays.Above => "above",
        WorthPays.Below => "below",
        WorthPays.Always => "always",
        WorthPays.Never => "never",
        WorthPays.Between => turn.OtherBreakEven > turn.BreakEven ? $"up to {WorthScreen.Number(turn.OtherBreakEven.Value)}" : turn.OtherBreakEven is { } from ? $"from {WorthScreen.Number(from)}" : "between",
        _ => "not known",
    };

    private static IEnumerable<string> Reasons(List<WorthOption> ways) => Show.Reasons([.. ways.SelectMany(option => new (string, string?)[]
    {
        ("cost", option.Cost.EstimateUndefined), ("effect", option.Effect.EstimateUndefined), ("net benefit", option.NetBenefit.EstimateUndefined),
    })]);
}
