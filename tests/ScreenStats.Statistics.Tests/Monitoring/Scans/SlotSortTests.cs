using ScreenStats.Statistics.Monitoring.Scans;

namespace ScreenStats.Statistics.Tests.Monitoring.Scans;

public sealed class SlotSortTests
{
    [Fact]
    public void Slots_are_sorted_whatever_their_number_and_range() => Gen.Select(Gen.Int[1, 2000], Gen.OneOf(Gen.Int[1, 3], Gen.Int[2047, 2050], Gen.Int[1, 5_000_000], Gen.Const(int.MaxValue)), Gen.UInt).Sample((count, below, seed) =>
    {
        var random = new Random((int)(seed >> 1));
        var sort = new SlotSort(2000);
        for (var round = 0; round < 2; round++)
        {
            var slots = Enumerable.Range(0, count).Select(_ => random.Next(below)).ToArray();
            slots.CopyTo(sort.Slots, 0);
            if (!sort.Sort(count, below).SequenceEqual([.. slots.Order()])) return false;
        }

        return true;
    }, iter: 200);
}
