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
                new("option", "Gains most", Unit.Text, "The way of screening.", row => Cell.Text(row.IsNone ? "no screening" : row.Option)),
                new("from", "From", Unit.Ratio, "From so many infections in 1,000 people in a week.", row => Cell.Number(row.From)),
                new("to", "Up to", Unit.Ratio, "Up to so many.", row => row.To is { } to ? Cell.Number(to) : Cell.Empty),
                new("now", "As it is", Unit.Text, "Where the infections of the verdict lie.", row => row.IsPresent ? Cell.Text("here") : Cell.Empty),
            ],
            found.Ladder),
        "Which way of screening gains most, by infections in a week among 1,000 people, the rest at the centre: where one no longer pays a less frequent one still may", ["option", "from", "to", "now"]);
}
