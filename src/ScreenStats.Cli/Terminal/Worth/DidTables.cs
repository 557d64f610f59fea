using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Cli.Terminal.Worth;

/// <summary>What screening cost and did, in tables of 80 columns.</summary>
internal static class DidTables
{
    private const string WithoutFlaggedLots = "-without-flagged-lots";

    public static void Render(Findings findings, WorthFindings worth, Screen screen)
    {
        if (findings.Span is { FirstDay: { } first, LastDay: { } last }) WorthScreen.Heading($"What it did, from {Day(first)} to {Day(last)}", screen);
        else WorthScreen.Heading("What it did", screen);
        var priced = worth.Costs.Where(item => item.Cost.Estimate is not null).ToList();
        if (priced.Count > 0)
        {
            screen.Table(
                [new("paid for"), new("each", true), new("number", true), new("cost", true), new("range", true)],
                priced.Select(item => new[]
                {
                    (item.IsPart ? "  " : "") + item.Name, WorthScreen.Number(item.UnitCost), Number(item.Units), WorthScreen.Number(item.Cost),
                    WorthScreen.Limits(item.Cost.Lower, item.Cost.Upper),
                }));
            screen.Line();
        }

        Figures(worth, "counted", "counted", screen);
        screen.Line();
        Figures(worth, "modelled", $"modelled as done, in {Show.Count(worth.Days)} days", screen);
        LeftOut(worth, screen);
        Margins(worth, screen);
    }

    private static void Figures(WorthFindings worth, string basis, string heading, Screen screen)
    {
        var figures = worth.Figures.Where(figure => figure.Basis == basis || figure.Basis == basis + WithoutFlaggedLots).ToList();
        var known = figures.Any(figure => figure.Figure.Estimate is not null || figure.Figure.Lower > 0);
        // One kind is said by the heading; several stand beside the figures.
        var kinds = figures.Select(figure => figure.LimitsOf).Where(kind => kind.Length > 0).Distinct().Count() > 1;
        if (known)
        {
            screen.Table(
                [new(heading), new("figure", true), new("limits", true), .. kinds ? new TableColumnPlan[] { new("limits of") } : []],
                figures.Select(figure => (string[])[Words(figure), Value(figure), Limits(figure), .. kinds ? new[] { figure.LimitsOf.Replace('-', ' ') } : []]));
        }

        foreach (var reason in Show.Reasons([.. figures.Select(figure => (Words(figure), figure.Figure.EstimateUndefined))]))
            screen.Text($"Undefined{(known ? "" : $" ({heading})")}: {WorthScreen.Alone(reason)}.");
    }

    // The counted total is not what the modelled figures divide.
    private static void LeftOut(WorthFindings worth, Screen screen)
    {
        string[] left = [.. worth.Costs.Any(item => item.Item == "audit-tests") ? new[] { "audits of negatives" } : [], .. worth.Figure("real-positives", "counted" + WithoutFlaggedLots) is null ? [] : new[] { "the false alarms of flagged lots" }];
        if (left.Length > 0 && worth.Figure("days-kept-out", "modelled")?.Figure.Estimate is not null) screen.Text($"Modelled figures leave out {string.Join(" and ", left)}; counted ones hold them.");
    }

    /// <summary>The average cost beside that of the last step of frequency: the first hides the second.</summary>
    private static void Margins(WorthFindings worth, Screen screen)
    {
        var steps = worth.Figures.Where(figure => figure.Measure is "average-cost" or "marginal-cost" && figure.Figure.Estimate is not null).GroupBy(figure => figure.Basis).ToList();
        if (steps.Count == 0) return;
        screen.Line();
        screen.Table(
            [new(steps[0].First().Unit.Replace("money spent", "spent", StringComparison.Ordinal)), new("average", true), new("of the last step", true)],
            steps.Select(step => new[] { step.Key, One(step, "average-cost"), One(step, "marginal-cost") }));
        screen.Text("Spent is gross: before what illness and outbreaks averted save. What to choose, below, takes that off.");
    }

    // Most are whole numbers of things.
    private static string Number(EstimateFinding units) => units.Estimate is { } value && value == Math.Floor(value) ? Rounding.Print(Cell.Number(value), Unit.Count) : WorthScreen.Number(units);

    private static string One(IEnumerable<WorthFigure> step, string measure) => step.FirstOrDefault(figure => figure.Measure == measure) is { } figure ? WorthScreen.Number(figure.Figure) : "";

    private static string Value(WorthFigure figure) => figure is { Unit: "share", Figure.Estimate: { } share } ? WorthScreen.Share(share) : WorthScreen.Number(figure.Figure);

    private static string Limits(WorthFigure figure) => figure is { Unit: "share", Figure: { Lower: { } lower, Upper: { } upper } } ? $"{WorthScreen.Share(lower)} to {WorthScreen.Share(upper)}" : WorthScreen.Limits(figure.Figure.Lower, figure.Figure.Upper);

    private static string Words(WorthFigure figure) => Words(figure.Measure) + (figure.Basis.EndsWith(WithoutFlaggedLots, StringComparison.Ordinal) ? ", other lots" : "");

    private static string Words(string measure) => measure switch
    {
        "total-cost" => "cost in total",
        "days-lost" => "working days lost to false alarms",
        "real-positives" => "real, of positives followed up",
        "days-kept-out" => "infectious days kept out",
        "days-kept-out-per-day-lost" => "infectious days kept out for each day lost",
        _ => measure.Replace('-', ' '),
    };

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
