using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Conduct;

/// <summary>What the shares and differences of conduct say.</summary>
internal static class ConductRateSentences
{
    private const int MostNamed = 3;

    private static readonly (string Measure, string What)[] Spoken =
    [
        ("read-outside-window", "runs read outside the device's window"), ("expired-lot", "runs with an expired lot"), ("beyond-kit-contents", "runs beyond what their kit holds"),
        (ConductMeasures.RepeatNotDone, "repeats not done on the same day"), (ConductMeasures.Unusable, "unusable runs"),
    ];

    public static ImmutableArray<Sentence> Of(ConductFindings found) =>
    [
        .. Window(found),
        .. Spoken.SelectMany(one => StandsOut(found, one.Measure, one.What)),
        .. Operators(found),
        .. found.Contrasts.Where(contrast => contrast is { Grouping: Grouping.Collection, Measure: PersonMeasure.InvalidRuns }).Select(Collection),
        .. Specimens(found),
    ];

    private static IEnumerable<Sentence> Window(ConductFindings found)
    {
        var rate = found.Rates.First(rate => rate.Measure == "read-outside-window" && rate.Grouping == Grouping.Program);
        if (rate.Share.Estimate is null) yield break;
        var path = FigurePath.Row("conduct.rates", rate.Key) + ".share";
        yield return new Sentence(
            $"Of runs with a reading time, {{0}} were read outside the window ({{1}} to {{2}}, {ShareWords.Limits(rate.Share)}){ShareWords.Few(rate.Share)}.",
            Figure.Share(path, rate.Share), Figure.Lower(path, rate.Share), Figure.Upper(path, rate.Share));
    }

    private static IEnumerable<Sentence> StandsOut(ConductFindings found, string measure, string what)
    {
        var standing = found.Rates.Where(rate => rate.Measure == measure && rate.Comparison?.StandsOut == true)
            .OrderBy(rate => rate.Grouping).ThenBy(rate => rate.Comparison!.PHolm).ThenBy(rate => rate.Level, Levels.Order).ToList();
        foreach (var grouping in standing.GroupBy(rate => rate.Grouping))
        {
            foreach (var rate in grouping.Take(MostNamed))
            {
                var path = FigurePath.Row("conduct.rates", rate.Key);
                var others = rate.Grouping == Grouping.Site ? "the other sites" : $"the other {LevelNames.Of(rate.Grouping)}s of the same site";
                yield return new Sentence(
                    $"{Capital(LevelNames.Of(rate.Grouping))} {{0}} has {{1}} {what} of {{2}}, where {others} would have {{3}} (adjusted p {{4}})." + (rate.Grouping == Grouping.Operator ? " For training, not for discipline." : ""),
                    Figure.Name(path + ".level", rate.Level), Figure.Count(path + ".share.events", rate.Share.Events), Figure.Count(path + ".share.trials", rate.Share.Trials),
                    Figure.Number(path + ".comparison.expected", rate.Comparison!.Expected, Unit.Ratio), Figure.Number(path + ".comparison.pHolm", rate.Comparison.PHolm, Unit.PValue));
            }

            if (grouping.Count() > MostNamed) yield return new Sentence($"More {LevelNames.Of(grouping.Key)}s stand out by {what}: see the table.");
        }
    }

    private static IEnumerable<Sentence> Operators(ConductFindings found)
    {
        var operators = found.Rates.Where(rate => rate.Grouping == Grouping.Operator).ToList();
        if (operators.Count == 0)
        {
            yield return new Sentence("No operator is recorded, so it cannot be told whether runs fail more in some hands than in others.");
            yield break;
        }

        if (!operators.Exists(rate => rate.Comparison?.StandsOut == true))
        {
            yield return new Sentence(operators.Exists(rate => rate.Comparison?.P is not null)
                ? "No operator has more unusable runs than chance readily makes beside the others of the same site: where the share is high, it is the site's."
                : "Operators cannot be compared: none works at a site with another one, or there is no unusable run.");
        }

        yield return new Sentence("Operators are listed by name, not by share: with few runs the share is high or low by chance. What is found by operator is for training, not for discipline.");
    }

    private static Sentence Collection(ConductContrast contrast)
    {
        var path = FigurePath.Row("conduct.contrasts", contrast.Key);
        if (contrast.Within.Estimate is { } within)
        {
            return new Sentence(
                $"Within the same sites and weeks, the shares of unusable runs under {{0}} and {{1}} collection differ by {{2}} ({{3}} to {{4}}): {Verdict(contrast.Within)}. People who collect by themselves may differ in other ways.",
                Figure.Name(path + ".first", contrast.First), Figure.Name(path + ".second", contrast.Second), Say.Difference(path + ".within.estimate", within),
                Say.Difference(path + ".within.widenedLower", contrast.Within.WidenedLower), Say.Difference(path + ".within.widenedUpper", contrast.Within.WidenedUpper));
        }

        return new Sentence(
            "No site used both {0} and {1} collection in one week, so a difference between them cannot be told from one between sites.",
            Figure.Name(path + ".first", contrast.First), Figure.Name(path + ".second", contrast.Second));
    }

    private static IEnumerable<Sentence> Specimens(ConductFindings found)
    {
        var specimens = found.Contrasts.Where(contrast => contrast is { Grouping: Grouping.Specimen, Measure: PersonMeasure.InvalidRuns }).ToList();
        if (specimens.Count == 0) yield break;
        var differing = specimens.Where(contrast => contrast.Within.LeavesOutZero == true).ToList();
        foreach (var contrast in differing.Take(MostNamed))
        {
            var path = FigurePath.Row("conduct.contrasts", contrast.Key);
            yield return new Sentence(
                "Within the same sites and weeks, {0} specimens have {2} ({3} to {4}) unusable runs against {1} ones: more than chance alone lets expect.",
                Figure.Name(path + ".first", contrast.First), Figure.Name(path + ".second", contrast.Second), Say.Difference(path + ".within.estimate", contrast.Within.Estimate),
                Say.Difference(path + ".within.widenedLower", contrast.Within.WidenedLower), Say.Difference(path + ".within.widenedUpper", contrast.Within.WidenedUpper));
        }

        if (differing.Count > 0) yield break;
        yield return new Sentence(specimens.Exists(contrast => contrast.Within.Estimate is not null)
            ? "Kinds of specimen do not differ in unusable runs by more than chance may make within the same sites and weeks."
            : "No site took two kinds of specimen in one week, so a difference between kinds cannot be told from one between sites.");
    }

    private static string Verdict(Kits.DifferenceFinding difference) => difference.LeavesOutZero == true ? "more than chance alone lets expect" : "chance alone may explain it";

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
