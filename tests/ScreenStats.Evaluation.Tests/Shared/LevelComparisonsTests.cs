using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Tests.Shared;

public class LevelComparisonsTests
{
    // Closed form: P(K >= 3) = (C(10,3) C(30,1) + C(10,4)) / C(40,4) = 3810 / 91390.
    private const double Tail = 3810.0 / 91390;

    [Fact]
    public void In_one_stratum_the_chance_is_the_hypergeometric_tail_and_Holm_multiplies_the_smallest_by_the_number_compared()
    {
        var found = Compare([("A", "", 10, 3), ("B", "", 20, 1), ("C", "", 10, 0)]);

        found["A"].P.Should().BeApproximately(Tail, 1e-12);
        found["A"].PHolm.Should().BeApproximately(3 * Tail, 1e-12);
        (found["A"].Expected, found["A"].Compared, found["C"].P, found["C"].PHolm).Should().Be((1.0, 3, 1.0, 1.0));
    }

    [Fact]
    public void Trials_and_events_that_come_in_different_counts_are_one_count() =>
        Compare([("A", "", 10, 0), ("B", "", 32, 0), ("A", "", 0, 3), ("B", "", 0, 1), ("B", "", -2, 0)])["A"].P.Should().BeApproximately(Tail, 1e-12);

    [Fact]
    public void What_sites_differ_by_makes_no_operator_look_bad()
    {
        var found = Compare([("a", "North", 1000, 5), ("b", "North", 1000, 5), ("c", "South", 500, 50), ("d", "South", 500, 50)]);

        found["c"].Expected.Should().Be(50);
        found["c"].P.Should().BeGreaterThan(0.5);
        found.Values.Should().OnlyContain(one => !one.StandsOut);
    }

    [Fact]
    public void One_alone_at_its_place_is_not_compared_and_neither_is_what_is_not_recorded()
    {
        var found = Compare([("a", "North", 10, 5), ("b", "South", 10, 1), ("c", "South", 10, 2), (Levels.None, "South", 10, 9)]);

        found.At("a").Should().Match<LevelComparison>(one => one.P == null && one.PUndefined!.StartsWith("nothing to compare it with", StringComparison.Ordinal));
        (found.At("b").Compared, found.At("b").Expected).Should().Be((2, 1.5));
        found.At(Levels.None).PUndefined.Should().Be("what is not recorded is not compared");
    }

    [Fact]
    public void Without_an_event_there_is_nothing_to_compare() =>
        Compare([("a", "", 10, 0), ("b", "", 10, 0)]).Values.Should().OnlyContain(one => one.PUndefined == "there is no event to compare");

    private static IReadOnlyDictionary<string, LevelComparison> Compare(IEnumerable<(string Level, string Stratum, long Trials, long Events)> counts)
    {
        var levels = new LevelCounts();
        foreach (var (level, stratum, trials, events) in counts) levels.Add(level, stratum, trials, events);
        return LevelComparisons.Of(levels);
    }
}
