using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Lists;

namespace ScreenStats.Cli.Terminal.Worth;

/// <summary>How sure it is, what knowing more would be worth, the rule of frequency, and the lists of the field.</summary>
internal static class SureLines
{
    // The first few fit on a screen; all of them stand in the report and the JSON.
    private const int Most = 5;

    public static void Render(WorthFindings worth, Screen screen)
    {
        Sure(worth, screen);
        Rule(worth, screen);
        Lists(worth, screen);
    }

    private static void Sure(WorthFindings worth, Screen screen)
    {
        if (worth.PaysShare is null && worth.Swings.IsEmpty && worth.Information.IsEmpty) return;
        WorthScreen.Heading($"How sure that is ({Show.Count(worth.Draws)} draws, seed {worth.Seed})", screen);
        if (worth.PaysShare is { } share && worth.Judged is { } judged) screen.Text($"{judged.Option} gains more than it costs in {WorthScreen.Share(share)} of the draws.");
        // A figure that does not matter has a small value from the draws, no larger than their error.
        var worthKnowing = worth.Information.Where(one => one.StandardError is not { } error || one.Value > 2 * error).Take(Most).ToList();
        if (worthKnowing.Count > 0)
        {
            screen.Table(
                [new("worth knowing before choosing"), new("at most", true), new("standard error", true)],
                worthKnowing.Select(one => new[] { one.Sample is { } sample ? $"{one.Name} ({Show.Count(sample)}{(one.SampleCost is { } cost ? $", costing {WorthScreen.Number(cost)}" : "")})" : one.Name, WorthScreen.Number(one.Value), one.StandardError is { } error ? WorthScreen.Number(error) : "" }));
            screen.Line();
        }

        if (worth.Swings.IsEmpty) return;
        screen.Table(
            [new("matters most"), new("from", true), new("to", true), new("net benefit", true), new("to", true)],
            worth.Swings.Take(Most).Select(swing => new[] { swing.Name, WorthScreen.Number(swing.AtLower), WorthScreen.Number(swing.AtUpper), WorthScreen.Number(swing.Low), WorthScreen.Number(swing.High) }));
    }

    private static void Rule(WorthFindings worth, Screen screen)
    {
        if (worth.Rules.IsEmpty) return;
        WorthScreen.Heading("What the rule of frequency would have done", screen);
        var shares = worth.Rules.GroupBy(period => period.InForce).OrderBy(group => group.Average(period => period.ScreensPerPerson / period.Days)).Select(group => $"{group.Key} in {Show.Count(group.Count())}");
        screen.Text($"Of {Show.Count(worth.Rules.Length)} periods: {string.Join(", ", shares)}; {WorthScreen.Number(worth.Rules.Sum(period => period.ScreensPerPerson))} screens of each person in all. "
            + $"In {Show.Count(worth.Rules.Count(period => !period.IsSure))} the counts were too small to be sure of the next step.");
        if (worth.RuleLots is not { } lots) return;
        var which = lots.Lots == 1 ? "a flagged lot" : "flagged lots";
        screen.Text(lots.MoreOften == 0 ? $"The runs of {which} change none of these periods to more screens."
            : $"In {Show.Count(lots.MoreOften)} of these periods people would have been screened more often because of {which}{(lots.LessOften == 0 ? "" : $", and in {Show.Count(lots.LessOften)} less often")}: without {(lots.Lots == 1 ? "its" : "their")} runs {WorthScreen.Number(worth.Rules.Sum(period => period.WithoutFlaggedLots?.ScreensPerPerson ?? 0))} screens of each person in all.");
    }

    private static void Lists(WorthFindings worth, Screen screen)
    {
        if (worth.Criteria.IsEmpty) return;
        WorthScreen.Heading("The lists of the field", screen);
        One("Wilson and Jungner's criteria for screening", "wilson-jungner");
        One("CHEERS 2022, reporting of economic evaluations", "cheers-2022");

        void One(string name, string list)
        {
            List<WorthCriterion> items = [.. worth.Criteria.Where(item => item.List == list)];
            if (items.Count == 0) return;
            // What is met or stated needs no list of its items; what is open does.
            var answers = items.GroupBy(item => item.Answer).OrderBy(group => group.First().Item).Select(group =>
                $"{group.Count()} {group.Key}{(group.Key is "met" or "stated" ? "" : $" ({(group.Count() == 1 ? "item" : "items")} {string.Join(", ", group.Select(item => item.Item))})")}");
            screen.Text($"{name}, {items.Count} items: {string.Join("; ", answers)}.");
        }
    }
}
