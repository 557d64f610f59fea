using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>How much infection the last days of the data had, beside the average over all of them.</summary>
internal static class PeriodSentences
{
    public static Sentence? Of(WorthFindings findings)
    {
        if (findings.Periods is not [{ } all, _, ..]) return null;
        var figures = new List<FigureReference> { Figure.Number(Path(all) + ".weeklyIncidence.estimate", all.WeeklyIncidence.Estimate, Unit.Ratio) };
        var parts = findings.Periods.Skip(1).Select(row => Part(row, figures)).ToList();
        return new Sentence("Infection was not the same all the time: " + string.Join("; ", parts) + "; the average of all days is {0}.", [.. figures]);
    }

    private static string Part(WorthPeriod row, List<FigureReference> figures)
    {
        var at = figures.Count;
        var path = Path(row) + ".weeklyIncidence";
        figures.Add(Figure.Count(Path(row) + ".days", row.Days));
        figures.Add(Figure.Number(path + ".estimate", row.WeeklyIncidence.Estimate, Unit.Ratio));
        var limits = row.WeeklyIncidence is { Lower: not null, Upper: not null };
        if (limits)
        {
            figures.Add(Figure.Number(path + ".lower", row.WeeklyIncidence.Lower, Unit.Ratio));
            figures.Add(Figure.Number(path + ".upper", row.WeeklyIncidence.Upper, Unit.Ratio));
        }

        var text = FormattableString.Invariant($"in the last {{{at}}} days {{{at + 1}}} in 1,000 people were infected each week") + (limits ? FormattableString.Invariant($" ({{{at + 2}}} to {{{at + 3}}})") : "");
        if (row.Option == WorthRung.None) return text + ", where no screening gains most";
        figures.Add(Figure.Name(Path(row) + ".option", row.Option));
        return text + FormattableString.Invariant($", where \"{{{figures.Count - 1}}}\" gains most");
    }

    private static string Path(WorthPeriod row) => FigurePath.Row("worth.periods", row.Period);
}
