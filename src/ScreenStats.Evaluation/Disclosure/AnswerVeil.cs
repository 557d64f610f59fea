using System.Collections.Immutable;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Answers.InShort;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Disclosure;

/// <summary>The answers as they may be read: a sentence whose figures may be seen, or one that says which is hidden and why. Never an empty answer.</summary>
internal static class AnswerVeil
{
    private const string StandOuts = "which-lots-and-sites-stand-out";

    // By the path of a figure that is hidden: what it is of.
    private static readonly (string Path, string What)[] Hidden =
    [
        ("predictiveValue.observed", "The share of positive runs that were confirmed"),
        ("predictiveValue.bounds", "Between what bounds that share lies whatever the missing results would have been"),
        ("predictiveValue.withoutFlaggedLots", "The share confirmed without the flagged lots"),
        ("yield.", "The number of runs for each case"),
        ("accuracy.proven", "The specificity that the positivity alone proves"),
        ("accuracy.sensitivityLimit", "The least sensitivity that the audits leave open"),
        ("accuracy.sensitivity", "The sensitivity"),
        ("accuracy.specificity", "The specificity"),
        ("changes.", "By how much it changed"),
        ("comparison.", "By how much they differ"),
        ("trends.", "How it changed"),
        ("cadence.", "What screening gives and costs by how often it is done"),
        ("accuracy.", "How many infected people the screen missed"),
    ];

    public static AnswerFindings Of(Findings findings, ReleaseDisclosure disclosure)
    {
        var without = !disclosure.HidesProgramCounts;
        return new AnswerFindings(
            [.. findings.Answers.Questions.Select(answer => Veil(findings, answer, disclosure, without))],
            [.. findings.Answers.NextSteps.Select(step => step with { Sentence = disclosure.Seen(step.Sentence, without) ?? Shortened(step, disclosure) })
                .DistinctBy(step => step.Sentence.Text)
                .Select((step, index) => step with { Rank = index + 1 })]);
    }

    private static Answer Veil(Findings findings, Answer answer, ReleaseDisclosure disclosure, bool without)
    {
        var sentences = Sentences(findings, answer, disclosure, without);
        return answer with
        {
            // What may not be read in one sentence is told by the first that may be read, or says what is hidden; who stands out keeps the name.
            Brief = disclosure.Seen(answer.Brief, without) ?? (answer.Id == StandOuts ? StandOutInShort.Names(answer.Brief) : null) ?? sentences[0],
            Sentences = sentences,
            // Conditions without a figure are cautions: they stay.
            Conditions = [.. answer.Conditions.Select(sentence => disclosure.Seen(sentence, without: true)).OfType<Sentence>()],
        };
    }

    private static ImmutableArray<Sentence> Sentences(Findings findings, Answer answer, ReleaseDisclosure disclosure, bool without)
    {
        var seen = ImmutableArray.CreateBuilder<Sentence>();
        foreach (var sentence in answer.Sentences)
        {
            // What no test could compare, or that no lot stood out, says nothing that the flags do not.
            var words = without || answer.Id == StandOuts;
            if ((disclosure.Seen(sentence, words) ?? OnlyName(sentence) ?? Why(findings, sentence, disclosure)) is { } one && seen.All(other => other.Text != one.Text)) seen.Add(one);
        }

        if (seen.Count == 0) seen.Add(new Sentence("What these data say here is hidden, because a count of the program is" + Reason(disclosure) + "."));
        return seen.ToImmutable();
    }

    // What is shown of it, and which figure is not.
    private static Sentence? Why(Findings findings, Sentence sentence, ReleaseDisclosure disclosure)
    {
        var paths = sentence.Figures.Select(figure => figure.Id).ToList();
        if (paths.FirstOrDefault(path => !disclosure.Shows(path) && !path.EndsWith(".device", StringComparison.Ordinal)) is not { } missing) return null;
        if (Hidden.FirstOrDefault(one => paths.Any(path => path.StartsWith(one.Path, StringComparison.Ordinal))) is not { What: { } what }) return null;
        var reason = " is hidden, because a count behind it is" + Reason(disclosure) + ".";
        if (missing.StartsWith("predictiveValue.observed", StringComparison.Ordinal) && disclosure.Shows("predictiveValue.bounds.positives"))
            return new Sentence("{0} runs were positive. " + what + reason, Figure.Count("predictiveValue.bounds.positives", findings.PredictiveValue.Bounds.Positives));
        if (missing.StartsWith("yield.", StringComparison.Ordinal) && disclosure.Shows("yield.runs"))
            return new Sentence("{0} runs were done. How many cases they found" + reason, Figure.Count("yield.runs", findings.Yield.Runs));
        return new Sentence(what + reason);
    }

    private static string Reason(ReleaseDisclosure disclosure) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $" below {disclosure.SuppressBelow} or would give such a one away");

    // That a lot or site stands out is said all the same: somebody must look into it.
    private static Sentence? OnlyName(Sentence sentence)
    {
        const string Opening = " {0} stands out:";
        var end = sentence.Template.IndexOf(Opening, StringComparison.Ordinal);
        return end < 0 ? null : new Sentence(sentence.Template[..end] + " {0} stands out; its chance and some of its counts are hidden.", sentence.Figures[0]);
    }

    // A step stays, for somebody must take it; its counts go.
    private static Sentence Shortened(NextStep step, ReleaseDisclosure disclosure)
    {
        var name = step.Sentence.Figures.FirstOrDefault(figure => figure.Value.Kind == CellKind.Text && step.Id.Contains(':', StringComparison.Ordinal));
        return (step.Id.Split(':')[0], name) switch
        {
            ("look-into-lot", { } lot) when step.Sentence.Figures.FirstOrDefault(figure => figure.Unit == Unit.Date && disclosure.Shows(figure.Id)) is { } last =>
                new Sentence("Look into lot {0}, last used on {1}: see that no kits of it are left, run control swabs on any that are, and ask the supplier. Its counts are hidden.", lot, last),
            ("look-into-lot", { } lot) => new Sentence("Look into lot {0}: run control swabs, ask the supplier, and settle under local rules whether its kits stay in use. Its counts are hidden.", lot),
            ("look-into-site", { } site) => new Sentence("Look into how runs are done, read and labelled at site {0}. Its counts are hidden.", site),
            ("train-at-site", { } site) => new Sentence("Review technique and train at site {0}. Its counts are hidden.", site),
            ("check-lot", { } lot) => new Sentence("Check storage and handling of lot {0}. Its counts are hidden.", lot),
            ("ask-about-device", { } device) => new Sentence("Ask the supplier of {0} about its specificity. Its counts are hidden.", device),
            ("remove-expired-lots", _) => new Sentence("See that no expired kits are in use or left: some were used. The counts are hidden."),
            _ => new Sentence("A step here rests on hidden counts; those who hold the data see it in the full report."),
        };
    }
}
