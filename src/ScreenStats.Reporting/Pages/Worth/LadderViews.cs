using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Reporting.Pages.Worth;

/// <summary>Which option gains most for how much infection, as the page shows it.</summary>
internal static class LadderViews
{
    public static TableView Ladder(WorthFindings found) => new(
        new Table<WorthRung>(
            "worth-ladder", "The option by how much infection there is", "",
            [
                new("option", "Gains most", Unit.Text, "The way of screening.", row => Cell.Text(Word(row.Option, row.Confirmation))),
                new("from", "From", Unit.Ratio, "From so many infections in 1,000 people in a week.", row => Cell.Number(row.From)),
                new("to", "Up to", Unit.Ratio, "Up to so many.", row => row.To is { } to ? Cell.Number(to) : Cell.Empty),
                new("now", "As it is", Unit.Text, "Where the infections of the verdict lie.", row => row.IsPresent ? Cell.Text("here") : Cell.Empty),
            ],
            found.Ladder),
        "Which way of screening gains most, by infections in a week among 1,000 people, the rest at the centre: where one no longer pays a less frequent one still may", ["option", "from", "to", "now"]);

    /// <summary>How much infection there was in all data and in their last days.</summary>
    public static TableView Periods(WorthFindings found) => new(
        new Table<WorthPeriod>(
            "worth-periods", "How much infection there was, and what gains most for so much", "",
            [
                new("period", "Days of the data", Unit.Text, "Which days.", row => Cell.Text(row.Period == "all-days" ? FormattableString.Invariant($"all {row.Days}") : FormattableString.Invariant($"the last {row.Days}"))),
                new("cases", "Cases", Unit.Count, "Cases found in them.", row => Cell.Count(row.Cases)),
                new("weekly_incidence", "Infected in a week, per 1,000", Unit.Ratio, "Infections in a week among 1,000 people.", row => WorthViews.Figure(row.WeeklyIncidence)),
                new("weekly_incidence_lower", "", Unit.Ratio, "", row => WorthViews.Limit(row.WeeklyIncidence.Lower)),
                new("weekly_incidence_upper", "", Unit.Ratio, "", row => WorthViews.Limit(row.WeeklyIncidence.Upper)),
                new("option", "Gains most there", Unit.Text, "The way of screening.", row => Cell.Text(Word(row.Option, row.Confirmation))),
                new("over", "At the limits", Unit.Text, "The same at both limits.", row => row is { OptionAtLower: { } low, OptionAtUpper: { } high } ? Cell.Text((low, row.ConfirmationAtLower) == (high, row.ConfirmationAtUpper) ? "the same" : $"{Word(low, row.ConfirmationAtLower)} to {Word(high, row.ConfirmationAtUpper)}") : Cell.Empty),
                new("net_benefit", "Net benefit of the option judged", Unit.Ratio, "At that incidence.", row => Cell.Number(row.NetBenefit)),
            ],
            found.Periods),
        "How much infection there was in all data and in their last days, and what gains most for so much", ["period", "cases", WorthViews.Below("weekly_incidence"), "option", "over", "net_benefit"]);

    /// <summary>A way of screening with what follows a positive, where that is not the usual confirmatory test.</summary>
    internal static string Word(string option, WorthConfirmation? confirmation) => confirmation == WorthConfirmation.NotNeeded ? "no screening" : WorthWording.Name(option, confirmation ?? WorthConfirmation.Confirmed);
}
