using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Trends.Changes;
using ScreenStats.Evaluation.Trends.Growth;

namespace ScreenStats.Evaluation.Trends.Words;

/// <summary>Trends in words: for each measure whether it rises, since when and how fast; what that stands on; then dated changes, the days of the week, the rate outside.</summary>
internal static class TrendSentences
{
    public static ImmutableArray<Sentence> Of(TrendFindings findings)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        foreach (var series in findings.Series.Where(series => series.Leads))
        {
            if (series.Events == 0)
            {
                sentences.Add(Nothing(series) with { BeginsParagraph = true });
                continue;
            }

            sentences.AddRange(Paragraph([.. GrowthSentences.Of(findings, series), .. SeriesSentences.Of(series), .. ChangeSentences.Of(findings, series)]));
        }

        sentences.AddRange(Paragraph([.. SurroundingSentences.Weekdays(findings), .. SurroundingSentences.Community(findings)]));
        return sentences.Count == 0 ? [new Sentence("Nothing was counted, so there is no trend.")] : sentences.ToImmutable();
    }

    private static IEnumerable<Sentence> Paragraph(ImmutableArray<Sentence> sentences) => sentences.Select((sentence, index) => sentence with { BeginsParagraph = index == 0 });

    private static Sentence Nothing(TrendSeriesFinding series)
    {
        var wording = new Wording();
        var counted = wording.Count(FigurePath.Row("trends.series", series.Key) + ".trials", series.Trials);
        return wording.Sentence(series.Trials == 0 ? $"Nothing was counted of {TrendWords.Name(series.Measure)} ({counted} trials), so it has no trend."
            : $"No event was counted in {counted} trials, so {TrendWords.Name(series.Measure)} has no trend.");
    }
}
