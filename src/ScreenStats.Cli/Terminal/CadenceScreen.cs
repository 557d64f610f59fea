using System.Globalization;
using ScreenStats.Cli.Commands.Cadence;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Results.Cadence;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;

namespace ScreenStats.Cli.Terminal;

/// <summary>The answer of <c>cadence</c> for people: tables that fit into 80 columns.</summary>
internal static class CadenceScreen
{
    public static void Render(CadenceAsked asked, CadenceResult result, Screen screen)
    {
        screen.Title("How often to screen");
        Known(asked, result, screen);
        Taken(result, screen);
        var labels = asked.Ways.Select(Label).ToList();
        var heading = asked.Ways.All(way => way.IsRegular) ? "every, days" : "screened";
        void Table(string title, string[] headings, Func<CadenceItem, string[]> cells)
        {
            screen.Line();
            screen.Line(title);
            screen.Table([new(heading, true), .. headings.Select(one => new TableColumnPlan(one, true))], result.Options.Select((one, place) => (string[])[labels[place], .. cells(one)]));
        }

        Table("For each infection:", ["found", "infectious days removed", "share of them"], one =>
            [Share(one.DetectionProbability), Limited(one.InfectiousDaysRemoved, "0.00"), Share(one.FractionRemoved)]);
        if (result.Course is not null)
        {
            Table("Of that, on average over all infections:", ["removed by screens alone", "by symptoms alone", "caught before passed on"], one => one.Course is { } course
                ? [Share(course.FractionRemovedByScreening), Share(course.FractionRemovedBySymptoms), Share(course.CaughtBeforeInfectious)]
                : ["undefined", "undefined", "undefined"]);
        }

        Table("For each person not infected, in a year:", ["screens", "false positives", "chance of any"], one =>
            [one.ScreensPerPersonYear.ToString("#,0.0", CultureInfo.InvariantCulture), one.FalsePositivesPerPersonYear.Limits is null ? Show.Number(one.FalsePositivesPerPersonYear) : Limited(one.FalsePositivesPerPersonYear, ""), Share(one.AnyFalsePositivePerYear)]);
        Table("For all people, in a year:", ["true positives", "false positives", "share that is true"], one =>
            [Limited(one.TruePositivesPerYear, "#,0.0"), Limited(one.FalsePositivesPerYear, "#,0.0"), Share(one.PositivePredictiveValue)]);
        if (result.Spread is { } spread) Spread(result, spread, labels, heading, screen);
        foreach (var reason in Reasons(result.Options)) screen.Text(reason);
        screen.Line();
        screen.Line(result.Course is not null ? Cautions.CadenceCourse : result.Limits is null ? Cautions.Cadence : Cautions.CadenceLimits);
        screen.Caution();
    }

    private static void Known(CadenceAsked asked, CadenceResult result, Screen screen)
    {
        switch (asked.Kind)
        {
            case CourseKind.ByDay:
                screen.Line($"Course by day ({asked.CourseFile}): detected from day {Show.Number(result.Window![0])} to {Show.Number(result.Window[1])}; specificity {Given(result.Specificity)}.");
                screen.Line($"Infectious from day {Show.Number(result.Infectious![0])} to day {Show.Number(result.Infectious[1])}; {Isolated(result)}.");
                break;
            case CourseKind.ViralLoad:
                Loads(result, screen);
                break;
            default:
                screen.Line($"Sensitivity {Given(result.Sensitivity)} from day {Show.Number(result.Window![0])} to day {Show.Number(result.Window[1])} after infection; specificity {Given(result.Specificity)}.");
                screen.Line($"Infectious {(result.Infectious is { } days ? $"from day {Show.Number(days[0])} to day {Show.Number(days[1])}" : "time not given")}; {Isolated(result)}.");
                break;
        }

        screen.Line($"New infections per person-day {Given(result.Incidence)}; people {(asked.People is { } people ? Show.Count(people) : "not given")}.");
        if (result.Course is not { } course) return;
        if (course.Symptoms is { } symptoms)
            screen.Line($"Symptoms in {Show.Number(symptoms.Share)} of infections, on day {Show.Number(symptoms.MedianDays)} (median); of these {Show.Number(symptoms.IsolationShare)} stay away.");
        screen.Line($"Misses repeat within a person: correlation {Show.Number(course.Misses)}; due screens taken: {Show.Number(course.Participation)}.");
    }

    private static string Isolated(CadenceResult result) => result.Course?.ConfirmationDelay is { } wait
        ? $"isolated on the confirmatory result, {Show.Number(Math.Max(wait, result.Delay))} days after a positive screen"
        : $"isolated {Show.Number(result.Delay)} days after a positive screen";

