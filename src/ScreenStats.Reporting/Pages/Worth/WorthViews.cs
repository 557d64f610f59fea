using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Reporting.Pages.Cadence;

namespace ScreenStats.Reporting.Pages.Worth;

/// <summary>The tables of what screening cost and did and of what to choose, as the page shows them. A column that nothing is known of is left out.</summary>
internal static class WorthViews
{
    private const string OtherLots = "counted-without-flagged-lots";

    /// <summary>What was paid for, item by item; without prices only how many.</summary>
    public static TableView Spent(WorthFindings found)
    {
        var priced = found.Costs.Any(row => row.UnitCost.Estimate is not null);
        var rows = priced ? found.Costs : [.. found.Costs.Where(row => !row.IsPart && row.Units.Estimate is not null)];
        var currency = WorthWording.Currency(found);
        return new(
            new Table<WorthCostItem>(
                "worth-costs", "What the program paid for", "",
                [
                    new("name", "Item", Unit.Text, "What was paid for.", row => Cell.Text(row.IsPart ? "of which " + row.Name : CadenceViews.Capital(row.Name))),
                    new("unit_cost", "Price of one", Unit.Ratio, "What one costs, as the program file states it.", row => priced ? Figure(row.UnitCost) : Cell.Empty),
                    new("unit_cost_lower", "", Unit.Ratio, "", row => Limit(row.UnitCost.Lower)),
                    new("unit_cost_upper", "", Unit.Ratio, "", row => Limit(row.UnitCost.Upper)),
                    new("units", "Number", Unit.Ratio, "How many.", row => Figure(row.Units)),
                    new("cost", "Cost", Unit.Ratio, "Price times number.", row => priced ? Figure(row.Cost) : Cell.Empty),
                    new("cost_lower", "", Unit.Ratio, "", row => Limit(row.Cost.Lower)),
                    new("cost_upper", "", Unit.Ratio, "", row => Limit(row.Cost.Upper)),
                    new("source", "Source of the price", Unit.Text, "Its source.", row => !priced || row.Source.Length == 0 ? Cell.Empty : Cell.Text(row.Source)),
                ],
                rows),
            priced ? $"What the program paid for, over the time of the data, in {currency}" + (found.PriceYear is { } year ? FormattableString.Invariant($" of {year}") : "") : "What a price would be multiplied by, over the time of the data",
            ["name", Below("unit_cost"), "units", Below("cost"), "source"]);
    }

    /// <summary>What that comes to.</summary>
    public static TableView Each(WorthFindings found) => new(
        new Table<WorthFigure>(
            "worth-figures", "What screening cost for each thing it did", "",
            [
                new("name", "What", Unit.Text, "What is looked at.", row => Cell.Text(WorthWording.Measure(row.Measure) + (row.Basis == OtherLots ? ", without flagged lots" : ""))),
                new("estimate", "Figure", Unit.Ratio, "The figure.", row => IsShare(row) && row.Figure.Estimate is not null ? Cell.Text(WorthWording.Share(row.Figure)) : Figure(row.Figure)),
                new("estimate_lower", "", Unit.Ratio, "", row => IsShare(row) ? Cell.Empty : Limit(row.Figure.Lower)),
                new("estimate_upper", "", Unit.Ratio, "", row => IsShare(row) ? Cell.Empty : Limit(row.Figure.Upper)),
                new("from", "From", Unit.Text, "Counted in the data, or modelled for screening as it was done.", row => Cell.Text(row.Basis is "counted" or OtherLots ? "counted, over the time of the data" : $"modelled as done, {WorthWording.Scope(found)}")),
                new("limits_of", "Limits hold", Unit.Text, "What the limits hold.", row => row.LimitsOf.Length == 0 ? Cell.Empty : Cell.Text(row.LimitsOf switch { "prices-and-counts" => "prices and counts", "draws" => "all that is uncertain", "days" => "days for each alarm", _ => row.LimitsOf })),
            ],
            [.. found.Figures.Where(row => row.Basis is "counted" or OtherLots or "modelled" && (row.Figure.Estimate is not null || row.Figure.Lower > 0))]),
        found.AnyStated ? $"What that comes to, money in {WorthWording.Currency(found)}" : "What that comes to", ["name", Below("estimate"), "limits_of", "from"]);

