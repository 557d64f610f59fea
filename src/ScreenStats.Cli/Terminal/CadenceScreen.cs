using System.Globalization;
using ScreenStats.Cli.Results;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Cli.Terminal;

/// <summary>The answer of <c>cadence</c> for people: tables that fit into 80 columns.</summary>
internal static class CadenceScreen
{
    public static void Render(CadenceQuestion asked, CadenceResult result, Screen screen)
    {
        screen.Title("How often to screen");
        screen.Line($"Sensitivity {Show.Number(result.Sensitivity)} from day {Show.Number(asked.DetectableFrom)} to day {Show.Number(asked.DetectableTo)} after infection; specificity {Given(result.Specificity)}.");
        screen.Line($"Infectious {(asked.Infectious is { } days ? $"from day {Show.Number(days.Lower)} to day {Show.Number(days.Upper)}" : "time not given")}; isolated {Show.Number(asked.DelayDays)} days after a positive screen.");
        screen.Line($"New infections per person-day {Given(result.Incidence)}; people {(asked.People is { } people ? Show.Count(people) : "not given")}.");
        screen.Line();
        screen.Line("For each infection:");
        screen.Table(
            [new("every, days", true), new("found", true), new("infectious days removed", true), new("share of them", true)],
            result.Options.Select(one => new[]
            {
                Show.Number(one.EveryDays), Share(one.DetectionProbability), Show.Rounded(one.InfectiousDaysRemoved, "0.00"), Share(one.FractionRemoved),
            }));
        screen.Line();
        screen.Line("For each person not infected, in a year:");
        screen.Table(
            [new("every, days", true), new("screens", true), new("false positives", true), new("chance of any", true)],
            result.Options.Select(one => new[]
            {
                Show.Number(one.EveryDays), one.ScreensPerPersonYear.ToString("#,0.0", CultureInfo.InvariantCulture), Show.Number(one.FalsePositivesPerPersonYear),
                Share(one.AnyFalsePositivePerYear),
            }));
        screen.Line();
        screen.Line("For all people, in a year:");
        screen.Table(
            [new("every, days", true), new("true positives", true), new("false positives", true), new("share that is true", true)],
            result.Options.Select(one => new[]
            {
                Show.Number(one.EveryDays), Show.Rounded(one.TruePositivesPerYear, "#,0.0"), Show.Rounded(one.FalsePositivesPerYear, "#,0.0"),
                Share(one.PositivePredictiveValue),
            }));
        foreach (var reason in Reasons(result.Options)) screen.Text(reason);
        screen.Line();
        screen.Line(Cautions.Cadence);
        screen.Caution();
    }

    private static IEnumerable<string> Reasons(IReadOnlyList<CadenceItem> options) => options
        .SelectMany(one => new (string Name, Figure Figure)[]
        {
            ("found", one.DetectionProbability), ("infectious days removed", one.InfectiousDaysRemoved), ("share of them", one.FractionRemoved),
            ("false positives of a person", one.FalsePositivesPerPersonYear), ("chance of any", one.AnyFalsePositivePerYear),
            ("true positives", one.TruePositivesPerYear), ("false positives", one.FalsePositivesPerYear), ("share that is true", one.PositivePredictiveValue),
        })
        .Where(one => one.Figure.Reason is not null)
        .GroupBy(one => one.Figure.Reason!, StringComparer.Ordinal)
        .Select(group => $"Undefined: {string.Join(", ", group.Select(one => one.Name).Distinct())}: {group.Key}.");

    private static string Given(Figure figure) => figure.Value is { } value ? Show.Number(value) : "not known";

    private static string Share(Figure figure) => Show.Rounded(figure, "0.0000");
}
