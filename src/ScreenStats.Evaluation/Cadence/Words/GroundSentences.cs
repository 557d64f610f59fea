using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>What the answer rests on, and what is not known.</summary>
internal static class GroundSentences
{
    private const int Told = 3;

    /// <summary>The assumptions that matter most.</summary>
    public static IEnumerable<Sentence> Matters(CadenceFindings findings)
    {
        var swings = findings.Swings.Where(swing => swing.Swing > 0).Take(Told).ToList();
        if (swings.Count == 0) yield break;
        var figures = new List<FigureReference>();
        string Part(CadenceSwing swing)
        {
            var path = FigurePath.Row("cadence.swings", swing.Assumption);
            var at = figures.Count;
            var (low, high) = (Figure.Number(path + ".low", swing.Low, Unit.Ratio), Figure.Number(path + ".high", swing.High, Unit.Ratio));
            figures.Add(Figure.Name(path + ".name", swing.Name));
            figures.AddRange(swing.Low <= swing.High ? [low, high] : [high, low]);
            return FormattableString.Invariant($"{{{at}}} ({{{at + 1}}} to {{{at + 2}}})");
        }

        var parts = swings.ConvertAll(Part);
        var list = parts.Count == 1 ? parts[0] : string.Join(", ", parts.Take(parts.Count - 1)) + " and " + parts[^1];
        yield return new Sentence("What the infectious days removed depend on most, each over its own range with the others at their centre: " + list + ".", [.. figures]);
        // By all of them, also those that move the days less.
        var chosen = findings.Swings.SelectMany(swing => new[] { (swing, swing.OptionAtLower, ".optionAtLower"), (swing, swing.OptionAtUpper, ".optionAtUpper") })
            .Where(one => one.Item2 is not null).DistinctBy(one => one.Item2).ToList();
        if (chosen.Count == 1) yield return new Sentence("None of all that is uncertain changes the choice by itself.");
        if (chosen.Count < 2) yield break;
        var names = chosen.ConvertAll(one => Figure.Name(FigurePath.Row("cadence.swings", one.swing.Assumption) + one.Item3, one.Item2!));
        var text = Enumerable.Range(0, names.Count).Select(at => FormattableString.Invariant($"\"{{{at}}}\"")).ToList();
        yield return new Sentence("Over the ranges of all that is uncertain, one at a time, the option to choose is one of " + string.Join(", ", text.Take(text.Count - 1)) + " and " + text[^1] + ".", [.. names]);
    }

    /// <summary>The incidence.</summary>
    public static IEnumerable<Sentence> Incidence(CadenceFindings findings)
    {
        var incidence = findings.Assumptions.FirstOrDefault(row => row.Assumption == "incidence");
        var found = findings.Assumptions.FirstOrDefault(row => row.Assumption == "found-per-person-day");
        if (incidence is { Value: { } value })
        {
            const string Path = "cadence.assumptions[incidence]";
            var stated = incidence.Origin == CadenceOrigin.Stated;
            var opening = stated ? "The program file states that {0} of people are infected each day" : "By the cases found, {0} of people were infected each day";
            yield return incidence is { Lower: { } lower, Upper: { } upper }
                ? new Sentence(opening + " ({1} interval {2} to {3})" + (stated ? "." : ": an incidence, under the gaps between screens as they were, and no prevalence."),
                    Figure.Number(Path + ".value", value, Unit.Proportion), new CadenceFigures(findings).Confidence, Figure.Number(Path + ".lower", lower, Unit.Proportion), Figure.Number(Path + ".upper", upper, Unit.Proportion))
                : new Sentence(opening + ".", Figure.Number(Path + ".value", value, Unit.Proportion));
        }
        else if (found is { Value: { } rate, Lower: { } lower, Upper: { } upper })
        {
            const string Path = "cadence.assumptions[found-per-person-day]";
            yield return new Sentence(
                "Found were cases in {0} of person-days ({1} interval {2} to {3}); more people than that were infected, how many more is not known.",
                Figure.Number(Path + ".value", rate, Unit.Proportion), new CadenceFigures(findings).Confidence, Figure.Number(Path + ".lower", lower, Unit.Proportion), Figure.Number(Path + ".upper", upper, Unit.Proportion));
        }
    }

    /// <summary>What stating one more figure would allow.</summary>
    public static IEnumerable<Sentence> Missing(CadenceFindings findings)
    {
        if (findings.Missing.IsEmpty) yield break;
        yield return new Sentence("What is not stated in the program file is not made up; what stating it would allow is listed on the page and in the findings.");
    }
}