    private static void Loads(CadenceResult result, Screen screen)
    {
        var course = result.Course!;
        var loads = course.ViralLoads!;
        string Range(UniformRange range) => $"{Show.Number(range.Lower)} to {Show.Number(range.Upper)}";
        screen.Text($"Simulated courses of the viral load (logarithms to base 10): they start on day {Range(loads.StartDay)} at {Show.Number(loads.StartLevel)}, grow for {Show.Number(loads.ShortestGrowthDays)} days and a gamma "
            + $"variable (shape {Show.Number(loads.GrowthShape)}, scale {Show.Number(loads.GrowthScaleDays)} days), at most {Show.Number(loads.LongestGrowthDays)} days, to {Range(loads.PeakLevel)}, and fall to {Show.Number(loads.EndLevel)} within {Range(loads.ClearanceDays)} days of the peak, "
            + $"or of symptoms, which {Show.Number(loads.SymptomShare)} of people get {Range(loads.SymptomsAfterPeakDays)} days after it; then they stay away. Passed on above {Show.Number(loads.InfectiousLevel)} ({Function(loads.Infectiousness)}).");
        screen.Line($"A screen is positive from {Show.Number(loads.DetectionLimit)} on, with sensitivity {Given(result.Sensitivity)}; specificity {Given(result.Specificity)}.");
        screen.Line($"People are {Isolated(result)}. {Show.Count(course.SimulatedPeople!.Value)} people were simulated: standard errors up to {Show.Rounded(Figure.Of(course.LargestStandardError!.Value), "0.0000")}.");
    }

    private static string Function(InfectiousnessFunction function) => function switch
    {
        InfectiousnessFunction.Proportional => "in proportion to the load",
        InfectiousnessFunction.Step => "alike at any load above",
        _ => "as the logarithm above it",
    };

    private static void Taken(CadenceResult result, Screen screen)
    {
        if (result.Taken is not { } taken) return;
        screen.Line();
        screen.Line("Taken from the program, as the line leaves it out:");
        foreach (var one in taken)
            screen.Indented($"{one.Name} {Limited(one.Value, "G4")}: {one.From}");
        screen.Text("Sensitivity and incidence are drawn apart, though the incidence was worked out with the sensitivity. Figures of a program can rest on few people: who may see them is for its owner to say.");
    }

    private static void Spread(CadenceResult result, SpreadInputs spread, List<string> labels, string heading, Screen screen)
    {
        screen.Line();
        screen.Line($"Spread inside: one case infects {Show.Rounded(spread.Reproduction, "0.###")} without screening{(spread.Dispersion is { } k ? $" (dispersion {Show.Number(k)})" : "")}; share brought in {Show.Number(spread.BroughtIn)}{(spread.ImmunityDays is { } days ? $"; infected again after {Show.Number(days)} days at the earliest" : "")}:");
        var rows = new List<(string Label, SpreadItem? Item)> { ("none", result.WithoutScreening) };
        rows.AddRange(result.Options.Select((one, place) => (labels[place], one.Spread)));
        screen.Table(
            [new(heading, true), new("one infects", true), new("5 or more", true), new("dies out", true), new($"in {spread.Days} days", true), new("of them inside", true)],
            rows.Where(row => row.Item is not null).Select(row => new[]
            {
                row.Label, Brief(row.Item!.Reproduction, "0.00"), Brief(row.Item.FiveOrMore, "0.000"), Brief(row.Item.Extinction, "0.000"), Brief(row.Item.Infections, "#,0.0"), Brief(row.Item.InfectionsInside, "#,0.0"),
            }));
        screen.Text("5 or more: chance that one introduction leads to 5 or more cases, itself included. In days: expected infections. Limits of these figures stand in the JSON.");
        foreach (var reason in rows.SelectMany(row => row.Item is { } item ? new[] { item.Reproduction, item.FiveOrMore, item.Extinction, item.Infections, item.InfectionsInside } : [])
            .Select(figure => figure.Reason).OfType<string>().Distinct(StringComparer.Ordinal))
        {
            screen.Text($"Undefined in the spread: {reason}.");
        }
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

    private static string Label(CadenceWay way) => !way.Gaps.IsEmpty ? "as it was"
        : way.Weekdays.IsEmpty ? Show.Number(way.EveryDays)
        : string.Join(' ', way.Weekdays.Select(day => day.ToString()[..3]));

    private static string Given(Figure figure) => figure.Value is { } value
        ? figure.Limits is { } limits ? $"{Show.Number(value)} ({Between(limits)})" : Show.Number(value)
        : "not known";

    private static string Share(Figure figure) => Limited(figure, "0.0000");

    private static string Brief(Figure figure, string format) => Show.Rounded(figure, format);

    // With limits as many decimals as show two digits of how far they lie apart.
    private static string Limited(Figure figure, string format) => figure is { Value: { } value, Limits: { } limits }
        ? $"{Fixed(value, limits)} ({Between(limits)})"
        : Show.Rounded(figure, format);

    private static string Between(Interval limits) => $"{Fixed(limits.Lower, limits)} to {Fixed(limits.Upper, limits)}";

    private static string Fixed(double value, Interval limits)
    {
        var decimals = limits.Width > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(limits.Width)), 0, 9) : 6;
        return value.ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
