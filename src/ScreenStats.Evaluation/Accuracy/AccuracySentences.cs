using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Accuracy;

/// <summary>Accuracy in words.</summary>
internal static class AccuracySentences
{
    public static ImmutableArray<Sentence> Of(AccuracyFindings findings)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        if (Proven(findings) is { } proven) sentences.Add(proven);
        sentences.AddRange(Claims(findings));
        if (findings.Basis == AccuracyBasis.None)
        {
            sentences.Add(new Sentence(
                "No negative run was audited with a conclusive result, so sensitivity and specificity are undefined; with no assumption on the runs that were not verified only bounds are known."));
        }
        else
        {
            AddSampling(sentences, findings);
            if (Estimate(findings, "sensitivity", "sensitivity", findings.Sensitivity, mark: true) is { } sensitivity) sentences.Add(sensitivity);
            if (Estimate(findings, "specificity", "specificity", findings.Specificity, mark: false) is { } specificity) sentences.Add(specificity);
            if (Estimate(findings, "share infected among the valid tests", "prevalence", findings.Prevalence, mark: true) is { } prevalence) sentences.Add(prevalence);
            if (Estimate(findings, "positive predictive value", "positivePredictiveValue", findings.PositivePredictiveValue, mark: false) is { } positive) sentences.Add(positive);
            if (Estimate(findings, "negative predictive value", "negativePredictiveValue", findings.NegativePredictiveValue, mark: true) is { } negative) sentences.Add(negative);
            if (Missed(findings) is { } missed) sentences.Add(missed);
            if (Limits(findings) is { } limits) sentences.Add(limits);
            sentences.Add(new Sentence($"This holds only if {findings.Assumption}, and it is against the confirmatory test, not the truth."));
        }

