using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Pages.Cadence;

/// <summary>The tables of how often to screen as a page shows them: an option to a row, each figure with its unit. The files have them in long form.</summary>
internal static class CadenceViews
{
    private static readonly CadenceMeasure[] Given =
        [CadenceMeasure.Detection, CadenceMeasure.InfectiousDaysRemoved, CadenceMeasure.DaysOfAverted, CadenceMeasure.ShareRemoved, CadenceMeasure.CaughtBeforeSpread, CadenceMeasure.InfectionsAverted, CadenceMeasure.OutbreaksAvoided];

    private static readonly CadenceMeasure[] Asked = [CadenceMeasure.Screens, CadenceMeasure.FalseAlarms, CadenceMeasure.AnyFalseAlarm, CadenceMeasure.DaysLost, CadenceMeasure.PredictiveValue];

    /// <summary>An option chosen in a smaller share of draws stands in the file only.</summary>
    private const double SeldomBelow = 0.01;

    /// <summary>What every option gives.</summary>
    public static TableView Gives(CadenceFindings found) => Options(found, Given, found.LeadingBasis, FormattableString.Invariant($"What it gives to {Scope(found)}, against no screening{CadenceWording.Basis(found.LeadingBasis)}"));

    /// <summary>What every option asks.</summary>
    public static TableView Asks(CadenceFindings found) => Options(found, Asked, found.LeadingBasis, $"What it asks of {Scope(found)}");

    /// <summary>What of all this would be otherwise under the other bound of what is brought in.</summary>
    public static TableView Otherwise(CadenceFindings found, CadenceBasis basis) =>
        Options(found, [.. Given.Concat(Asked).Where(measure => found.Outcomes.Any(outcome => outcome.Measure == measure && outcome.Basis == basis))], basis, $"What depends on it, for {Scope(found)}{CadenceWording.Basis(basis)}");

    private static string Scope(CadenceFindings found) => FormattableString.Invariant($"{found.People:N0} {(found.People == 1 ? "person" : "people")} over {found.Days:N0} {(found.Days == 1 ? "day" : "days")}");

    private static TableView Options(CadenceFindings found, CadenceMeasure[] measures, CadenceBasis basis, string caption)
    {
        CadenceOutcome? Of(CadenceOptionFinding option, CadenceMeasure measure) => found.Outcome(option.Option, measure, basis);
        var known = measures.Where(measure => found.Options.Any(option => Of(option, measure)?.Figure.Estimate is not null)).ToArray();
        var columns = ImmutableArray.CreateBuilder<Column<CadenceOptionFinding>>();
        var views = ImmutableArray.CreateBuilder<ViewColumn>();
        columns.Add(new("option", "Way of screening", Unit.Text, "The way of screening.", option => Cell.Text(CadenceWording.Option(option))));
        views.Add("option");
        foreach (var measure in known)
        {
            var unit = CadenceWording.IsShare(measure) ? Unit.Proportion : Unit.Ratio;
            var name = measure.ToString();
            var heading = CadenceWording.Heading(measure);
            columns.Add(new(name, heading, unit, heading + ".", option => Of(option, measure)?.Figure is { } figure ? Cell.NumberOr(figure.Estimate, figure.EstimateUndefined ?? "not known") : Cell.Empty));
            columns.Add(new(name + "_lower", "", unit, "", option => Limit(Of(option, measure)?.Figure.Lower)));
            columns.Add(new(name + "_upper", "", unit, "", option => Limit(Of(option, measure)?.Figure.Upper)));
            views.Add(new ViewColumn(name) { Below = (name + "_lower", name + "_upper") });
        }

        return new TableView(new Table<CadenceOptionFinding>("cadence", "How often to screen", "", columns.ToImmutable(), known.Length == 0 ? [] : found.Options), caption, views.ToImmutable());
    }

    /// <summary>What each step adds, by what is told first.</summary>
    public static TableView Steps(CadenceFindings found)
    {
        var rows = found.StepTable.Only(row => row.Leads);
        return rows.Any(row => row.Gain.Estimate is not null)
            ? new(
                rows, $"{CadenceWording.Heading(rows[0].Measure)} by each step to the next option{CadenceWording.Basis(found.LeadingBasis)}",
                [
                    new("from", "Step", "to"), new("gain", "Adds") { Below = ("lower", "upper") }, "more_screens", new("per_1000_screens", "For 1,000 more screens") { Below = ("per_1000_lower", "per_1000_upper") },
                    "more_false_alarms", new("per_false_alarm", "For one more false alarm") { Below = ("per_false_alarm_lower", "per_false_alarm_upper") },
                ])
            : new(rows, "What each step to the next option asks", [new("from", "Step", "to"), "more_screens", "more_false_alarms"]);
    }

