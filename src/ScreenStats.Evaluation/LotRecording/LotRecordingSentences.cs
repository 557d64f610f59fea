using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.LotRecording;

internal static class LotRecordingSentences
{
    public static ImmutableArray<Sentence> Of(LotRecordingFindings findings)
    {
        var (program, share) = (findings.Program, findings.Program.WithoutLot);
        const string Path = "lotRecording.program";
        if (share.Trials == 0) return [new Sentence("No run was counted, so it cannot be said how many have a lot.")];
        if (share.Events == 0) return [new Sentence("Every one of {0} runs has a lot recorded.", Figure.Count(Path + ".withoutLot.trials", share.Trials))];
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        sentences.Add(new Sentence(
            "{0} of {1} runs have no lot recorded, {2} ({3} interval {4} to {5}), with {6} of {7} refuted positives among them: they are in no comparison of lots.",
            Figure.Count(Path + ".withoutLot.events", share.Events), Figure.Count(Path + ".withoutLot.trials", share.Trials), Figure.Share(Path + ".withoutLot", share),
            Say.Confidence(Path + ".withoutLot.confidence", share.Confidence), Figure.Lower(Path + ".withoutLot", share), Figure.Upper(Path + ".withoutLot", share),
            Figure.Count(Path + ".refutedWithoutLot", program.RefutedWithoutLot), Figure.Count(Path + ".refuted", program.Refuted)));
        if (findings.Sites.Where(site => site.TestsWithoutLot > 0).MaxBy(site => site.TestsWithoutLot) is not { } most) return sentences.ToImmutable();
        var path = FigurePath.Row("lotRecording.sites", most.Key);
        var figures = new List<FigureReference> { Figure.Name(path + ".level", most.Level), Figure.Count(path + ".testsWithoutLot", most.TestsWithoutLot) };
        string Add(FigureReference figure)
        {
            figures.Add(figure);
            return $"{{{(figures.Count - 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}}}";
        }

        if (most.SeenFromUndefined is null || most.RecordedSeenFromUndefined is null)
        {
            var hidden = most.SeenFrom is { } seen
                ? $"would flag the site in four programs of five only from {Add(Say.Ratio(path + ".seenFrom", seen))} times the program's rate of refuted positives on"
                : "would not flag the site in four programs of five, however large";
            var recorded = most.RecordedSeenFrom is { } from
                ? $"; with their lot recorded, from {Add(Say.Ratio(path + ".recordedSeenFrom", from))} times on"
                : "; with their lot recorded they would be too few as well";
            sentences.Add(new Sentence($"What that hides: site {{0}} has most of them, {{1}} valid tests; if all were of one faulty lot, its fault {hidden}{recorded}.", [.. figures]));
        }

        return sentences.ToImmutable();
    }
}
