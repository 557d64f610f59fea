using ScreenStats.Records.PersonLog.Identifiers;

namespace ScreenStats.Records.Tests.PersonLog;

public sealed class RepeatedPrintsTests
{
    // More than a batch of several slabs; gaps, repeats near and far, within a thread's log and between two.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(8)]
    public void Every_repeat_is_found_in_whatever_number_of_ranges(int rangeBits)
    {
        var random = new Random(7);
        using ScreenIdLog first = new(), second = new();
        var known = new Dictionary<ulong, List<uint>>();
        for (uint row = 0; row < 40_000; row++)
        {
            if (random.Next(50) == 0) continue;
            var id = random.Next(100) == 0 ? (ulong)random.NextInt64(500) << 50 : (ulong)random.NextInt64() << 1;
            (row / 1000 % 2 == 0 ? first : second).Add(id, row);
            var print = Math.Max(id >> (64 - ScreenIdLog.PrintBits), 1);
            if (!known.TryGetValue(print, out var rows)) known.Add(print, rows = []);
            rows.Add(row);
        }

        ScreenIdLog[] logs = [first, second];
        foreach (var log in logs) log.EndRun();
        var prints = new RepeatedPrints();
        for (var range = 0; range < 1 << rangeBits; range++) prints.Find(logs, rangeBits, range);

        var expected = known.Values.Where(rows => rows.Count > 1).OrderBy(rows => rows[0]).Select(rows => string.Join(' ', rows)).ToList();
        expected.Count.Should().BeGreaterThan(50);
        prints.Groups.OrderBy(rows => rows[0]).Select(rows => string.Join(' ', rows)).Should().Equal(expected);
    }

    [Fact]
    public void A_filter_holds_what_was_added_and_of_the_rest_about_one_in_as_many_as_it_has_bits()
    {
        var filter = new PrintFilter();
        foreach (var size in new[] { 100_000, 1_000, 200_000 })
        {
            var random = new Random(size);
            var prints = Enumerable.Range(0, size).Select(_ => (ulong)random.NextInt64() >> 24).Distinct().ToList();
            filter.Begin(prints.Count, 16);
            prints.Count(print => !filter.Add(print)).Should().BeLessThan(prints.Count / 16);
            prints.Should().OnlyContain(print => filter.Holds(print));
            Enumerable.Range(0, size).Count(_ => filter.Holds((1ul << 39) | ((ulong)random.NextInt64() >> 25))).Should().BeLessThan(size / 8);
        }
    }
}
