using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Cadence;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Pages.Cadence;

/// <summary>Pictures of how often to screen: gain against burden, the assumptions that matter most, and days between screens as they were.</summary>
internal static class CadenceFigures
{
    /// <summary>The main picture.</summary>
    public const string Gain = "gain-against-burden";

    /// <summary>What each assumption does.</summary>
    public const string Swings = "assumptions-that-matter";

    /// <summary>Days between screens.</summary>
    public const string Gaps = "days-between-screens";

    /// <summary>At most three.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        // Where small counts are hidden a place in a picture would show them.
        if (findings.Disclosure is not null) return [];
        var found = findings.Cadence;
        return [.. new[] { GainAgainstBurden(found), Tornado(found), Between(found, findings.Settings.Cadence.PlannedAt.Length > 0) }.OfType<Chart>()];
    }

    private static Chart? GainAgainstBurden(CadenceFindings found)
    {
        bool Known(CadenceMeasure measure) => found.Options.Any(option => !option.IsNone && found.Outcome(option.Option, measure)?.Figure.Estimate is not null);
        // Where it is not known when an infection is passed on, what is found is the most that can be shown.
        var removes = Known(CadenceMeasure.ShareRemoved);
        var planned = found.Options.Any(option => option.IsPlanned);
        var points = ImmutableArray.CreateBuilder<OptionPoint>();
        // With a plan, what was done lies all but on it: it is told further down.
        foreach (var option in found.Options.Where(option => !(option.IsAsDone && planned)))
        {
            if (CadenceWording.ScreensInThirtyDays(found, option) is not { } burden
                || found.Outcome(option.Option, removes ? CadenceMeasure.ShareRemoved : CadenceMeasure.Detection)?.Figure is not { Estimate: { } gain } figure) continue;
            points.Add(new OptionPoint(option.Option, burden, gain, figure.Lower ?? gain, figure.Upper ?? gain, Standing(option)));
        }

        var line = points.Where(point => point.Standing != OptionStanding.Done).OrderBy(point => point.Burden).ToArray();
        if (line.Length < 2 || line[^1].Burden <= line[0].Burden || points.Max(point => point.Upper) <= 0) return null;
        return GainChart.Of(
            new ChartFrame(
                Gain, removes ? "What more screening adds" : "What more screening finds",
                "Where the line flattens, one more screen adds little. " + (removes ? "Infectious days outside isolation, days off included, that each way of screening takes away" : "Infections that each way of screening finds") + ", against the screens it asks of a person." + Caption.OfPicture(FirstAndLast(line)),
                $"Share of {(removes ? "infectious days removed" : "infections found")} by screens per person in 30 days. " + string.Join("; ", points.OrderBy(point => point.Burden).Select(point =>
                    $"{point.Words(ChartText.Name(point.Name))}: {Print(point.Gain)} (limits {Print(point.Lower)} to {Print(point.Upper)}) for {Screens(point.Burden)}")) + ".",
                "cadence"),
            points.ToImmutable(), "screens per person in 30 days", removes ? "infectious days removed" : "infections found");
    }

    /// <summary>What to see: the first step against the last.</summary>
    private static string FirstAndLast(OptionPoint[] line)
    {
        if (line.Length < 3) return "";
        string Step(OptionPoint from, OptionPoint to) => $"from {ChartText.Name(from.Name)} to {ChartText.Name(to.Name)} it is {Points(to.Gain - from.Gain)} for {Screens(to.Burden - from.Burden)} more of each person in 30 days";
        return $" {CadenceViews.Capital(Step(line[0], line[1]))}; {Step(line[^2], line[^1])}.";
    }

    private static string Points(double gain) => Counted((gain < 0 ? "\u2212" : "") + (100 * Math.Abs(gain)).ToString("0.#", CultureInfo.InvariantCulture), "point");

    private static string Screens(double many) => Counted(many.ToString("#,0.#", CultureInfo.InvariantCulture), "screen");

    private static string Counted(string number, string what) => $"{number} {what}{(number == "1" ? "" : "s")}";

    private static OptionStanding Standing(CadenceOptionFinding option) =>
        option.IsAsDone ? OptionStanding.Done : (option.IsPlanned ? OptionStanding.Planned : OptionStanding.None) | (option.IsChosen ? OptionStanding.Chosen : OptionStanding.None);

    private static Chart? Tornado(CadenceFindings found)
    {
        var leading = found.Leading is { IsNone: false } spoken ? spoken : found.Options.FirstOrDefault(option => option is { IsPlanned: true, IsNone: false });
        if (leading is null || found.Outcome(leading.Option, CadenceMeasure.InfectiousDaysRemoved)?.Figure.Estimate is not { } centre) return null;
        var unit = CadenceViews.UnitsOf(found);
        var rows = found.Swings.Where(row => row.Swing > 0 && row.Low != row.High).ToArray();
        if (rows.Length == 0) return null;
        string End(double value, string? option, CadenceSwing row)
        {
            var of = unit(row.Assumption);
            var words = of == "per person-day" ? CadenceWording.Short(value, of) + " in 100,000" : of.StartsWith("days", StringComparison.Ordinal) ? CadenceWording.Value(value, of) : CadenceWording.Short(value, of);
            return option is null || option == leading.Option || !leading.IsChosen ? words : $"{words}: {ChartText.Name(option, 16)}";
        }

        var bars = rows.Select(row => new SwingBar(CadenceViews.Capital(row.Name), End(row.AtLower, row.OptionAtLower, row), End(row.AtUpper, row.OptionAtUpper, row), row.Low, row.High)).ToImmutableArray();
        var changes = leading.IsChosen && rows.Any(row => (row.OptionAtLower ?? leading.Option) != leading.Option || (row.OptionAtUpper ?? leading.Option) != leading.Option);
        return SwingChart.Of(
            new ChartFrame(
                Swings, "Which assumptions matter most",
                (Caption)$"What the longest bars stand for decides how much screening gives. Infectious days outside isolation that {ChartText.Name(leading.Option)} takes away" + new Sentence("in {0} " + (found.Days == 1 ? "day" : "days") + ", with one assumption at a time at the ends of what it may be.", new FigureReference("cadence.days", Cell.Count(found.Days), Unit.Count))
                + (changes ? " Where another option would then be the one to choose, its name stands beside the value." : ""),
                $"Infectious days removed, {CadenceWording.Plain(centre)} with all at their centre. " + string.Join("; ", bars.Take(SwingChart.Most).Select(bar =>
                    $"{bar.Name}: {CadenceWording.Plain(bar.AtLower)} at {bar.LowerWords}, {CadenceWording.Plain(bar.AtUpper)} at {bar.UpperWords}")) + ".",
                "cadence-sensitivity"),
            bars, centre, "infectious days removed");
    }

    private static Chart? Between(CadenceFindings found, bool plansDiffer)
    {
        var gaps = found.Inputs.Gaps;
        var all = gaps.Sum(gap => gap.Count);
        if (all == 0) return null;
        var shares = gaps.OrderBy(gap => gap.Days).Select(gap => new GapShare(gap.Days, (double)gap.Count / all)).ToImmutableArray();
        var planned = found.Adherence.FirstOrDefault(row => row.Measure == "days-between-screens")?.Planned.Estimate;
        var common = shares.MaxBy(share => share.Share)!;
        return GapChart.Of(
            new ChartFrame(
                Gaps, "Days between a person's screens", "How far the bars lie from the dashed line is screening planned and not done. How many days passed to a person's next screen." + (planned is null ? "" : plansDiffer ? " Plans differ between sites; the dashed line is their average." : " Gaps much longer than the plan's are screens that were due and not taken."),
                $"Share of {all.ToString("N0", CultureInfo.InvariantCulture)} pairs of consecutive screens by the days between them. Most often: {Counted(common.Days.ToString("N0", CultureInfo.InvariantCulture), "day")}, {Print(common.Share)}."
                + (planned is { } days ? $" Planned: {Counted(CadenceWording.Plain(days), "day")} on average." : ""),
                "participation"),
            shares, planned);
    }

    private static string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
}
