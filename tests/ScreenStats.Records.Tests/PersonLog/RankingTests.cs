using CsCheck;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Codes;

namespace ScreenStats.Records.Tests.PersonLog;

public class RankingTests
{
    // Texts of exports are valid UTF-8: no halves of letters.
    private static readonly string[] Letters = ["\0", " ", "0", "9", "A", "k", "ß", "\u00fe", "\u00ff", "\u0100", "\U0001f600", "\uffff"];

    [Fact]
    public void Ranks_are_those_of_the_ordinal_order() =>
        Gen.Int[0, Letters.Length - 1].Array[0, 11].Select(at => string.Concat(at.Select(one => Letters[one]))).List[0, 40].Sample(texts =>
        {
            var vocabulary = new Vocabulary();
            foreach (var text in texts) vocabulary.Code(text);
            var ranking = new Ranking(vocabulary);
            var ordered = texts.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
            Enumerable.Range(0, ordered.Count).Select(ranking.TextOfRank).Should().Equal(ordered);
            ranking.Texts.Select((text, code) => ranking.TextOfRank(ranking.RankOf(code)) == text).Should().NotContain(false);
        });
}