        if (Bounds(findings) is { } bounds) sentences.Add(bounds);
        if (sentences.Count == 0) sentences.Add(new Sentence("No valid test was counted."));
        return sentences.ToImmutable();
    }

    /// <summary>What the positivity alone proves; null without valid tests.</summary>
    public static Sentence? Proven(AccuracyFindings findings)
    {
        if (findings.Proven[0] is not { SpecificityLower: > 0 } program) return null;
        var path = FigurePath.Row("accuracy.proven", program.Key);
        return new Sentence(
            "As {0} of {1} valid tests were positive, the average specificity was at least {2} (one-sided, {3} confidence" + (program.DesignEffect > 1 ? ", widened for clusters" : "")
            + "), with no confirmatory test at all: a screen that is no worse than chance is positive in no more of the uninfected than of all.",
            Figure.Count(path + ".positives", program.Positives), Figure.Count(path + ".validTests", program.ValidTests),
            Say.Share(path + ".specificityLower", program.SpecificityLower), Say.Confidence(path + ".confidence", program.Confidence));
    }

    /// <summary>Stated specificities that the data refute.</summary>
    public static IEnumerable<Sentence> Claims(AccuracyFindings findings)
    {
        foreach (var device in findings.Proven.Skip(1))
        {
            var path = FigurePath.Row("accuracy.proven", device.Key);
            var name = Figure.Name(path + ".device", device.Device);
            if (device.Claim == ClaimOutcome.TooLow)
            {
                yield return new Sentence(
                    "The stated specificity of {0}, {1}, is refuted as too low for these data: by its positivity alone its specificity here was at least {2}.",
                    name, Say.Share(path + ".statedSpecificity", device.StatedSpecificity), Say.Share(path + ".specificityLower", device.SpecificityLower));
            }
            else if (device.Claim == ClaimOutcome.TooHigh)
            {
                yield return new Sentence(
                    "The stated specificity of {0}, {1}, is refuted as too high for these data: more of its positives were refuted by the confirmatory test than it allows.",
                    name, Say.Share(path + ".statedSpecificity", device.StatedSpecificity));
            }
        }
    }

    /// <summary>An estimate with its limits; null where there is none.</summary>
    public static Sentence? Estimate(AccuracyFindings findings, string name, string path, EstimateFinding value, bool mark)
    {
        if (value.Estimate is null) return null;
        var how = findings.Basis switch
        {
            AccuracyBasis.Reweighted => "Reweighted by sampling stratum",
            AccuracyBasis.Unweighted => "Without weights",
            _ => "Corrected for the runs that were not verified",
        };
        var few = mark && findings.Missed < ProportionFinding.FewBelow ? " [few counts]" : "";
        var row = findings.Rows.FirstOrDefault(row => row.Grouping == Grouping.Program && row.Clusters is not null && row.Figure == value);
        var together = row?.Cluster switch
        {
            null => "",
            ClusterLevel.Sites => ", the runs of each of {4} sites taken together, as sites differ by more than people; that lots differ is not in it",
            _ when row.FewSites is not null => ", people's runs taken together; that sites differ, of which {4} are too few to show it, and that lots differ is not in it",
            _ => ", people's runs taken together; that lots differ is not in it",
        };
        ImmutableArray<FigureReference> figures =
        [
            Say.Share($"accuracy.{path}.estimate", value.Estimate), Say.Confidence($"accuracy.{path}.confidence", value.Confidence ?? 0.95),
            Say.Share($"accuracy.{path}.lower", value.Lower), Say.Share($"accuracy.{path}.upper", value.Upper),
        ];
        if (row is { Cluster: ClusterLevel.Sites }) figures = figures.Add(Figure.Count(FigurePath.Row("accuracy.rows", row.Key) + ".clusters", row.Clusters!.Value));
        else if (row is { FewSites: { } sites }) figures = figures.Add(Figure.Count(FigurePath.Row("accuracy.rows", row.Key) + ".fewSites", sites));
        return new Sentence($"{how}, the {name} is {{0}} ({{1}} interval {{2}} to {{3}}{together}){few}.", [.. figures]);
    }

    /// <summary>How many negative runs were of infected people; null where that has no estimate.</summary>
    public static Sentence? Missed(AccuracyFindings findings)
    {
        if (findings.InfectedNegatives is not { Estimate: { } estimate, Confidence: { } confidence } infected) return null;
        const string Path = "accuracy.infectedNegatives";
        var of = findings.NegativesOutside == 0 ? "the {6} negative runs" : "the {6} negative runs, without those of which no audit speaks,";
        return new Sentence(
            $"About {{0}} of {of} were of infected people ({{1}} interval {{2}} to {{3}})" + (findings.Missed < ProportionFinding.FewBelow ? " [few counts]" : "")
            + $": of {{5}} audited with a conclusive result {{4}} {Figure.Plural(findings.Missed, "was", "were")} missed.",
            Say.Ratio(Path + ".estimate", estimate), Say.Confidence(Path + ".confidence", confidence), Say.Ratio(Path + ".lower", infected.Lower), Say.Ratio(Path + ".upper", infected.Upper),
            Figure.Count("accuracy.missed", findings.Missed), Figure.Count("accuracy.audited", findings.Audited), Figure.Count("accuracy.negativeRuns", findings.NegativeRuns));
    }

    /// <summary>One-sided limits where there is no estimate; null where there is one, or no audit.</summary>
    public static Sentence? Limits(AccuracyFindings findings)
    {
        if (findings.Sensitivity.Estimate is not null || findings.SensitivityLimit.Lower is null) return null;
        return new Sentence(
            findings.Missed == 0
                ? "None of the {0} negative runs audited with a conclusive result was missed, so only limits are known: sensitivity was at least {1} and specificity at least {2} (in these tests, both at once, one-sided, {3} confidence)."
                : "Only {0} negative runs were audited with a conclusive result, too few for an estimate: sensitivity was at least {1} and specificity at least {2} (in these tests, both at once, one-sided, {3} confidence).",
            Figure.Count("accuracy.audited", findings.Audited), Say.Share("accuracy.sensitivityLimit.lower", findings.SensitivityLimit.Lower),
            Say.Share("accuracy.specificityLimit.lower", findings.SpecificityLimit.Lower), Say.Confidence("accuracy.sensitivityLimit.confidence", findings.SensitivityLimit.Confidence));
    }

    /// <summary>That figures are without weights, and why that matters; null where they are not.</summary>
    public static Sentence? Unweighted(AccuracyFindings findings) => findings.Basis != AccuracyBasis.Unweighted ? null : new Sentence(
        "The audits name {0} sampling strata, and how many negative runs each holds is not known: the figures are without weights, and biased if strata were sampled at different rates; describe the strata in the program file.",
        Figure.Count("accuracy.stratumCount", findings.StratumCount));

    private static void AddSampling(ImmutableArray<Sentence>.Builder sentences, AccuracyFindings findings)
    {
        if (Unweighted(findings) is { } unweighted) sentences.Add(unweighted);
        if (findings.Basis == AccuracyBasis.Reweighted)
        {
            var known = findings.Strata[0].Origin switch
            {
                StratumOrigin.Site => "they have the names of sites and are taken as those",
                StratumOrigin.Lot => "they have the names of lots and are taken as those",
                _ => "the program file describes them",
            };
            sentences.Add(new Sentence(
                $"The audits were drawn from {{0}} sampling {Figure.Plural(findings.StratumCount, "stratum", "strata")}: {known}. Each audited run stands for as many negative runs as its stratum holds for each one audited.",
                Figure.Count("accuracy.stratumCount", findings.StratumCount)));
        }

        if (findings.NegativesOutside > 0)
        {
            sentences.Add(new Sentence(
                "Of {0} negative runs {1} belong to no stratum that was audited; the figures do not speak of them.",
                Figure.Count("accuracy.negativeRuns", findings.NegativeRuns), Figure.Count("accuracy.negativesOutside", findings.NegativesOutside)));
        }
    }

    private static Sentence? Bounds(AccuracyFindings findings)
    {
        if (findings.SensitivityBounds.Lower is null || findings.SpecificityBounds.Lower is null) return null;
        return new Sentence(
            "With no assumption at all on the runs that were not verified, the counts allow a sensitivity from {0} to {1} and a specificity from {2} to {3}.",
            Say.Share("accuracy.sensitivityBounds.lower", findings.SensitivityBounds.Lower), Say.Share("accuracy.sensitivityBounds.upper", findings.SensitivityBounds.Upper),
            Say.Share("accuracy.specificityBounds.lower", findings.SpecificityBounds.Lower), Say.Share("accuracy.specificityBounds.upper", findings.SpecificityBounds.Upper));
    }
}
