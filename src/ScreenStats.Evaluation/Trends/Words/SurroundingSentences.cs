using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Trends.Words;

/// <summary>The days of the week, and the rate outside.</summary>
internal static class SurroundingSentences
{
    /// <summary>Below this chance the days are told to differ: three measures are looked at.</summary>
    private const double Differ = 0.01;

    public static IEnumerable<Sentence> Weekdays(TrendFindings findings)
    {
        foreach (var days in findings.Weekdays.Where(row => row.Leads).GroupBy(row => row.Measure))
        {
            if (days.First().PValue is not < Differ) continue;
            var far = days.Where(row => row.OddsRatio > 0).MaxBy(row => Math.Abs(Math.Log(row.OddsRatio!.Value)));
            if (far is null) continue;
            var (wording, path) = (new Wording(), FigurePath.Row("trends.weekdays", far.Key));
            var limits = far is { RatioLower: { } lower, RatioUpper: { } upper } ? $", {wording.Ratio(path + ".ratioLower", lower)} to {wording.Ratio(path + ".ratioUpper", upper)}" : "";
            yield return wording.Sentence(
                $"{TrendWords.Subject(days.Key)} differs by the day of the week more than chance makes it (chance of as much: {wording.Add(Figure.Number(path + ".pValue", far.PValue, Unit.PValue))}), most on {wording.Name(path + ".weekday", far.Weekday)}: "
                + $"{wording.Ratio(path + ".oddsRatio", far.OddsRatio)} times the odds of the mean day{limits}. Who is tested on which day may be the reason.");
        }
    }

    public static IEnumerable<Sentence> Community(TrendFindings findings)
    {
        if (findings.CommunitySource is not { } source) yield break;
        var points = findings.Points.Where(point => point is { Measure: TrendMeasure.Positivity, Leads: true, Complete: true, Community: not null, Smooth: not null }).ToList();
        if (points.Count < 2)
        {
            yield return new Sentence("The program file gives a rate outside, but for fewer than two of the complete periods, so it is not set beside positivity.");
            yield break;
        }

        var wording = new Wording();
        string At(TrendRow row, string figure) => FigurePath.Row("trends.points", row.Key) + figure;
        string Outside(TrendRow row) => findings.CommunityMeasure == "positivity" ? wording.Share(At(row, ".community"), row.Community) : wording.Ratio(At(row, ".community"), row.Community);
        string Course(Func<TrendRow, double?> value, Func<TrendRow, string> say)
        {
            var top = points.MaxBy(value)!;
            var over = value(top) == value(points[0]) || value(top) == value(points[^1]) ? "" : $" over {say(top)} ({points[0].Period.Split('-')[0]} from {wording.Day(At(top, ".periodStart"), top.PeriodStart)})";
            return $"from {say(points[0])}{over} to {say(points[^1])}";
        }

        var unit = findings.CommunityMeasure == "positivity" ? "" : " cases in 100,000 people a week";
        var outside = $"The rate outside ({wording.Name("trends.communitySource", source)}) went {Course(point => point.Community, Outside)}{unit}; ";
        yield return wording.Sentence(
            outside + $"the smooth of positivity here {Course(point => point.Smooth, point => wording.Share(At(point, ".smooth"), point.Smooth))}. "
            + "Compare their courses, not their heights: other people are tested outside, mostly with symptoms.");
    }
}
