using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Delays;

/// <summary>Waiting times in words.</summary>
internal static class DelaySentences
{
    public static ImmutableArray<Sentence> Of(DelayFinding run, DelayFinding report)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        if (run.Resulted == 0)
        {
            sentences.Add(new Sentence("No run was followed up by a specimen, so there is no waiting time from run to specimen."));
        }
        else
        {
            sentences.Add(new Sentence(
                "Half of the {0} followed-up runs had their specimen within {1} hours, nine in ten within {2} hours.",
                Figure.Count("delays.runToSpecimen.resulted", run.Resulted),
                Say.Hours("delays.runToSpecimen.medianHours", run.MedianHours),
                Say.Hours("delays.runToSpecimen.percentile90Hours", run.Percentile90Hours)));
            WholeDays(sentences, run, "delays.runToSpecimen");
        }

        if (report.Resulted == 0)
        {
            sentences.Add(report.Unresulted == 0
                ? new Sentence("There is no confirmatory specimen with a report, so there is no waiting time from specimen to report.")
                : new Sentence("None of the {0} confirmatory specimens has a recorded report, so there is no waiting time from specimen to report.",
                    Figure.Count("delays.specimenToReport.unresulted", report.Unresulted)));
            return sentences.ToImmutable();
        }

        sentences.Add(new Sentence(
            "Half of the {0} confirmatory specimens with a recorded report were reported within {1} hours, nine in ten within {2} hours.",
            Figure.Count("delays.specimenToReport.resulted", report.Resulted),
            Say.Hours("delays.specimenToReport.medianHours", report.MedianHours),
            Say.Hours("delays.specimenToReport.percentile90Hours", report.Percentile90Hours)));
        WholeDays(sentences, report, "delays.specimenToReport");
        if (report.Unresulted > 0)
        {
            sentences.Add(new Sentence(
                "{0} more " + Figure.Plural(report.Unresulted, "specimen has", "specimens have") + " no recorded report and would lengthen these times.",
                Figure.Count("delays.specimenToReport.unresulted", report.Unresulted)));
        }

        return sentences.ToImmutable();
    }

    private static void WholeDays(ImmutableArray<Sentence>.Builder sentences, DelayFinding finding, string path)
    {
        if (finding.WholeDays == 0) return;
        sentences.Add(new Sentence(
            "{0} of these {1} are known to whole days only and stand for 24 hours a day.",
            Figure.Count(path + ".wholeDays", finding.WholeDays), Figure.Count(path + ".resulted", finding.Resulted)));
    }
}
