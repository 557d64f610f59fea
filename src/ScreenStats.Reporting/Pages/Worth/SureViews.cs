using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Lists;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Pages.Cadence;

namespace ScreenStats.Reporting.Pages.Worth;

/// <summary>The tables of how sure it is, of thresholds and rules, and of the lists of the field, as the page shows them.</summary>
internal static class SureViews
{
    /// <summary>An option that is never the best in this share of draws has no column on the page.</summary>
    private const double ColumnFrom = 0.05;

    /// <summary>More standard errors above 0 than this, and knowing a figure is worth more than chance makes of it.</summary>
    private const double BeyondChance = 2;

    /// <summary>More rows than this, and what only some look at closer is folded.</summary>
    private const int Long = 12;

    /// <summary>How likely each option is the best: a value to a row, an option to a column.</summary>
    public static TableView Acceptability(WorthFindings found)
    {
        var options = found.Acceptability.GroupBy(row => row.Option, StringComparer.Ordinal).Where(rows => rows.Any(row => row.Share >= ColumnFrom || row.OnFrontier)).Select(rows => rows.Key).ToArray();
        var values = found.Acceptability.GroupBy(row => row.Value).OrderBy(rows => rows.Key).ToImmutableArray();
        return new(
            new Table<IGrouping<double, WorthAcceptability>>(
                "worth-acceptability", "How likely each option is the best", "",
                [
                    new("value", $"Value of one {WorthWording.One(found)}", Unit.Text, "What one effect is worth.", rows => Cell.Text(WorthWording.Money(rows.Key) + (rows.Key == found.Value ? " (stated)" : ""))),
                    .. options.Select(option => new Column<IGrouping<double, WorthAcceptability>>(
                        option, WorthWording.Name(found, option), Unit.Proportion, "Share of draws in which it is the best.", rows => rows.FirstOrDefault(row => row.Option == option) is { } row ? Cell.Number(row.Share) : Cell.Empty)),
                    new("chosen", "Best on average", Unit.Text, "The one to choose at that value.", rows => rows.FirstOrDefault(row => row.OnFrontier) is { } row ? Cell.Text(WorthWording.Name(found, row.Option)) : Cell.Empty),
                ],
                values),
            "Share of draws in which each option is the best, by what an effect is worth", [new("value") { OneLine = true }, .. options.Select(option => new ViewColumn(option)), new("chosen") { OneLine = true }]) { Folded = true };
    }

    /// <summary>What knowing more would be worth, as far as it is more than chance.</summary>
    public static TableView Information(WorthFindings found)
    {
        string Words(WorthInformation row) => CadenceViews.Capital(row.Name) + (row.Sample is { } sample ? $" ({sample.ToString("N0", CultureInfo.InvariantCulture)} of them{(row.SampleCost is { } cost ? $", which cost {WorthWording.Money(cost)}" : "")})" : "");
        return new(
            new Table<WorthInformation>(
                "worth-information", "What knowing more would be worth", "",
                [
                    new("name", "To know", Unit.Text, "What would be known before choosing.", row => Cell.Text(Words(row))),
                    new("value", "Is worth at most", Unit.Ratio, "In money, for one choice over the days looked at.", row => Cell.Number(row.Value)),
                    new("standard_error", "Standard error", Unit.Ratio, "From the number of draws.", row => row.StandardError is { } error ? Cell.Number(error) : Cell.Empty),
                ],
                [.. found.Information.Where(row => row.Parameter == "everything" || row.Sample is not null || row.Value > BeyondChance * (row.StandardError ?? 0))]),
            $"What it would be worth to know something exactly before choosing, in {WorthWording.Currency(found)}; figures that are worth no more than chance makes of them stand in the file", ["name", "value", "standard_error"]);
    }

