using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.LotTests;

/// <summary>Comparisons within strata in words: the dangerous direction first.</summary>
internal static class PlaceTestSentences
{
    // Above this a probability in figures would claim more than the model knows.
    private const double AllButCertain = 0.999;

    public static ImmutableArray<Sentence> Of(PlaceTestFindings findings)
    {
        var lot = findings.By == "lot";
        var list = lot ? "lotTests" : "siteTests";
        var (one, many, same) = lot ? ("lot", "lots", "at the same sites in the same weeks") : ("site", "sites", "with the same lots in the same weeks");
        if (findings.Rows.IsEmpty) return [new Sentence(lot ? "No lot is recorded, so lots cannot be compared within sites and weeks." : "No run was counted, so sites cannot be compared.")];
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        foreach (var row in findings.Rows.Where(row => row.LowYield)) sentences.Add(LowYield(list, row, same));
        foreach (var row in findings.Rows.Where(row => row.Material)) sentences.Add(Material(list, row, one, same));
        foreach (var row in findings.Rows.Where(row => row is { Material: false, Direction: "more", PHolm: < StrataJudge.ErrorRate } && row.Measure != TestMeasure.FailedControls.Name))
        {
            var path = FigurePath.Row(list + ".rows", row.Key);
            sentences.Add(new Sentence(
                $"{Capital(one)} {{0}} has more {Events(row)} than chance readily makes, {{1}} against {{2}} expected, but the excess may be small, the lower limit is {{3}} times the others' {Rate(row)}: not material.",
                Figure.Name(path + ".place", row.Place), Figure.Count(path + ".observed", row.Observed), Say.Ratio(path + ".expected", row.Expected), Say.Ratio(path + ".ratio.lower", row.Ratio.Lower)));
        }

        foreach (var family in findings.Families.Where(family => family.Compared > 1))
        {
            if (findings.Rows.Any(row => row.Measure == family.Measure && (row.Material || row.LowYield || row.PHolm < StrataJudge.ErrorRate))) continue;
            var path = FigurePath.Row(list + ".families", family.Measure);
            var what = family.Measure switch
            {
                "refuted" => "materially more refuted positives than the others",
                "invalid" => "materially more inconclusive and invalid runs than the others",
                "cases" => "so few cases that it must be taken for one that misses infected people",
                _ => "more failed positive control swabs than the others",
            };
            sentences.Add(new Sentence(
                $"Of {{0}} {many} compared {(family.Measure == "failed-controls" ? "at the same sites" : same)}, none had {what}.", Figure.Count(path + ".compared", family.Compared)));
        }

        if (findings.Families.FirstOrDefault(family => family.Compared > 1) is { } any)
        {
            var path = FigurePath.Row(list + ".families", any.Measure);
            sentences.Add(new Sentence(
                $"Each measure is one family of comparisons: if nothing were wrong, and runs were independent, the probability that any of its {many} is marked would be at most {{0}}. A {one} that is not marked is not proved good.",
                Say.Confidence(path + ".errorRate", any.ErrorRate)));
        }
        else
        {
            sentences.Add(new Sentence($"No {one} was used beside another {same} with an event to compare, so nothing can be said of any."));
        }

        return sentences.ToImmutable();
    }

    private static Sentence Material(string list, PlaceTestRow row, string one, string same)
    {
        var path = FigurePath.Row(list + ".rows", row.Key);
        var figures = new List<FigureReference>
        {
            Figure.Name(path + ".place", row.Place), Figure.Count(path + ".observed", row.Observed), Say.Ratio(path + ".expected", row.Expected),
            Say.Ratio(path + ".ratio.lower", row.Ratio.Lower), Figure.Number(path + ".pHolm", row.PHolm, Unit.PValue),
        };
        var text = $"{Capital(one)} {{0}} needs looking into: {{1}} {Events(row)} where {{2}} would be expected if all {one}s were alike {same} (adjusted p {{4}}); ";
        if (row.Ratio is { Estimate: { } ratio, Upper: { } upper })
        {
            text += $"{{5}} times the others' {Rate(row)}, limits {{3}} to {{6}}, which is material.";
            figures.AddRange([Say.Ratio(path + ".ratio.estimate", ratio), Say.Ratio(path + ".ratio.upper", upper)]);
        }
        else
        {
            text += "the others had none, and its rate is at least {3} times theirs, which is material.";
        }

        if (row.ChanceAboveTwice > AllButCertain) text += " It is all but certain that its rate is more than twice the program's.";
        else if (row.ChanceAboveTwice is { } chance)
        {
            text += $" The probability that its rate is more than twice the program's is {{{figures.Count}}}.";
            figures.Add(Say.Share(path + ".chanceAboveTwice", chance));
        }

        return new Sentence(text, [.. figures]);
    }

    private static Sentence LowYield(string list, PlaceTestRow row, string same)
    {
        var path = FigurePath.Row(list + ".rows", row.Key);
        var figures = new[]
        {
            Figure.Name(path + ".place", row.Place), Figure.Count(path + ".observed", row.Observed), Say.Ratio(path + ".expected", row.Expected),
            Figure.Number(path + ".pHolm", row.PHolm, Unit.PValue),
        };
        var start = row.Measure == TestMeasure.Cases.Name
            ? $"Lot {{0}} may miss infected people: it found {{1}} cases where {{2}} would be expected if all lots were alike {same} (adjusted p {{3}})."
            : "Lot {0} may miss infected people: {1} of its positive control swabs failed where {2} would be expected if all lots were alike at the same sites (adjusted p {3}).";
        return new Sentence(start + " Whoever is responsible for the screening should look at the negatives of this lot: a negative run does not rule out infection.", [.. figures]);
    }

    private static string Events(PlaceTestRow row) => row.Measure == TestMeasure.Invalid.Name ? TestMeasure.Invalid.Events : row.Measure == TestMeasure.Refuted.Name ? TestMeasure.Refuted.Events : TestMeasure.FailedControls.Events;

    // Whole runs are compared by their odds, weighted ones by their rates.
    private static string Rate(PlaceTestRow row) => row.Measure == TestMeasure.Refuted.Name || row.Measure == TestMeasure.Cases.Name ? "rate" : "odds";

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
