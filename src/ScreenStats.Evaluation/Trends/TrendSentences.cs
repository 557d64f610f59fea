using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Trends;

/// <summary>Trends in words.</summary>
internal static class TrendSentences
{
    public static ImmutableArray<Sentence> Of(TrendFindings findings)
    {
        if (findings.Series.IsEmpty) return [new Sentence("Nothing was counted, so there is no trend.")];
        return [new Sentence("{0} valid tests.", Figure.Count(FigurePath.Row("trends.series", findings.Series[0].Key) + ".trials", findings.Series[0].Trials))];
    }
}
