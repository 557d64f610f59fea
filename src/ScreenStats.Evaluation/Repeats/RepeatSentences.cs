using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Repeats;

internal static class RepeatSentences
{
    private const string Path = "repeats.program";

    public static Sentence Of(RepeatRow program) => program.Due == 0
        ? new Sentence("No run called for a repeat on the same day.")
        : new Sentence(
            $"{{0}} of {{1}} repeats due after an inconclusive or invalid run were done on the same day ({{2}}){ShareWords.Few(program.Share)}.",
            Figure.Count(Path + ".done", program.Done), Figure.Count(Path + ".due", program.Due), Figure.Share(Path + ".share", program.Share));
}
