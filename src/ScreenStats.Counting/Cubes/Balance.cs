using System.Globalization;

namespace ScreenStats.Counting.Cubes;

/// <summary>Two cubes counted against each other, coordinate by coordinate.</summary>
/// <param name="cube">The cube that is checked.</param>
/// <param name="against">The cube it must agree with.</param>
internal sealed class Balance(string cube, string against)
{
    private readonly Dictionary<ulong, (long Left, long Right)> sums = [];

    public void Left(ulong key, long count)
    {
        ref var sum = ref System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(sums, key, out _);
        sum.Left += count;
    }

    public void Right(ulong key, long count)
    {
        ref var sum = ref System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(sums, key, out _);
        sum.Right += count;
    }

    /// <exception cref="ArgumentException">The two differ at any coordinates.</exception>
    public void MustBeEqual()
    {
        var (places, more, fewer) = (0L, 0L, 0L);
        foreach (var (left, right) in sums.Values)
        {
            if (left == right) continue;
            places++;
            if (left > right) more += left - right;
            else fewer += right - left;
        }

        if (places > 0)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"The cubes {cube} and {against} disagree in {places} places: {cube} has {more} more and {fewer} fewer."));
        }
    }

    /// <exception cref="ArgumentException">The first is larger anywhere.</exception>
    public void MustBeWithin()
    {
        var (places, more) = (0L, 0L);
        foreach (var (left, right) in sums.Values)
        {
            if (left <= right) continue;
            places++;
            more += left - right;
        }

        if (places > 0)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"The cubes {cube} and {against} disagree in {places} places: {cube} has {more} more than {against}, of which they are part."));
        }
    }
}
