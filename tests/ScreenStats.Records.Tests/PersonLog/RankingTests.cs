using CsCheck;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Codes;

namespace ScreenStats.Records.Tests.PersonLog;

public class RankingTests
{
    [Fact]
    public void Ranks_are_those_of_the_ordinal_order() =>
        Gen.Char["\0 09Akß\u00fe\u00ff\u0100\ud83d\ude00\uffff"].Array[0, 11].Select(letters => new string(letters)).List[0, 40].Sample(texts =>
        {
            var vocabulary = new Vocabulary();
            foreach (var text in texts) vocabulary.Code(text);
            var ranking = new Ranking(vocabulary);
            var ordered = texts.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
            Enumerable.Range(0, ordered.Count).Select(ranking.TextOfRank).Should().Equal(ordered);
            ranking.Texts.Select((text, code) => ranking.TextOfRank(ranking.RankOf(code)) == text).Should().NotContain(false);
        });
}
