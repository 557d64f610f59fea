using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Participation;

internal static class ParticipationSentences
{
    public static ImmutableArray<Sentence> Of(ParticipationFindings found)
    {
        if (found.Persons == 0) return [new Sentence("Nobody was tested, so there is nothing to say about participation.")];
        var runs = new Sentence(
            "{0} people had {1} counted runs: {2} in the median, {3} or fewer for one in ten, {4} or fewer for nine in ten. {5} had one run only.",
            Figure.Count("participation.persons", found.Persons), Figure.Count("participation.runs", found.Runs),
            Figure.Number("participation.medianRuns", found.MedianRuns, Unit.Days), Figure.Number("participation.tenthPercentileRuns", found.TenthPercentileRuns, Unit.Days),
            Figure.Number("participation.ninetiethPercentileRuns", found.NinetiethPercentileRuns, Unit.Days), Figure.Count("participation.oneRunOnly", found.OneRunOnly));
        if (found.Gaps == 0) return [runs, new Sentence("Nobody was tested twice, so there are no days between runs.")];
        return
        [
            runs,
            new Sentence(
                "From one run of a person to the next {0} days passed in the median, and {1} or fewer in nine of ten ({2} pairs of runs).",
                Figure.Number("participation.medianGapDays", found.MedianGapDays, Unit.Days),
                Figure.Number("participation.ninetiethPercentileGapDays", found.NinetiethPercentileGapDays, Unit.Days),
                Figure.Count("participation.gaps", found.Gaps)),
        ];
    }
}
