using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Evaluation.Trends.Growth;
using ScreenStats.Evaluation.Trends.Words;

namespace ScreenStats.Evaluation.Answers.InShort;

/// <summary>Whether it is getting better, in one sentence: the first rate that is followed, of late.</summary>
internal static class BetterInShort
{
    /// <summary>What is known.</summary>
    public static Sentence Of(TrendFindings findings)
    {
        var said = findings.Sentences[0] with { BeginsParagraph = false };
        if (findings.Series.FirstOrDefault(series => series is { Leads: true }) is not { Events: > 0 } first) return said;
        var rows = findings.Growth.Where(row => row.Measure == first.Measure && row.Basis == first.Basis && row.By == Grouping.Program).ToList();
        var row = rows.FirstOrDefault(one => one.Segment == GrowthSegment.RecentEightWeeks)
            ?? rows.LastOrDefault(one => one.Segment == GrowthSegment.BetweenChanges && one.Direction != GrowthDirection.CannotTell)
            ?? rows.Single(one => one.Segment == GrowthSegment.WholeSpan);
        if (row.GrowthPerWeek is not { Estimate: { } estimate, Lower: not null, Upper: not null } growth) return said;
        var (wording, path, name) = (new Wording(), FigurePath.Row("trends.growth", row.Key), TrendWords.Name(first.Measure));
        var opening = row.Direction switch
        {
            GrowthDirection.Rises => TrendWords.Subject(first.Measure) + " rises",
            GrowthDirection.Falls => TrendWords.Subject(first.Measure) + " falls",
            _ => $"Whether {name} rises or falls cannot be told",
        };
        var left = first.Basis switch
        {
            TrendBasis.All => "",
            TrendBasis.WithoutFlaggedLots => ", without flagged lots,",
            TrendBasis.Routine => ", without outbreaks,",
            _ => ", without flagged lots and outbreaks,",
        };
        return wording.Sentence(
            $"{opening}: over the complete {first.FittedBy}s from {wording.Day(path + ".from", row.From)} to {wording.Day(path + ".to", row.To)}{left} {TrendWords.Growing(first.Measure)} changed by "
            + $"{wording.Share(path + ".growthPerWeek.estimate", estimate)} a week ({wording.Limits(path + ".growthPerWeek", growth, wording.Share, confidence: true)}), whether infection, those tested or a device changed; this is no forecast.");
    }
}