    /// <summary>What each figure does.</summary>
    public static TableView Swings(Findings findings)
    {
        var found = findings.Worth;
        return new(
            new Table<WorthSwing>(
                "worth-swings", "Which figures matter most", "",
                [
                    new("name", "Figure", Unit.Text, "What it is called.", row => Cell.Text(CadenceViews.Capital(row.Name))),
                    new("at_lower", "Lower end", Unit.Text, "The lower end of its range.", row => Cell.Text(WorthWording.End(findings, row.Figure, row.AtLower))),
                    new("low", "Net benefit there", Unit.Ratio, "Net benefit at the lower end.", row => Cell.Number(row.Low)),
                    new("at_upper", "Upper end", Unit.Text, "The upper end of its range.", row => Cell.Text(WorthWording.End(findings, row.Figure, row.AtUpper))),
                    new("high", "Net benefit there", Unit.Ratio, "Net benefit at the upper end.", row => Cell.Number(row.High)),
                    new("best", "Best at both ends", Unit.Text, "The best option there.", row => Cell.Text(
                        row.BestAtLower == row.BestAtUpper ? WorthWording.Name(found, row.BestAtLower) : $"{WorthWording.Name(found, row.BestAtLower)}; {WorthWording.Name(found, row.BestAtUpper)}")),
                ],
                found.Swings),
            "Each figure at both ends of its 95 % range, the others at their centre", ["name", new("at_lower") { OneLine = true }, "low", new("at_upper") { OneLine = true }, "high", "best"]) { Folded = true };
    }

    /// <summary>Whom to send away.</summary>
    public static TableView Decisions(WorthFindings found) => new(
        new Table<WorthDecisionPoint>(
            "worth-decision-curve", "Whom to send away", "",
            [
                new("threshold", "Sent away from a chance of", Unit.Proportion, "The chance of infection from which a person would be sent away.", row => Cell.Number(row.Threshold)),
                new("screen", "By the screen", Unit.Ratio, "Net benefit of sending away those whose screen is positive.", row => WorthViews.Figure(row.Screened)),
                new("screen_lower", "", Unit.Ratio, "", row => WorthViews.Limit(row.Screened.Lower)),
                new("screen_upper", "", Unit.Ratio, "", row => WorthViews.Limit(row.Screened.Upper)),
                new("everyone", "Everyone", Unit.Ratio, "Net benefit of sending everyone away.", row => WorthViews.Figure(row.Everyone)),
                new("best", "Best", Unit.Text, "Which does best.", row => Cell.Text(Best(row.Best))),
                new("others", "By the screen, without flagged lots", Unit.Ratio, "The same without the runs of flagged lots.", row => row.WithoutFlaggedLots is { } others ? WorthViews.Figure(others.Screened) : Cell.Empty),
                new("others_lower", "", Unit.Ratio, "", row => WorthViews.Limit(row.WithoutFlaggedLots?.Screened.Lower)),
                new("others_upper", "", Unit.Ratio, "", row => WorthViews.Limit(row.WithoutFlaggedLots?.Screened.Upper)),
                new("others_best", "Best, without them", Unit.Text, "Which does best without them.", row => row.WithoutFlaggedLots is { } others ? Cell.Text(Best(others.Best)) : Cell.Empty),
            ],
            found.DecisionCurve),
        "Gain in infected people sent away for each 1,000 screens, less those sent away for nothing, weighed by the chance from which one would be sent away; no one has 0", ["threshold", WorthViews.Below("screen"), "everyone", "best", WorthViews.Below("others"), "others_best"]) { Folded = found.DecisionCurve.Length > Long };

    private static string Best(string best) => best switch { "screen" => "by the screen", "no-one" => "no one", _ => best };

