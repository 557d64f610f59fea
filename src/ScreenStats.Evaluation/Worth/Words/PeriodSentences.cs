using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>How much infection the last days of the data had, beside the average over all of them.</summary>
internal static class PeriodSentences
{
    public static Sentence? Of(WorthFindings findings)
    {
        if (findings.Periods is not [{ } all, _, ..]) return null;
        var figures = new List<FigureReference> { Incidence(all)[0] };
        var parts = findings.Periods.Skip(1).Select(row => Part(new WorthWords(findings), row, figures)).ToList();
        return new Sentence("Infection was not the same all the time: " + string.Join("; ", parts) + "; the average of all days is {0}.", [.. figures]);
    }

    /// <summary>How many days it has.</summary>
    public static FigureReference Days(WorthPeriod row) => Figure.Count(Path(row) + ".days", row.Days);

    /// <summary>How many in 1,000 people were infected each week, and its limits where there are any.</summary>
    public static FigureReference[] Incidence(WorthPeriod row)
    {
        var (path, incidence) = (Path(row) + ".weeklyIncidence", row.WeeklyIncidence);
        var estimate = Figure.Number(path + ".estimate", incidence.Estimate, Unit.Ratio);
        return incidence is { Lower: not null, Upper: not null } ? [estimate, Figure.Number(path + ".lower", incidence.Lower, Unit.Ratio), Figure.Number(path + ".upper", incidence.Upper, Unit.Ratio)] : [estimate];
    }

    private static string Part(WorthWords words, WorthPeriod row, List<FigureReference> figures)
    {
        var at = figures.Count;
        figures.Add(Days(row));
        var incidence = Incidence(row);
        figures.AddRange(incidence);
        var limits = incidence.Length > 1;
        var text = FormattableString.Invariant($"in the last {{{at}}} days{OnCases(row, figures)} {{{at + 1}}} in 1,000 people were infected each week") + (limits ? FormattableString.Invariant($" ({{{at + 2}}} to {{{at + 3}}})") : "");
        text += $", where {Named(row, "option", row.Option, figures)}{words.Otherwise(row.Option == WorthRung.None ? null : row.Confirmation)} gains most";
        return row.OptionAtUpper is not { } upper || upper == row.Option ? text : text + $" (at the upper limit {Named(row, "optionAtUpper", upper, figures)}{words.Otherwise(upper == WorthRung.None ? null : row.ConfirmationAtUpper)})";
    }

    private static string OnCases(WorthPeriod row, List<FigureReference> figures)
    {
        figures.Add(Figure.Count(Path(row) + ".cases", row.Cases));
        return FormattableString.Invariant($", with {{{figures.Count - 1}}} {Figure.Plural(row.Cases, "case", "cases")},");
    }

    private static string Named(WorthPeriod row, string property, string option, List<FigureReference> figures)
    {
        if (option == WorthRung.None) return "no screening";
        figures.Add(Figure.Name($"{Path(row)}.{property}", option));
        return FormattableString.Invariant($"\"{{{figures.Count - 1}}}\"");
    }

    private static string Path(WorthPeriod row) => FigurePath.Row("worth.periods", row.Period);
}