    /// <summary>How sure the choice is.</summary>
    public static TableView Choices(CadenceFindings found) => new(
        found.ChoiceTable.Only(row => row.Leads && (row.Chosen || row.ShareOfDraws >= SeldomBelow)), "How often each option is the one to choose, of all draws (those in 1 of 100 or more)", ["option", new("share_of_draws", "Share of draws"), new("chosen", "Chosen")]);

    /// <summary>What the answer rests on.</summary>
    public static TableView Assumptions(CadenceFindings found) => new(
        new Table<CadenceAssumption>(
            "cadence-assumptions", "What the answer rests on", "",
            [
                new("name", "Assumption", Unit.Text, "What it is called.", row => Cell.Text(Capital(row.Name))),
                new("value", "Value", Unit.Text, "Its value.", row => Cell.Text(row.Value is { } value ? CadenceWording.Value(value, row.Unit) : row.ValueUndefined ?? "not known")),
                new("range", "95 % range", Unit.Text, "Its range; none where it is taken as exact.", row => CadenceWording.Range(row.Lower, row.Upper, row.Unit) is { Length: > 0 } range ? Cell.Text(range) : Cell.Empty),
                new("origin", "From", Unit.Text, "Where it comes from.", row => Cell.Text(CadenceWording.Origin(row.Origin))),
                new("source", "Source, or what is done without it", Unit.Text, "Its source, or what is done without it.", row => row.Source.Length == 0 ? Cell.Empty : Cell.Text(row.Source)),
            ],
            found.Assumptions),
        "Every figure that the answer rests on", ["name", new("value") { OneLine = true }, new("range") { OneLine = true }, new("origin") { OneLine = true }, "source"]);

    /// <summary>What each assumption does.</summary>
    public static TableView Swings(CadenceFindings found)
    {
        var unit = UnitsOf(found);
        return new(
            new Table<CadenceSwing>(
                "cadence-sensitivity", "Which assumptions matter most", "",
                [
                    new("name", "Assumption", Unit.Text, "What it is called.", row => Cell.Text(Capital(row.Name))),
                    new("at_lower", "Lower end", Unit.Text, "The lower end of its range.", row => Cell.Text(CadenceWording.Value(row.AtLower, unit(row.Assumption)))),
                    new("low", "Days removed there", Unit.Ratio, "Infectious days removed at the lower end.", row => Cell.Number(row.Low)),
                    new("at_upper", "Upper end", Unit.Text, "The upper end of its range.", row => Cell.Text(CadenceWording.Value(row.AtUpper, unit(row.Assumption)))),
                    new("high", "Days removed there", Unit.Ratio, "Infectious days removed at the upper end.", row => Cell.Number(row.High)),
                    new("chosen", "Chosen at both ends", Unit.Text, "The option chosen there.", row => row is { OptionAtLower: { } low, OptionAtUpper: { } high } ? Cell.Text(low == high ? low : $"{low}; {high}") : Cell.Empty),
                ],
                found.Swings),
            "Each assumption at both ends of its 95 % range, the others at their centre", ["name", new("at_lower") { OneLine = true }, "low", new("at_upper") { OneLine = true }, "high", "chosen"]) { Folded = true };
    }

    /// <summary>Plan and practice.</summary>
    public static TableView Adherence(CadenceFindings found) => new(
        new Table<CadenceAdherence>(
            "cadence-adherence", "Plan and practice", "",
            [
                new("measure", "What", Unit.Text, "What is compared.", row => Cell.Text(CadenceWording.Practice(row.Measure))),
                new("planned", "Planned", Unit.Text, "As planned.", row => Cell.Text(CadenceWording.Figure(row.Planned, row.Unit))),
                new("observed", "Done", Unit.Text, "As done.", row => Cell.Text(CadenceWording.Figure(row.Observed, row.Unit))),
                new("share", "Done, times planned", Unit.Ratio, "Done divided by planned.", row => row.Share.Estimate is { } share ? Cell.Number(share) : Cell.Empty),
            ],
            found.Adherence),
        "What was planned, and what was done", ["measure", new("planned") { OneLine = true }, new("observed") { OneLine = true }, "share"]);

    /// <summary>The unit of an assumption by its name in files.</summary>
    public static Func<string, string> UnitsOf(CadenceFindings found)
    {
        var units = found.Assumptions.GroupBy(row => row.Assumption, StringComparer.Ordinal).ToDictionary(rows => rows.Key, rows => rows.First().Unit, StringComparer.Ordinal);
        return assumption => units.GetValueOrDefault(assumption, "");
    }

    /// <summary>With a capital.</summary>
    public static string Capital(string words) => words.Length == 0 ? "" : char.ToUpperInvariant(words[0]) + words[1..];

    private static Cell Limit(double? limit) => limit is { } value ? Cell.Number(value) : Cell.Empty;
}
