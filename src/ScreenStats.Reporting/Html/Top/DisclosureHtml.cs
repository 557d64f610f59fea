using System.Globalization;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Html.Top;

/// <summary>What is hidden in a report that hides small counts, in words.</summary>
internal static class DisclosureHtml
{
    /// <summary>What is hidden, and how well.</summary>
    public static string Text(ReleaseDisclosure disclosure)
    {
        var text = string.Create(CultureInfo.InvariantCulture,
            $"Small counts are hidden: those from 1 to {disclosure.SuppressBelow - 1}, others that would give one away, and every figure drawn from them. {disclosure.HiddenCounts:N0} counts are hidden, {disclosure.HiddenCells:N0} cells of tables read \"hidden\", and {(disclosure.TablesLeftOut.Length == 1 ? "1 table is" : $"{disclosure.TablesLeftOut.Length} tables are")} left empty.");
        if (!disclosure.TablesLeftOut.IsEmpty) text += " Left empty: " + string.Join(", ", disclosure.TablesLeftOut) + ".";
        text += " For the whole program and its devices limits are widened for clusters in coarse steps, a little wider than the data ask for; those of sites, lots and weeks are not widened, and too narrow where the same people were tested again and again, because exact ones would tell of single people and weeks.";
        text += " That a lot or site is not flagged says that its refuted positives, or unusable runs, were fewer than would be flagged, also where their number is hidden.";
        if (!disclosure.ComparedWithEarlierRelease) text += " No earlier report of this program was taken into account: if readers have one, the difference between the two can give a hidden count away.";
        if (disclosure.ComparedWithEarlierRelease) text += " What an earlier release showed was taken into account.";
        if (disclosure.NotProtected > 0) text += string.Create(CultureInfo.InvariantCulture, $" {disclosure.NotProtected:N0} could not be protected: the earlier release gives them away.");
        if (disclosure.Risk is { SmallestGroupHidden: true, MeanRisk: { } average })
        {
            text += string.Create(CultureInfo.InvariantCulture,
                $" In the screening export itself some rows that agree in site, period and lot form a group of fewer than {disclosure.SuppressBelow:N0}; the mean risk of telling a row apart is {Rounding.Print(Cell.Number(average), Unit.Proportion)}.");
        }

        if (disclosure.Risk is { SmallestGroup: { } smallest, LargestRisk: { } largest, MeanRisk: { } mean })
        {
            text += string.Create(CultureInfo.InvariantCulture,
                $" In the screening export itself rows that agree in site, period and lot form groups of at least {smallest:N0}: the largest risk of telling a row apart is {Rounding.Print(Cell.Number(largest), Unit.Proportion)}, the mean {Rounding.Print(Cell.Number(mean), Unit.Proportion)}.");
        }

        return text;
    }
}
