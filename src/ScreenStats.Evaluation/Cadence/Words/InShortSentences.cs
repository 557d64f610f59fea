using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>How often to screen in short: the option and how sure that is, what it gives, and what the last days of the data say of it.</summary>
internal static class InShortSentences
{
    /// <summary>Empty where what an option gives is not known: the answer is short then.</summary>
    public static IEnumerable<Sentence> Of(CadenceFindings findings)
    {
        var figures = new CadenceFigures(findings);
        if (findings.Leading is not { } leading || !figures.Knows(leading, CadenceMeasure.InfectiousDaysRemoved)) yield break;
        yield return OpeningSentences.Of(findings, figures, leading, reason: leading.IsNone);
        if (leading.IsNone)
        {
            if (IncidenceSentences.InShort(findings) is { } last) yield return last;
            yield break;
        }

        var removed = figures.Of(leading, CadenceMeasure.InfectiousDaysRemoved);
        yield return new Sentence(
            $"In {{0}} {figures.DaysWord} it removes {{1}} infectious days outside isolation ({{2}} interval {{3}} to {{4}}) for {{5}} {figures.PeopleWord}"
            + (findings.LeadingBasis == CadenceBasis.AllBroughtIn ? ", if all infections are brought in." : "."),
            figures.Days, removed[0], figures.Confidence, removed[1], removed[2], figures.People);
        if (IncidenceSentences.InShort(findings) is { } recent) yield return recent;
    }
}