    private static bool IsShare(WorthFigure row) => row.Unit == "share";

    /// <summary>The average beside the marginal cost, step by step.</summary>
    public static TableView Margins(WorthFindings found)
    {
        WorthFigure? Of(string measure, string option) => found.Figures.FirstOrDefault(row => row.Measure == measure && row.Basis == option && row.Figure.Estimate is not null);
        Cell Number(string measure, string option, Func<EstimateFinding, double?> of) => Of(measure, option)?.Figure is { } figure && of(figure) is { } value ? Cell.Number(value) : Cell.Empty;
        var options = found.Figures.Where(row => row.Measure == "average-cost").Select(row => row.Basis).Where(option => Of("average-cost", option) is not null || Of("marginal-cost", option) is not null).ToImmutableArray();
        Column<string>[] Columns(string measure, string heading, string meaning) =>
        [
            new(measure, heading, Unit.Ratio, meaning, option => Of(measure, option) is { } row ? Figure(row.Figure) : Cell.Empty),
            new(measure + "_lower", "", Unit.Ratio, "", option => Number(measure, option, figure => figure.Lower)),
            new(measure + "_upper", "", Unit.Ratio, "", option => Number(measure, option, figure => figure.Upper)),
        ];
        return new(
            new Table<string>(
                "worth-figures", "Average and marginal cost", "",
                [
                    new("option", "Way of screening", Unit.Text, "The way of screening.", option => Cell.Text(option)),
                    .. Columns("average-cost", "On average over all of it", "Spending divided by all that is gained."),
                    .. Columns("marginal-cost", "Of the last step, from the one before", "What the step spends more, divided by what it gains more."),
                ],
                options),
            $"Spending for each {WorthWording.One(found)}, in {WorthWording.Currency(found)}: judge a step by its own cost, not by the average", ["option", Below("average-cost"), Below("marginal-cost")]);
    }

    /// <summary>What to choose.</summary>
    public static TableView Options(Findings findings) =>
        Options(findings, [.. findings.Worth.Options.Where(WorthWording.Leads)], $"Each way of screening against none, for {WorthWording.Scope(findings.Worth)}, money in {WorthWording.Currency(findings.Worth)}; net cost is what is spent less what illness and outbreaks averted would have cost, as far as these are priced");

    /// <summary>The same with another way to confirm, or without; empty where all of these stand in the first table.</summary>
    public static TableView Otherwise(Findings findings)
    {
        var rows = findings.Worth.Options.Where(option => !WorthWording.Leads(option) && option.Cost.Estimate is not null).ToImmutableArray();
        var kinds = rows.Select(option => option.Confirmation).Distinct().ToArray();
        var caption = kinds.Length > 1 ? "The same with pooled confirmatory tests, and without any (unconfirmed: every positive is away for the whole isolation time)"
            : kinds is [WorthConfirmation.Pooled] ? "The same with pooled confirmatory tests" : "The same without a confirmatory test (unconfirmed: every positive is away for the whole isolation time)";
        return Options(findings, rows, caption) with { Folded = true };
    }

