using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Reporting.Charts.Cadence;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;
using ScreenStats.Reporting.Charts.Worth;
using ScreenStats.Reporting.Pages.Cadence;

namespace ScreenStats.Reporting.Pages.Worth;

/// <summary>Pictures of whether it is worth it: cost against effect, how likely each option is the best, and the figures that matter most.</summary>
internal static class WorthFigures
{
    /// <summary>The main picture.</summary>
    public const string Plane = "cost-against-effect";

    /// <summary>How likely each option is the best.</summary>
    public const string Likely = "best-by-value";

    /// <summary>What each figure does to the net benefit.</summary>
    public const string Swings = "figures-that-matter";

    /// <summary>Average and last step.</summary>
    public const string Margins = "average-and-last-step";

    /// <summary>At most five; the first of them leads the page.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        // Where small counts are hidden a place in a picture would show them.
        if (findings.Disclosure is not null) return [];
        return [.. new[] { LadderFigures.Of(findings), AverageAndLast(findings.Worth), CostAgainstEffect(findings), Acceptability(findings.Worth), Tornado(findings) }.OfType<Chart>()];
    }

    private static Chart? CostAgainstEffect(Findings findings)
    {
        var found = findings.Worth;
        var (currency, many) = (ChartText.Name(WorthWording.Currency(found)), WorthWording.Many(found));
        ImmutableArray<PlanePoint> points = [.. found.Options.Where(option => WorthWording.Leads(option) && option is { IsAsDone: false, Cost.Estimate: not null, Effect.Estimate: not null }).Select(option => Point(findings, option))];
        if (points.Length < 2 || points.All(point => point.Effect == points[0].Effect)) return null;
        return PlaneChart.Of(
            new ChartFrame(
                Plane, "What each way of screening costs and gains",
                (Caption)$"The steeper the line, the less a step along it buys. Net cost (spending less what is saved) against {many}, more than with no screening," + WorthWording.ScopeOf(found, "for", ".") + Steps(found) + Left(found),
                $"Net cost in {currency} by {many}. " + string.Join("; ", points.OrderBy(point => point.Effect).ThenBy(point => point.Cost).Select(point =>
                    $"{point.Words}, {(point.OnFrontier ? "on the frontier" : "dominated")}: {Short(point.Cost)} (limits {Short(point.CostLower)} to {Short(point.CostUpper)}) for {Short(point.Effect)} (limits {Short(point.EffectLower)} to {Short(point.EffectUpper)})"))
                + (found.Value is { } value ? $". One {WorthWording.One(found)} is stated to be worth {Short(value)}." : "."),
                "worth-options"),
            points, many, $"net cost, {currency}", found.Value, found.Value is { } worth ? $"worth {Short(worth)} each" : "");
    }

    private static PlanePoint Point(Findings findings, WorthOption option)
    {
        var (cost, effect) = (option.Cost.Estimate!.Value, option.Effect.Estimate!.Value);
        var standing = (option.Standing == WorthStanding.OnFrontier ? PlaneStanding.OnFrontier : 0) | (option.IsJudged ? PlaneStanding.Judged : 0) | (option.IsBest ? PlaneStanding.Best : 0);
        return new PlanePoint(
            ChartText.Name(WorthWording.Name(option.Option, option.Confirmation)), effect, option.Effect.Lower ?? effect, option.Effect.Upper ?? effect,
            cost, option.Cost.Lower ?? cost, option.Cost.Upper ?? cost, standing, WorthWording.Remark(findings, option));
    }

    /// <summary>What to see: the first step along the frontier against the last.</summary>
    private static Caption Steps(WorthFindings found)
    {
        var steps = found.Options.Where(option => option.IncrementalRatio.Estimate is not null).OrderBy(option => option.IncrementalRatio.Estimate).ToArray();
        if (steps.Length == 0) return "";
        static FigureReference Name(WorthOption option) => Caption.Shown(ChartText.Name(WorthWording.Name(option.Option, option.Confirmation)));
        static FigureReference Costs(WorthOption option) => Amount(FigurePath.Row("worth.options", option.Key) + ".incrementalRatio.estimate", option.IncrementalRatio.Estimate!.Value);
        var first = "The first step along the frontier, to {0}, costs {1} " + Braced(ChartText.Name(WorthWording.Currency(found))) + " for each " + WorthWording.One(found);
        return steps.Length == 1 ? new Sentence(first + ".", Name(steps[0]), Costs(steps[0]))
            : new Sentence(first + "; the last, to {2}, {3}.", Name(steps[0]), Costs(steps[0]), Name(steps[^1]), Costs(steps[^1]));
    }

    private static FigureReference Amount(string path, double value) => new(path, Cell.Number(value), Unit.Ratio);

    // A currency is the program file's word: braces in it are no places for figures.
    private static string Braced(string name) => name.Replace("{", "(", StringComparison.Ordinal).Replace("}", ")", StringComparison.Ordinal);

    private static string Left(WorthFindings found) =>
        found.Options.Any(option => !WorthWording.Leads(option) && option.Cost.Estimate is not null) ? " Other ways to confirm a positive, none of them on the frontier, stand in the table." : "";

    /// <summary>What an average hides: worth a picture where at least two options have a last step.</summary>
    private static Chart? AverageAndLast(WorthFindings found)
    {
        (double, double, double)? Of(string measure, string option) =>
            found.Figure(measure, option)?.Figure is { Estimate: > 0 and var estimate } figure ? (estimate, figure.Lower ?? estimate, figure.Upper ?? estimate) : null;
        ImmutableArray<MarginRow> rows =
        [
            .. found.Figures.Where(row => row.Measure == "average-cost").Select(row => new MarginRow(ChartText.Name(row.Basis), Of("average-cost", row.Basis), Of("marginal-cost", row.Basis)))
                .Where(row => row.Average is not null || row.Last is not null),
        ];
        if (rows.Count(row => row.Last is not null) < 2) return null;
        var (currency, one) = (ChartText.Name(WorthWording.Currency(found)), WorthWording.One(found));
        var dearest = rows.Where(row => row is { Average: not null, Last: not null }).MaxBy(row => row.Last!.Value.Estimate);
        Caption see = dearest is { Average: { } average, Last: { } last }
            ? new Sentence(
                "The dearest step, to {0}, costs {1} " + Braced(currency) + " for each " + one + " that it adds, where the average up to it is {2}.",
                Caption.Shown(dearest.Name), Price("marginal-cost", dearest.Name, last.Estimate), Price("average-cost", dearest.Name, average.Estimate)) : "";
        FigureReference Price(string measure, string name, double amount) =>
            found.Figures.FirstOrDefault(row => row.Measure == measure && ChartText.Name(row.Basis) == name && row.Figure.Estimate == amount) is { } row
                ? Amount(FigurePath.Row("worth.figures", row.Key) + ".figure.estimate", amount) : Amount(Caption.OfThePage, amount);
        string Words((double Estimate, double Lower, double Upper)? figure) => figure is { } some ? $"{Short(some.Estimate)} (limits {Short(some.Lower)} to {Short(some.Upper)})" : "not known";
        return MarginChart.Of(
            new ChartFrame(
                Margins, $"What one {one} costs: on average, and in the last step",
                (Caption)$"The farther the last step lies right of the average, the more the average hides of what it costs. Spending for each {one}, savings not counted," + WorthWording.ScopeOf(found, "for", ":") + $"averaged over all of an option, and of its last step alone, from the next less frequent one." + see,
                $"Spending in {currency} for each {one}. " + string.Join("; ", rows.Select(row => $"{row.Name}: on average {Words(row.Average)}, of the last step {Words(row.Last)}")) + ".",
                "worth-figures"),
            rows, $"{currency} for each {one}", Short);
    }

    private static Chart? Acceptability(WorthFindings found)
    {
        var order = found.Options.Select(option => option.Key).ToList();
        ImmutableArray<AcceptabilityLine> lines =
        [
            .. found.Acceptability.GroupBy(row => row.Option, StringComparer.Ordinal).OrderBy(rows => order.IndexOf(rows.Key)).ThenBy(rows => rows.Key, StringComparer.Ordinal)
                .Select(rows => new AcceptabilityLine(
                    ChartText.Name(WorthWording.Name(found, rows.Key)), [.. rows.OrderBy(row => row.Value).Select(row => (row.Value, row.Share, row.OnFrontier))], found.Judged?.Key == rows.Key)),
        ];
        if (lines.Length == 0 || lines[0].Points.Length < 2 || lines[0].Points[^1].Value <= lines[0].Points[0].Value) return null;
        var (currency, one) = (ChartText.Name(WorthWording.Currency(found)), WorthWording.One(found));
        var at = found.Value is { } stated && lines[0].Points.Any(point => point.Value == stated) ? found.Value : null;
        (string Name, double Share)[] Likeliest(double value) =>
            [.. lines.Select(line => (line.Name, line.Points.FirstOrDefault(point => point.Value == value).Share)).Where(one => one.Share > 0).OrderByDescending(one => one.Share)];
        Caption see = at is { } there && Likeliest(there) is { Length: > 0 } first
            ? new Sentence(
                "At the stated {0} " + Braced(currency) + ": {1}.", Amount("worth.value", there),
                Caption.Shown(string.Join(", ", first.Take(3).Select(one => $"{one.Name} in {WorthWording.Share(one.Share)}")))) : "";
        var last = lines[0].Points[^1].Value;
        return AcceptabilityChart.Of(
            new ChartFrame(
                Likely, $"Which way is the best, by what one {one} is worth",
                (Caption)"At the value you hold right, the line that is thick is the one to go by."
                + new Sentence("Share of {0} draws in which the net benefit of an option is the highest, by what one " + one + " is worth.", new FigureReference("worth.draws", Cell.Count(found.Draws), Unit.Count)) + see,
                $"Share of draws in which each option is the best, without limits, by the value of one {one} from {Short(lines[0].Points[0].Value)} to {Short(last)} {currency}. "
                + string.Join("; ", lines.Where(line => line.Most >= AcceptabilityChart.NamedFrom).Select(line =>
                    $"{line.Name}: {(at is { } value ? $"{WorthWording.Share(line.Points.First(point => point.Value == value).Share)} at the stated value, " : "")}{WorthWording.Share(line.Points[^1].Share)} at the highest"))
                + ".",
                "worth-acceptability"),
            lines, $"value of one {one}, {currency}", at, at is { } words ? $"stated: {Short(words)}" : "");
    }

    private static Chart? Tornado(Findings findings)
    {
        var found = findings.Worth;
        if (found.Judged is not { NetBenefit.Estimate: { } centre } judged) return null;
        var rows = found.Swings.Where(row => row.Swing > 0 && row.Low != row.High).ToArray();
        if (rows.Length == 0) return null;
        var best = found.Best?.Key;
        string End(WorthSwing row, double value, string option) =>
            WorthWording.End(findings, row.Figure, value) + (option == best ? "" : ": " + ChartText.Name(WorthWording.Name(found, option), 16));
        var bars = rows.Select(row => new SwingBar(CadenceViews.Capital(row.Name), End(row, row.AtLower, row.BestAtLower), End(row, row.AtUpper, row.BestAtUpper), row.Low, row.High)).ToImmutableArray();
        var changes = rows.Take(SwingChart.Most).Any(row => row.BestAtLower != best || row.BestAtUpper != best);
        var (name, currency) = (ChartText.Name(WorthWording.Name(judged.Option, judged.Confirmation)), ChartText.Name(WorthWording.Currency(found)));
        return SwingChart.Of(
            new ChartFrame(
                Swings, "Which figures matter most",
                (Caption)$"Where a bar crosses into loss, what it stands for decides whether it pays. Net benefit of {name} against no screening"
                + WorthWording.ScopeOf(found, "for", ", with one figure at a time at the ends of what it may be.") + "Below 0 it does not pay."
                + (changes ? " Where another option than now would be the best, its name stands beside the value." : ""),
                $"Net benefit in {currency}, {Short(centre)} with all at their centre. " + string.Join("; ", bars.Take(SwingChart.Most).Select(bar =>
                    $"{bar.Name}: {Short(bar.AtLower)} at {bar.LowerWords}, {Short(bar.AtUpper)} at {bar.UpperWords}")) + ".",
                "worth-swings"),
            bars, centre, $"net benefit, {currency}");
    }

    private static string Short(double value) => WorthWording.Money(value);
}
