using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Comparisons;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Comparisons;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Pages.Comparisons;

/// <summary>Pictures of levels side by side: the funnel and the adjusted shares of positivity, and the same of another measure where something lies outside.</summary>
internal static class ComparisonFigures
{
    private const int Most = 3;
    private const int Told = 5;

    /// <summary>At most three.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        // Where small counts are hidden a place in a picture would show them.
        if (findings.Disclosure is not null) return [];
        var words = ComparedWords.Of(findings.Comparison.By);
        var charts = new List<Chart>();
        foreach (var summary in findings.Comparison.Summaries.Where(summary => summary.Leads).OrderBy(summary => summary.Measure))
        {
            var rows = findings.Comparison.RowsOf(summary).ToImmutableArray();
            var first = summary.Measure == ComparisonMeasure.Positivity;
            if (!first && summary.StandingOut.IsEmpty) continue;
            if (Funnel(findings.Comparison, summary, rows, words) is { } funnel) charts.Add(funnel);
            if (!words.NamesPeople && !charts.Exists(chart => chart.Id.StartsWith("adjusted", StringComparison.Ordinal)) && Adjusted(summary, rows, words) is { } adjusted) charts.Add(adjusted);
        }

        return [.. charts.Take(Most)];
    }

    private static Chart? Funnel(ComparisonFindings found, ComparisonSummary summary, ImmutableArray<ComparisonRow> rows, ComparedWords words)
    {
        var dots = rows.Where(row => row.Place is { Rate: not null, Trials: > 0 }).Select(row => new FunnelDot(
            row.Level, row.Place.Trials, row.Place.Rate!.Value, Standing(row), row.Place.Limits is > 0.99)).ToImmutableArray();
        var limits = found.Funnel.Where(row => row.Measure == summary.Measure && row.Basis == summary.Basis).ToArray();
        ImmutableArray<FunnelLimit> Limits(bool usual) =>
            [.. limits.Where(row => row.AllowsForUsualDifferences == usual).OrderBy(row => row.Trials).Select(row => new FunnelLimit(row.Trials, row.Lower95, row.Upper95, row.Lower998, row.Upper998))];
        var (chance, wider) = (Limits(usual: false), Limits(usual: true));
        if (dots.Length < 2 || summary.Rate is not { } centre || limits.Length < 2) return null;
        var outside = dots.Where(dot => dot.Standing != LevelStanding.Within).OrderByDescending(dot => dot.Far).ThenByDescending(dot => dot.Trials).ToArray();
        var measure = ComparedWords.Measure(summary.Measure);
        var adjusted = summary.AdjustedFor.IsEmpty ? "" : $", adjusted for {Join(summary.AdjustedFor)}";
        var frame = new ChartFrame(
            $"funnel-{ComparisonNames.Of(summary.Measure)}", $"{Capital(measure)} of {words.Many} against their size, with limits",
            Outside(dots, words.Many) + $"{Capital(measure)} of {words.Many}{adjusted}{Left(summary)}.",
            $"{dots.Length.ToString("N0", CultureInfo.InvariantCulture)} {words.Many} by size and {measure}{adjusted}, with limits that narrow as size grows around {Print(centre)}. "
            + (outside.Length == 0 ? "None lies outside the 95 % limits."
                : $"Outside: " + (words.NamesPeople ? outside.Length.ToString("N0", CultureInfo.InvariantCulture)
                    : string.Join(", ", outside.Take(Told).Select(dot => $"{ChartText.Name(dot.Name)} {dot.Standing.Word()} with {Print(dot.Rate)}")) + (outside.Length > Told ? string.Create(CultureInfo.InvariantCulture, $" and {outside.Length - Told:N0} more") : "")) + "."),
            "comparison") { Quantity = Quantity(summary.Measure) };
        return FunnelChart.Of(frame, dots, centre, chance, wider, words.Many, Counted(summary), named: !words.NamesPeople) with { Levels = Levels(words) };
    }

    private static Chart? Adjusted(ComparisonSummary summary, ImmutableArray<ComparisonRow> rows, ComparedWords words)
    {
        var levels = rows.Where(row => row.Adjusted is { Estimate: not null, Lower: not null, Upper: not null }).Select(row => new AdjustedLevel(
            row.Level, row.Share.Trials, row.Share.Estimate, row.Adjusted.Estimate!.Value, row.Adjusted.Lower!.Value, row.Adjusted.Upper!.Value, Standing(row), row.Place.Limits is > 0.99)).ToImmutableArray();
        if (levels.Length < 2) return null;
        var (highest, lowest) = (levels.MaxBy(level => level.Adjusted)!, levels.MinBy(level => level.Adjusted)!);
        string Say(AdjustedLevel level) => $"{ChartText.Name(level.Name)} {Print(level.Adjusted)} (limits {Print(level.Lower)} to {Print(level.Upper)}{(level.Raw is { } raw ? ", raw " + Print(raw) : "")})";
        var measure = ComparedWords.Measure(summary.Measure);
        var frame = new ChartFrame(
            $"adjusted-{ComparisonNames.Of(summary.Measure)}", $"{Capital(measure)} of {words.Many}, adjusted and raw",
            Extremes(rows, highest, lowest) + $"{Capital(measure)} of {words.Many}: adjusted{(summary.AdjustedFor.IsEmpty ? " for how few their counts are" : $" for {Join(summary.AdjustedFor)}")}, and raw beside it{Left(summary)}.",
            $"{levels.Length.ToString("N0", CultureInfo.InvariantCulture)} {words.Many} in order of their adjusted share, with limits. Highest: {Say(highest)}. Lowest: {Say(lowest)}.", "comparison") { Quantity = Quantity(summary.Measure) };
        return AdjustedChart.Of(frame, levels, summary.Rate, words.Many) with { Levels = Levels(words) };
    }

    private static ChartLevels Levels(ComparedWords words) => words == ComparedWords.Of("site") ? ChartLevels.Site : ChartLevels.Other;

    private static LevelStanding Standing(ComparisonRow row) => row.Place.Standing switch
    {
        ComparisonStanding.Above => LevelStanding.Above,
        ComparisonStanding.Below => LevelStanding.Below,
        _ => LevelStanding.Within,
    };

    private static Caption Outside(ImmutableArray<FunnelDot> dots, string many)
    {
        var (above, below) = (dots.Count(dot => dot.Standing == LevelStanding.Above), dots.Count(dot => dot.Standing == LevelStanding.Below));
        return above + below == 0
            ? new Sentence("All {0} " + many + " lie within the limits for their size: chance explains how they differ.", Caption.Drawn(dots.Length))
            : new Sentence("{0} of {1} " + many + " lie above the limits for their size and {2} below.", Caption.Drawn(above), Caption.Drawn(dots.Length), Caption.Drawn(below));
    }

    private static Caption Extremes(ImmutableArray<ComparisonRow> rows, AdjustedLevel highest, AdjustedLevel lowest)
    {
        var figures = ImmutableArray.CreateBuilder<FigureReference>();
        foreach (var level in (ReadOnlySpan<AdjustedLevel>)[highest, lowest])
        {
            var row = rows.First(one => one.Level == level.Name);
            var path = FigurePath.Row("comparison.rows", row.Key);
            figures.Add(new(path + ".level", Cell.Text(row.Level), Unit.Text));
            figures.AddRange(See.Share(path + ".adjusted.estimate", row.Adjusted.Estimate), See.Share(path + ".adjusted.lower", row.Adjusted.Lower), See.Share(path + ".adjusted.upper", row.Adjusted.Upper));
        }

        return new Sentence(
            "Once adjusted they reach from {0} with {1} (limits {2} to {3}) down to {4} with {5} (limits {6} to {7})" + (highest.Lower > lowest.Upper ? "." : "; these limits overlap."), figures.ToImmutable());
    }

    // Here refuted ones are counted among positives with a conclusion, elsewhere among valid tests.
    private static string Quantity(ComparisonMeasure measure) => measure switch
    {
        ComparisonMeasure.Positivity => "positivity",
        ComparisonMeasure.InvalidRuns => "unusable runs",
        _ => "refuted positives among those with a conclusion",
    };

    private static string Counted(ComparisonSummary summary) => summary.Measure switch
    {
        ComparisonMeasure.InvalidRuns => "runs",
        ComparisonMeasure.Refuted => "positives confirmed or refuted",
        _ => "valid tests",
    };

    /// <summary>What the basis leaves out, in words.</summary>
    private static string Left(ComparisonSummary summary) => summary.Basis switch
    {
        ComparisonBasis.WithoutFlaggedLots => "; without the runs of flagged lots",
        ComparisonBasis.Routine => "; without the runs taken because of an outbreak",
        ComparisonBasis.RoutineWithoutFlaggedLots => "; without the runs of flagged lots and those taken because of an outbreak",
        _ => "",
    };

    private static string Join(ImmutableArray<string> adjusted)
    {
        string[] words = [.. adjusted.Select(word => word == "kit" ? "device" : word)];
        return words.Length < 2 ? string.Join("", words) : string.Join(", ", words[..^1]) + " and " + words[^1];
    }

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];

    private static string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
}