    private static TableView Options(Findings findings, ImmutableArray<WorthOption> rows, string caption)
    {
        var found = findings.Worth;
        bool Known(Func<WorthOption, EstimateFinding> figure) => found.Options.Any(row => !row.IsNone && figure(row).Estimate is not null);
        IEnumerable<Column<WorthOption>> Columns(string name, string heading, string meaning, Func<WorthOption, EstimateFinding> figure) =>
        [
            new(name, heading, Unit.Ratio, meaning, row => Known(figure) ? Figure(figure(row)) : Cell.Empty),
            new(name + "_lower", "", Unit.Ratio, "", row => Limit(figure(row).Lower)),
            new(name + "_upper", "", Unit.Ratio, "", row => Limit(figure(row).Upper)),
        ];
        string Words(WorthOption row) => WorthWording.Name(row.Option, row.Confirmation) + (WorthWording.Remark(findings, row) is { Length: > 0 } remark ? $" ({remark})" : "");
        return new(
            new Table<WorthOption>(
                "worth-options", "What to choose", "",
                [
                    new("option", "Way of screening", Unit.Text, "The way of screening.", row => Cell.Text(Words(row))),
                    .. Columns("cost", "Net cost", "What is spent, less illness and outbreaks saved where these are priced.", row => row.Cost),
                    .. Columns("effect", CadenceViews.Capital(WorthWording.Many(found)), "What it gains.", row => row.Effect),
                    .. Columns("net_benefit", "Net benefit", "Value of the effect at the stated value, less the cost.", row => row.NetBenefit),
                    new("incremental_ratio", "Net cost of one more, on the frontier", Unit.Ratio, "What one more effect costs against the next cheaper option on the frontier.", row => row.IncrementalRatio.Estimate is { } ratio ? Cell.Number(ratio) : Cell.Empty),
                    new("best_share", "Best in draws", Unit.Proportion, "Share of draws in which its net benefit is highest.", row => row.BestShare is { } share ? Cell.Number(share) : Cell.Empty),
                    new("standing", "Standing", Unit.Text, "Where it stands among the others, at the central figures.", row => row.Standing == WorthStanding.NotKnown ? Cell.Empty : Cell.Text(WorthWording.Standing(row))),
                ],
                found.Options.Any(row => !row.IsNone && row.Cost.Estimate is not null) ? rows : []),
            caption, ["option", Below("cost"), Below("effect"), Below("net_benefit"), "incremental_ratio", "best_share", "standing"]);
    }

    /// <summary>When it turns.</summary>
    public static TableView Turns(WorthFindings found) => new(
        new Table<WorthTurn>(
            "worth-turning", "When it turns", "",
            [
                new("name", "Figure", Unit.Text, "Which figure.", row => Cell.Text(WorthWording.Turn(row))),
                new("pays", "It pays", Unit.Text, "On which side of the break-even it pays.", row => Cell.Text(WorthWording.Pays(found, row))),
                new("present", "As it is", Unit.Text, "The figure as it is, with its limits.", row => Cell.Text(WorthWording.Present(found, row))),
                new("now", "So it", Unit.Text, "What that means, and whether the limits leave it open.", row => WorthWording.Now(row) is { Length: > 0 } now ? Cell.Text(now) : Cell.Empty),
            ],
            found.Turns),
        found.Turns.All(WorthWording.IsHalfFalse) ? "From which share infected on more alarms are real than false, beside that share as it is"
            : (found.Judged is { } judged ? $"Where {WorthWording.Name(judged.Option, judged.Confirmation)} just repays its cost against no screening" : "Where screening just repays its cost") + ", one figure at a time, the others at their centre",
        ["name", found.Turns.All(WorthWording.IsHalfFalse) ? new ViewColumn("pays", "It turns") : "pays", "present", "now"]);

    /// <summary>A figure with its limits below it.</summary>
    internal static ViewColumn Below(string name, string? heading = null) => new(name, heading) { Below = (name + "_lower", name + "_upper") };

    /// <summary>A figure; where only one end of it is known, that in words.</summary>
    internal static Cell Figure(EstimateFinding figure) => figure switch
    {
        { Estimate: null, Lower: > 0 } => Cell.Text("at least " + WorthWording.Money(figure.Lower.Value)),
        { Estimate: { } estimate, Lower: { } lower, Upper: null } when lower < estimate => Cell.Text($"{WorthWording.Money(estimate)} ({WorthWording.Money(lower)} or more)"),
        _ => Cell.NumberOr(figure.Estimate, figure.EstimateUndefined ?? "not known"),
    };

    /// <summary>A limit.</summary>
    internal static Cell Limit(double? limit) => limit is { } value ? Cell.Number(value) : Cell.Empty;
}
