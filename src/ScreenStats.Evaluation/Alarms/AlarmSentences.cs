using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Alarms;

internal static class AlarmSentences
{
    public static ImmutableArray<Sentence> Of(AlarmFindings found, Tally tally)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        if (tally.FirstDay is null) return [new Sentence("No run was counted, so there is no day to look at.")];
        sentences.Add(found.Raised == 0
            ? new Sentence("Had the alarms run every day, none would have come.")
            : new Sentence(
                $"Had the alarms run every day, {{0}} would have come; {{1}} {Figure.Plural(found.Open, "calls", "call")} for action at the end of the data.",
                Figure.Count("alarms.raised", found.Raised), Figure.Count("alarms.open", found.Open)));
        foreach (var lot in found.Lots)
        {
            var path = FigurePath.Row("alarms.lots", lot.Lot);
            if (lot.AlarmDay is null)
            {
                sentences.Add(new Sentence("No alarm would have named lot {0}, though the whole span flags it.", Figure.Name(path + ".lot", lot.Lot)));
                continue;
            }

            sentences.Add(new Sentence(
                $"The alarm on lot {{0}} would have come at the end of {{1}}, with {{2}} of its {{3}} refuted positives reported before that day and {{4}} by its end. After that day the lot was used {{5}} {Figure.Plural(lot.RunsAfter ?? 0, "time", "times")} more, "
                + $"with {{6}} {Figure.Plural(lot.PositivesAfter ?? 0, "positive run, which may have kept somebody from work", "positive runs, each of which may have kept somebody from work")}.",
                Figure.Name(path + ".lot", lot.Lot), Figure.Day(path + ".alarmDay", lot.AlarmDay), Figure.Count(path + ".refutedBefore", lot.RefutedBefore ?? 0), Figure.Count(path + ".refuted", lot.Refuted),
                Figure.Count(path + ".refutedBy", lot.RefutedBy ?? 0), Figure.Count(path + ".runsAfter", lot.RunsAfter ?? 0), Figure.Count(path + ".positivesAfter", lot.PositivesAfter ?? 0)));
        }

        if (!found.Lots.IsEmpty) sentences.Add(new Sentence("How much of a lot is left on hand is not in the exports."));
        sentences.Add(new Sentence("An alarm does not say that a positive was false, nor that anybody may return to work: it says that a place needs looking into."));
        return sentences.ToImmutable();
    }
}
