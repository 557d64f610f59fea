using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Evaluation.Trends.Growth;

namespace ScreenStats.Evaluation.Answers;

/// <summary>What a positive was worth lately, where that is not what it was over all: how it changed, what the last complete periods counted, and where the smooth through them ends.</summary>
internal static class OfLate
{
    /// <summary>So many complete periods are told.</summary>
    private const int Told = 4;

    /// <summary>The sentences; none where the share is not seen to rise or fall, or periods are not weeks.</summary>
    public static IEnumerable<Sentence> Of(TrendFindings findings)
    {
        if (findings.Leading(TrendMeasure.PredictiveValue) is not { Events: > 0 } series) yield break;
        var recent = findings.Growth.FirstOrDefault(row => row.Measure == series.Measure && row.Basis == series.Basis && row is { By: Grouping.Program, Segment: GrowthSegment.RecentEightWeeks });
        if (recent is null || recent.Direction == GrowthDirection.CannotTell) yield break;
        ImmutableArray<TrendRow> rows =
        [
            .. findings.Points.Where(row => row.Measure == series.Measure && row.Basis == series.Basis && row is { By: Grouping.Program, Complete: true, Period: "week" }).OrderBy(row => row.PeriodStart).TakeLast(Told),
        ];
        if (rows.Length < Told || rows.All(row => row.Trials == 0) || rows[^1].Smooth is not { } smooth) yield break;
        yield return GrowthSentences.Of(findings, series).First() with { BeginsParagraph = false };
        var figures = ImmutableArray.CreateBuilder<FigureReference>();
        string Add(FigureReference figure)
        {
            figures.Add(figure);
            return FormattableString.Invariant($"{{{figures.Count - 1}}}");
        }

        string Path(TrendRow row) => FigurePath.Row("trends.points", row.Key);
        var weeks = rows.Select(row => $"{Add(Figure.Count(Path(row) + ".events", row.Events))} of {Add(Figure.Count(Path(row) + ".trials", row.Trials))}").ToList();
        var last = Path(rows[^1]);
        var end = Add(Say.Share(last + ".smooth", smooth));
        var limits = rows[^1].SmoothLower is { } lower && rows[^1].SmoothUpper is { } upper ? $" (limits {Add(Say.Share(last + ".smoothLower", lower))} to {Add(Say.Share(last + ".smoothUpper", upper))})" : "";
        yield return new Sentence(
            $"In the last four complete weeks {string.Join(", ", weeks.Take(Told - 1))} and {weeks[^1]} positives with a conclusive result were confirmed{Left(series.Basis)}; the smooth through all weeks ends at {end}{limits}: that, not the share over all, speaks of a positive today.",
            [.. figures]);
    }

    private static string Left(TrendBasis basis) => basis switch
    {
        TrendBasis.All => "",
        TrendBasis.WithoutFlaggedLots => ", without flagged lots",
        TrendBasis.Routine => ", without runs because of an outbreak",
        _ => ", without flagged lots and runs because of an outbreak",
    };
}
