using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Retests;

/// <summary>Retests in words.</summary>
internal static class RetestSentences
{
    private const string Path = "retests.program";

    public static ImmutableArray<Sentence> Of(RetestFindings findings, bool confirmatory)
    {
        var program = findings.Program;
        if (program.Pairs == 0) return [new Sentence("No positive run is known to have been followed by another run of the same person on the same day before a specimen was taken.")];
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        sentences.Add(new Sentence(
            "{0} of {1} positive runs were retested on the same day before a specimen was taken.",
            Figure.Count(Path + ".pairs", program.Pairs), Figure.Count(Path + ".positives", program.Positives)));
        if (program.Concordant.Trials > 0)
        {
            sentences.Add(new Sentence(
                "Of {0} positive or negative retests {1} were positive again, {2} ({3} interval {4} to {5})" + ShareWords.Few(program.Concordant) + ".",
                Figure.Count(Path + ".concordant.trials", program.Concordant.Trials),
                Figure.Count(Path + ".concordant.events", program.Concordant.Events),
                Figure.Share(Path + ".concordant", program.Concordant),
                Say.Confidence(Path + ".concordant.confidence", program.Concordant.Confidence),
                Figure.Lower(Path + ".concordant", program.Concordant),
                Figure.Upper(Path + ".concordant", program.Concordant)));
        }

        if (confirmatory && program.ConcordantConfirmed + program.ConcordantRefuted > 0)
        {
            sentences.Add(new Sentence(
                "Where the retest was positive again, {0} were confirmed and {1} refuted; where it was negative, {2} were confirmed and {3} refuted.",
                Figure.Count(Path + ".concordantConfirmed", program.ConcordantConfirmed), Figure.Count(Path + ".concordantRefuted", program.ConcordantRefuted),
                Figure.Count(Path + ".discordantConfirmed", program.DiscordantConfirmed), Figure.Count(Path + ".discordantRefuted", program.DiscordantRefuted)));
        }

        sentences.Add(new Sentence(
            "Two runs on one person are not independent: what made the first one positive may make the second one positive too. A negative retest does not cancel a positive run; only a confirmatory test answers it."));
        return sentences.ToImmutable();
    }
}
