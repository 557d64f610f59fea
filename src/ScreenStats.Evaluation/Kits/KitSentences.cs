using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Kits;

/// <summary>The devices side by side, in words.</summary>
internal static class KitSentences
{
    /// <summary>More contrasts than these are left to the table.</summary>
    private const int MostSpoken = 12;

    public static ImmutableArray<Sentence> Of(KitFindings findings)
    {
        if (findings.Devices.IsEmpty) return [new Sentence("No run in these data is of a device that the program file describes, so there is nothing to compare.")];
        if (findings.Devices.Length == 1)
        {
            return [new Sentence("One device was used ({0}), so there is nothing to compare it with.", Name(findings, 0))];
        }

        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        sentences.Add(new Sentence(
            "{0} devices were used; the plain differences between them follow, and what remains of each within the same sites and weeks.",
            Figure.Count("kits.deviceCount", findings.Devices.Length)));
        foreach (var contrast in findings.Contrasts.Take(MostSpoken)) sentences.Add(Of(contrast));
        if (!findings.FlaggedLots.IsEmpty) sentences.Add(Flagged(findings));
        sentences.Add(findings.SharedSiteWeeks == 0
            ? new Sentence(
                "No site used two devices in the same week ({0} site-weeks), so what a device does and what its sites and weeks do cannot be told apart.",
                Figure.Count("kits.siteWeeks", findings.SiteWeeks))
            : new Sentence(
                "Devices were not given to people at random: where and when each was used may explain a difference. {0} of {1} site-weeks used more than one.",
                Figure.Count("kits.sharedSiteWeeks", findings.SharedSiteWeeks), Figure.Count("kits.siteWeeks", findings.SiteWeeks)));
        sentences.Add(new Sentence("Several differences are looked at together; their limits are not adjusted for that, so one of them may leave out no difference by chance."));
        if (findings.RunsWithoutDevice > 0)
        {
            sentences.Add(new Sentence(
                "{0} counted " + Figure.Plural(findings.RunsWithoutDevice, "run is", "runs are") + " of lots that no device of the program file claims, and left out here.",
                Figure.Count("kits.runsWithoutDevice", findings.RunsWithoutDevice)));
        }

        return sentences.ToImmutable();
    }

    private static FigureReference Name(KitFindings findings, int index) =>
        Figure.Name(FigurePath.Row("kits.devices", findings.Devices[index].Device) + ".device", findings.Devices[index].Device);

    private static Sentence Of(KitContrast contrast)
    {
        var path = FigurePath.Row("kits.contrasts", contrast.Key);
        var (first, second) = (Figure.Name(path + ".first", contrast.First), Figure.Name(path + ".second", contrast.Second));
        if (contrast.Crude.Estimate is null)
        {
            return new Sentence($"{Words(contrast.Measure)} of {{0}} and {{1}} cannot be compared: {contrast.Crude.EstimateUndefined}.", first, second);
        }

        ImmutableArray<FigureReference> figures =
        [
            first, Figure.Share(path + ".firstShare", contrast.FirstShare), second, Figure.Share(path + ".secondShare", contrast.SecondShare),
            Say.Difference(path + ".crude.estimate", contrast.Crude.Estimate),
            Say.Confidence(path + ".crude.confidence", contrast.Crude.Confidence),
            Say.Difference(path + ".crude.widenedLower", contrast.Crude.WidenedLower),
            Say.Difference(path + ".crude.widenedUpper", contrast.Crude.WidenedUpper),
        ];
        var text = Words(contrast.Measure) + " was {1} with {0} and {3} with {2}: a difference of {4} ({5} interval {6} to {7}, " + Verdict(contrast.Crude) + ")";
        if (contrast.Within is { Estimate: { } within, WidenedLower: not null })
        {
            text += "; within the same sites and weeks {8} ({9} to {10}, " + Verdict(contrast.Within) + ")";
            figures =
            [
                .. figures, Say.Difference(path + ".within.estimate", within),
                Say.Difference(path + ".within.widenedLower", contrast.Within.WidenedLower), Say.Difference(path + ".within.widenedUpper", contrast.Within.WidenedUpper),
            ];
        }

        return new Sentence(text + (contrast.Crude.FewCounts ? " [few counts]" : "") + ".", figures);
    }

    /// <summary>What is left of the difference in refuted positives without the flagged lots: a lot's fault is not its device's.</summary>
    private static Sentence Flagged(KitFindings findings)
    {
        var kind = Figure.Plural(findings.FlaggedLots.Length, "this lot is", "these lots are");
        var spoken = findings.Contrasts.FirstOrDefault(contrast =>
            contrast is { Measure: PersonMeasure.Refuted, CrudeWithoutFlaggedLots: { Estimate: not null, WidenedLower: not null } });
        if (spoken?.CrudeWithoutFlaggedLots is not { } without)
        {
            var (some, lots) = Say.Names("kits.flaggedLots", findings.FlaggedLots, 0);
            return new Sentence($"A difference may be a lot's, not its device's: {kind} flagged: {some}.", [.. lots]);
        }

        var path = FigurePath.Row("kits.contrasts", spoken.Key);
        var (names, figures) = Say.Names("kits.flaggedLots", findings.FlaggedLots, 5);
        return new Sentence(
            $"A difference may be a lot's, not its device's: {kind} flagged: {names}. Without the runs of flagged lots, refuted positives per valid test differ between {{0}} and {{1}} by {{2}} ({{3}} to {{4}}, {Verdict(without)}).",
            [
                Figure.Name(path + ".first", spoken.First), Figure.Name(path + ".second", spoken.Second),
                Say.Difference(path + ".crudeWithoutFlaggedLots.estimate", without.Estimate),
                Say.Difference(path + ".crudeWithoutFlaggedLots.widenedLower", without.WidenedLower),
                Say.Difference(path + ".crudeWithoutFlaggedLots.widenedUpper", without.WidenedUpper),
                .. figures,
            ]);
    }

    private static string Verdict(DifferenceFinding difference) =>
        difference.LeavesOutZero == true ? "more than chance alone lets expect" : "chance alone may explain it";

    private static string Words(PersonMeasure measure) => measure switch
    {
        PersonMeasure.Positivity => "Positivity",
        PersonMeasure.InvalidRuns => "The share of inconclusive and invalid runs",
        PersonMeasure.Refuted => "The share of valid tests with a refuted positive",
        _ => "The share of positives that were confirmed",
    };
}
