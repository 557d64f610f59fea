using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Specimens;

/// <summary>Specimens by reason in words.</summary>
internal static class SpecimenSentences
{
    public static ImmutableArray<Sentence> Of(SpecimenFindings findings, bool confirmatory)
    {
        if (findings.All.Specimens == 0)
        {
            return [new Sentence(confirmatory ? "No confirmatory specimen was counted by its reason." : "There is no confirmatory export, so there are no specimens.")];
        }

        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        sentences.Add(new Sentence(
            "{0} confirmatory specimens were counted; {1} were indeterminate and {2} rejected.",
            Figure.Count("specimens.all.specimens", findings.All.Specimens),
            Figure.Count("specimens.all.indeterminate", findings.All.Indeterminate), Figure.Count("specimens.all.rejected", findings.All.Rejected)));
        foreach (var reason in findings.Reasons.Where(reason => reason.Positive.Trials > 0)) sentences.Add(Of(reason));
        sentences.Add(new Sentence("What a specimen shows depends on why it was taken: only an audit says something about negative runs, and specimens for other reasons come from people who were not chosen at random."));
        return sentences.ToImmutable();
    }

    private static Sentence Of(SpecimenFinding finding)
    {
        var path = FigurePath.Row("specimens.reasons", finding.Reason);
        var what = finding.Reason switch
        {
            "follow-up" => "Taken to follow up a run",
            "audit" => "Taken to audit a negative run",
            "other" => "Taken for another reason",
            _ => "Taken for a reason that is not recorded",
        };
        return new Sentence(
            what + ": {0} of {1} conclusive specimens were positive, {2} ({3} interval {4} to {5})" + ShareWords.Few(finding.Positive) + ".",
            Figure.Count(path + ".positive.events", finding.Positive.Events), Figure.Count(path + ".positive.trials", finding.Positive.Trials),
            Figure.Share(path + ".positive", finding.Positive), Say.Confidence(path + ".positive.confidence", finding.Positive.Confidence),
            Figure.Lower(path + ".positive", finding.Positive), Figure.Upper(path + ".positive", finding.Positive));
    }
}
