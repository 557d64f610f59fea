using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Lots;

internal static class LotSentences
{
    public static ImmutableArray<Sentence> Of(Table<LotFinding> lots)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        var named = lots.Where(lot => lot.Lot != Levels.None).ToList();
        foreach (var lot in named.Where(lot => lot.Flag != Flag.None))
        {
            var path = FigurePath.Row("lots", lot.Lot);
            if (lot.Flag.HasFlag(Flag.Refuted))
            {
                sentences.Add(FlagSentences.Refuted(path, "lot", "Lot", lot));
                if (FlagSentences.Where(path, "site", lot) is { } where) sentences.Add(where);
            }

            if (lot.Flag.HasFlag(Flag.Invalid)) sentences.Add(FlagSentences.Invalid(path, "lot", "Lot", lot));
        }

        if (named.Count == 0) sentences.Add(new Sentence("No lot is recorded, so lots cannot be compared."));
        else if (sentences.Count > 0)
            sentences.Add(new Sentence("A flag on a lot does not say that its positives were false, nor that anybody may return to work: that is for the confirmatory test and for local rules."));
        else if (named.Count == 1) sentences.Add(new Sentence("Only one lot is recorded, so there is nothing to compare it with."));
        else
            sentences.Add(new Sentence("No lot stands out by its refuted positives or by its inconclusive and invalid runs. A small lot can be faulty without standing out."));

        sentences.AddRange(FlagSentences.Explained(lot => FigurePath.Row("lots", lot.Name), "lot", "Lot", named));
        if (named.Count > 0 && lots.SingleOrDefault(lot => lot.Lot == Levels.None) is { } none)
        {
            sentences.Add(new Sentence(
                "{0} runs have no lot recorded, with {1} refuted positives among them. They are in no comparison of lots.",
                Figure.Count(FigurePath.Row("lots", none.Lot) + ".runs", none.Runs),
                Figure.Count(FigurePath.Row("lots", none.Lot) + ".refuted", none.Refuted)));
        }

        return sentences.ToImmutable();
    }
}
