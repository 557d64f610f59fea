using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Answers;

/// <summary>Why a lot or site stands out, in one sentence each.</summary>
internal static class StandsOut
{
    public static Sentence Refuted(string path, string kind, IJudgedLevel level) => new(
        $"{Capital(kind)} {{0}} stands out: {{1}} of its {{2}} positives with a conclusive confirmatory result were refuted, among {{3}} valid tests; "
        + "chance alone would do as much with probability {4}, adjusted for the number compared.",
        Name(path, kind, level),
        Figure.Count(path + ".refuted", level.Refuted),
        Figure.Count(path + ".conclusive", level.Conclusive),
        Figure.Count(path + ".tests", level.Tests),
        Figure.Number(path + ".refutedPHolm", level.RefutedPHolm, Unit.PValue));

    public static Sentence Invalid(string path, string kind, IJudgedLevel level) => new(
        $"{Capital(kind)} {{0}} stands out: {{1}} inconclusive and {{2}} invalid of {{3}} runs; "
        + "chance alone would do as much with probability {4}, adjusted for the number compared.",
        Name(path, kind, level),
        Figure.Count(path + ".inconclusive", level.Inconclusive),
        Figure.Count(path + ".invalid", level.Invalid),
        Figure.Count(path + ".runs", level.Runs),
        Figure.Number(path + ".invalidPHolm", level.InvalidPHolm, Unit.PValue));

    /// <summary>The smallest adjusted probability that a level is flagged by.</summary>
    public static double Smallest(IJudgedLevel level) => Math.Min(
        level.Flag.HasFlag(Flag.Refuted) ? level.RefutedPHolm ?? 1 : 1, level.Flag.HasFlag(Flag.Invalid) ? level.InvalidPHolm ?? 1 : 1);

    public static FigureReference Name(string path, string kind, IJudgedLevel level) => Figure.Name($"{path}.{kind}", level.Name);

    private static string Capital(string kind) => kind == "lot" ? "Lot" : "Site";
}
