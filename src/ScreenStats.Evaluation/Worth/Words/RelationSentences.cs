using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Words;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>How this answer and the one of how often to screen go together: one weighs infectious days against screens, the other what both are worth.</summary>
internal static class RelationSentences
{
    private const string ByDays = "judged by infectious days for each 1,000 screens and not by money";

    public static IEnumerable<Sentence> Of(WorthFindings findings, CadenceFindings cadence)
    {
        if (AsDone(findings) is { } done) yield return done;
        if (Between(findings, cadence) is { } between) yield return between;
    }

    /// <summary>Which option is judged, which one answers how often to screen and by what, and which gains most; null where one of the two has no answer.</summary>
    public static Sentence? Between(WorthFindings findings, CadenceFindings cadence)
    {
        if (findings.Judged is not { } judged || cadence.Options.FirstOrDefault(option => option.IsChosen) is not { } chosen) return null;
        FigureReference[] figures = [WorthWords.Name(judged), CadenceFigures.Name(chosen), .. findings.Best is { } most ? [WorthWords.Name(most)] : Array.Empty<FigureReference>()];
        if (chosen.Option == judged.Option)
            return new Sentence($"How often to screen is answered with \"{{0}}\" too, {ByDays}.", figures[0]);

        var opening = $"Judged here is \"{{0}}\", {Plan(findings, cadence)}; how often to screen is answered with \"{{1}}\", {ByDays}";
        return AnswerSentences.Compact(
            opening + ((judged.NetBenefit.Estimate is null ? null : findings.Best) switch
            {
                null => ".",
                { } best when best.Option == chosen.Option => ": by money that option gains most too.",
                { } best when best.Option == judged.Option => ": by money \"{0}\" gains most, so the two measures differ, and it is for the program to say which one counts.",
                _ => ": by money \"{2}\" gains most, so the two measures differ, and it is for the program to say which one counts.",
            }),
            figures);
    }

    /// <summary>The same where how often to screen is answered: that it is by another yardstick than what screening is worth, which option is judged there, and which gains most.</summary>
    public static Sentence? OfOften(WorthFindings findings, CadenceFindings cadence)
    {
        if (findings.Judged is not { NetBenefit.Estimate: not null } judged || cadence.Options.FirstOrDefault(option => option.IsChosen) is not { } chosen) return null;
        var (same, best) = (chosen.Option == judged.Option, findings.Best);
        var opening = "That goes by infectious days for each 1,000 screens; whether screening is worth it goes by money and judges \"{0}\"" + (same ? " too" : $", {Plan(findings, cadence)}");
        return best is null ? new Sentence(opening + ".", WorthWords.Name(judged))
            : best.IsNone ? new Sentence(opening + "; by money no screening gains most at the central figures.", WorthWords.Name(judged))
            : AnswerSentences.Compact(opening + "; by money \"{1}\" gains most at the central figures.", [WorthWords.Name(judged), WorthWords.Name(best)]);
    }

    private static string Plan(WorthFindings findings, CadenceFindings cadence) =>
        cadence.Options.Any(option => option.IsPlanned && option.Option == findings.Judged?.Option) ? "the plan"
        : "the way nearest to what was done" + (findings.JudgedPlan.Length > 0 ? $" ({findings.JudgedPlan})" : "");

    // The option judged need not be what any site did.
    private static Sentence? AsDone(WorthFindings findings)
    {
        if (findings.AsDone is not { NetBenefit.Estimate: { } net } done) return null;
        var (words, benefit) = (new WorthWords(findings), WorthWords.NetBenefit(done));
        var opening = $"As it was done, site by site, screening {(net > 0 ? "gains" : "comes to")} {{0}} {{1}} over the same days";
        return findings.AsDoneTurn is { Pays: WorthPays.Above, BreakEven: not null } turn
            ? new Sentence(opening + " and pays while more than {2} in 1,000 people are infected each week.", benefit[0], words.Currency, WorthWords.BreakEven(turn))
            : new Sentence(opening + ".", benefit[0], words.Currency);
    }
}
