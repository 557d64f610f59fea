using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>The first sentence: which option, and how sure that is, in three bands by the share of the draws in which the rule chooses it.</summary>
internal static class OpeningSentences
{
    /// <summary>From this share on the choice is told as it is.</summary>
    private const double Sure = 0.8;

    /// <summary>From this share on it is likely; below no option stands out.</summary>
    private const double Likely = 0.5;

    /// <summary>A less frequent option that is behind by no more than this part of the days removed, both after the price of the screens, is as good.</summary>
    private const double Tie = 0.01;

    /// <summary>The sentence.</summary>
    public static Sentence Of(CadenceFindings findings, CadenceFigures figures, CadenceOptionFinding leading)
    {
        if (Choose(findings, leading) is not { } chosen)
            return new Sentence(leading.IsPlanned ? "The plan is \"{0}\"." : "Nearest to what was done is \"{0}\".", CadenceFigures.Name(leading));
        var (own, other, tied, band) = chosen;
        var template = leading.IsNone ? None(band, other is not null) : band switch
        {
            2 => "The option to choose is \"{0}\", in {1} of the draws over all that is uncertain: ",
            1 => "The option to choose is likely \"{0}\" ({1} of the draws over all that is uncertain" + (other is null ? "): " : "; \"{2}\" {3}): "),
            _ => "No option stands out: by the central figures \"{0}\" comes first ({1} of the draws over all that is uncertain)" + (other is null ? "" : Rival(own, other, tied)),
        };
        if (!leading.IsNone && band > 0) template += "more screening adds less than the {4} infectious days for each 1,000 screens that the program file asks for, and less screening gives up more.";
        return AnswerSentences.Compact(template, Figures(figures, leading, chosen));
    }

    /// <summary>The same as the beginning of one sentence that says what the option gives.</summary>
    /// <param name="findings">What was found.</param>
    /// <param name="figures">Its figures.</param>
    /// <param name="leading">The option.</param>
    /// <param name="gives">What it gives, its figures from {5} on; nothing for no screening.</param>
    /// <param name="later">What would be chosen as things were last; left out where no option stands out.</param>
    /// <param name="given">The figures of both.</param>
    public static Sentence InShort(CadenceFindings findings, CadenceFigures figures, CadenceOptionFinding leading, string gives, string later, params FigureReference[] given)
    {
        if (Choose(findings, leading) is not { } chosen)
        {
            var opening = leading.IsPlanned ? "The plan is \"{0}\": " : "Nearest to what was done is \"{0}\": ";
            return AnswerSentences.Compact(opening + gives + "; nothing states how much a screen must remove.", [CadenceFigures.Name(leading), .. Enumerable.Repeat(CadenceFigures.Name(leading), 4), .. given]);
        }

        var (own, other, tied, band) = chosen;
        var template = (leading.IsNone, band) switch
        {
            (true, _) => None(band, other is not null).TrimEnd('.').Replace("; so it is in", ", in", StringComparison.Ordinal).Replace(" over all that is uncertain", "", StringComparison.Ordinal) + ", for as much infection as assumed.",
            (_, 2) => "The option to choose is \"{0}\", in {1} of the draws: ",
            (_, 1) => "The option to choose is likely \"{0}\", in {1} of the draws: ",
            _ => "No option stands out: \"{0}\" comes first ({1} of the draws)" + (other is null ? "" : tied ? ", hardly before \"{2}\" with fewer screens" : other.ShareOfDraws > own.ShareOfDraws ? ", but \"{2}\" in more ({3})" : ", hardly before \"{2}\"") + "; ",
        };
        return AnswerSentences.Compact(leading.IsNone ? template : template + gives + (band > 0 ? later : "") + ".", [.. Figures(figures, leading, chosen), .. given]);
    }

    // What the rule chooses, what comes next to it, whether the two are tied, and how sure it is: 2 for sure, 1 for likely, 0 where no option stands out.
    private static (CadenceChoice Own, CadenceChoice? Other, bool Tied, int Band)? Choose(CadenceFindings findings, CadenceOptionFinding leading)
    {
        var choices = findings.Choices.Where(choice => choice.Leads).ToList();
        if (!leading.IsChosen || choices.Find(choice => choice.Option == leading.Option) is not { } own) return null;
        var tied = LessFrequent(findings, leading);
        var other = choices.Find(choice => choice.Option == tied?.Option) ?? choices.Where(choice => choice != own && choice.ShareOfDraws > 0).MaxBy(choice => choice.ShareOfDraws);
        return (own, other, tied is not null, tied is not null || own.ShareOfDraws < Likely ? 0 : own.ShareOfDraws < Sure ? 1 : 2);
    }

    private static FigureReference[] Figures(CadenceFigures figures, CadenceOptionFinding leading, (CadenceChoice Own, CadenceChoice? Other, bool Tied, int Band) chosen)
    {
        var second = chosen.Other ?? chosen.Own;
        return [CadenceFigures.Name(leading), Share(chosen.Own), Figure.Name(Path(second) + ".option", second.Option), Share(second), figures.Worthwhile];
    }

    private static string None(int band, bool another)
    {
        const string Rule = "no way of screening pays by the rule of the program file, {4} infectious days removed for each 1,000 more screens";
        var second = another ? ", and \"{2}\" comes first in {3}" : "";
        return band switch
        {
            2 => "N" + Rule[1..] + "; so it is in {1} of the draws over all that is uncertain.",
            1 => "Likely " + Rule + "; so it is in {1} of the draws over all that is uncertain" + second + ".",
            _ => "No option stands out: by the central figures " + Rule + "; so it is in {1} of the draws over all that is uncertain" + second + ".",
        };
    }

    private static string Rival(CadenceChoice own, CadenceChoice other, bool tied) =>
        tied ? ", hardly before \"{2}\" ({3}), which gives all but as much after the price of its screens and asks for fewer: on such a tie take the less frequent, \"{2}\"."
        : other.ShareOfDraws > own.ShareOfDraws ? ", but \"{2}\" does in more of the draws ({3})." : ", hardly before \"{2}\" ({3}).";

    /// <summary>The least frequent option that is as good as the one chosen; null where that one is ahead.</summary>
    private static CadenceOptionFinding? LessFrequent(CadenceFindings findings, CadenceOptionFinding chosen)
    {
        double? Of(CadenceOptionFinding option, CadenceMeasure measure) => findings.Outcome(option.Option, measure)?.Figure.Estimate;
        double? Net(CadenceOptionFinding option) => Of(option, CadenceMeasure.InfectiousDaysRemoved) - (findings.Worthwhile * Of(option, CadenceMeasure.Screens) / 1_000);
        return Net(chosen) is not { } most || Of(chosen, CadenceMeasure.InfectiousDaysRemoved) is not { } removed || removed <= 0 ? null
            : findings.Options.FirstOrDefault(option => !option.IsAsDone && option.ScreensPerDay < chosen.ScreensPerDay && most - Net(option) <= Tie * removed);
    }

    private static FigureReference Share(CadenceChoice choice) => Figure.Number(Path(choice) + ".shareOfDraws", choice.ShareOfDraws, Unit.Proportion);

    private static string Path(CadenceChoice choice) => FigurePath.Row("cadence.choices", choice.Key);
}