    /// <summary>Over which thresholds the screen does better than to send away everyone or no one; empty where nothing is known.</summary>
    public static Caption Thresholds(WorthFindings found)
    {
        var known = found.DecisionCurve.Where(row => row.Screened.Estimate is not null).ToArray();
        if (known.Length == 0) return "";
        var figures = ImmutableArray.CreateBuilder<FigureReference>();
        string Say(WorthDecisionPoint point)
        {
            figures.Add(new FigureReference(FigurePath.Row("worth.decisionCurve", point.Threshold.ToString("R", CultureInfo.InvariantCulture)) + ".threshold", Cell.Number(point.Threshold), Unit.Proportion));
            return FormattableString.Invariant($"{{{figures.Count - 1}}}");
        }

        // The curve goes by rising thresholds.
        var screen = Array.FindAll(known, row => row.Best == "screen");
        var others = Array.FindAll(known, row => row.WithoutFlaggedLots?.Best == "screen");
        var (surely, perhaps) = (Array.FindAll(screen, row => row.Screened.Lower > 0), Array.FindAll(known, row => row.Screened.Upper > 0));
        string Looked() => $"of those looked at, {Say(known[0])} to {Say(known[^1])}";
        var text = "The less likely an infection has to be before someone is sent away, the more a missed case weighs against a false alarm. "
            + (screen.Length == 0 ? $"At no such chance {Looked()}, is it best to go by the screen alone."
                : $"To go by the screen alone does better than to send away everyone, or no one, where that chance is {Say(screen[0])} to {Say(screen[^1])} ({Looked()})"
                    + (surely.Length == 0 ? "; by its limits that is sure nowhere." : $"; by its limits that is sure up to {Say(surely[^1])} and may hold up to {Say(perhaps[^1])}."))
            + (others.Length == 0 ? "" : $" Without the runs of flagged lots it does so {(others.Length == 1 ? "at" : $"from {Say(others[0])} to")} {Say(others[^1])}.")
            + " A confirmatory test is not in this sum: with it a false alarm costs less.";
        return new Sentence(text, [.. figures]);
    }

    /// <summary>The rule of frequency over the periods.</summary>
    public static TableView Rules(WorthFindings found) => new(
        new Table<WorthRulePeriod>(
            "worth-rules", "What the rule of frequency would have done", "",
            [
                new("period", "Period from", Unit.Date, "Its first day.", row => Cell.Date(row.Period)),
                new("tests", "Valid tests", Unit.Count, "Valid tests in it.", row => Cell.Count(row.Tests)),
                new("positives", "Positive", Unit.Count, "Positive ones.", row => Cell.Count(row.Positives)),
                new("estimate", "Positivity", Unit.Proportion, "Their share.", row => WorthViews.Figure(row.Positivity)),
                new("estimate_lower", "", Unit.Proportion, "", row => WorthViews.Limit(row.Positivity.Lower)),
                new("estimate_upper", "", Unit.Proportion, "", row => WorthViews.Limit(row.Positivity.Upper)),
                new("in_force", "In force", Unit.Text, "The option in force, decided on the periods before.", row => Cell.Text(row.InForce)),
                new("next", "Then", Unit.Text, "The option from the next period on.", row => Cell.Text(row.Next + (row.IsSure ? "" : " (could be another)"))),
                new("screens_per_person", "Screens of one person", Unit.Ratio, "In the period, under the option in force.", row => Cell.Number(row.ScreensPerPerson)),
                new("others_positives", "Positive, without flagged lots", Unit.Count, "Positive ones without the runs of flagged lots.", row => row.WithoutFlaggedLots is { } others ? Cell.Count(others.Positives) : Cell.Empty),
                new("others_in_force", "In force, without them", Unit.Text, "The option in force, decided without the runs of flagged lots.", row => row.WithoutFlaggedLots is { } others ? Cell.Text(others.InForce) : Cell.Empty),
            ],
            found.Rules),
        "The rule of the program file, replayed: the positivity of a period decides on the next; \"could be another\" where its limits lead to different options",
        ["period", "tests", "positives", WorthViews.Below("estimate"), new("in_force") { OneLine = true }, "next", "screens_per_person", "others_positives", new("others_in_force") { OneLine = true }]) { Folded = found.Rules.Length > Long };

    /// <summary>A list of the field.</summary>
    public static TableView List(WorthFindings found, string list, string caption)
    {
        var rows = found.Criteria.Where(row => row.List == list).ToImmutableArray();
        return new(
            new Table<WorthCriterion>(
                "worth-criteria", "The lists of the field", "",
                [
                    new("item", "Item", Unit.Count, "Its number in the list.", row => Cell.Count(row.Item)),
                    new("question", "Question", Unit.Text, "What it asks, in words of our own.", row => Cell.Text(row.Question)),
                    new("answer", "Answer", Unit.Text, "As far as data and program file can answer.", row => Cell.Text(row.Answer)),
                    new("evidence", "From", Unit.Text, "What data or program file say of it.", row => row.Evidence.Length == 0 ? Cell.Empty : Cell.Text(row.Evidence)),
                ],
                rows),
            caption, ["item", "question", new("answer") { OneLine = true }, "evidence"]) { Folded = rows.Length > Long };
    }
}
