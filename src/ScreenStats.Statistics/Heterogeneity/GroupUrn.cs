using ScreenStats.Statistics.Monitoring.Scans;

namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>Draws trials without putting back and counts on which groups they fall: Floyd's sample, as many draws as events.</summary>
/// <remarks>
/// The group and the last draw of each trial are kept in arrays where there are not too many trials, else looked up in a list and a set: the same tables
/// from the same stream.
/// </remarks>
internal sealed class GroupUrn
{
    /// <summary>Above so many trials nothing is kept of each.</summary>
    public const int MostKept = 2_000_000;

    private readonly long[] starts;
    private readonly long trials;
    private readonly int[]? groups;
    private readonly int[] drawn = [];
    private readonly HashSet<long> taken = [];
    private int draw;

    public GroupUrn(long[] sizes, long trials, long mostKept = MostKept)
    {
        this.trials = trials;
        starts = new long[sizes.Length + 1];
        for (var i = 0; i < sizes.Length; i++) starts[i + 1] = starts[i] + sizes[i];
        if (trials > mostKept) return;
        (groups, drawn) = (new int[trials], new int[trials]);
        for (var i = 0; i < sizes.Length; i++) groups.AsSpan((int)starts[i], (int)sizes[i]).Fill(i);
    }

    /// <summary>A table of so many trials.</summary>
    public void Draw(ref ReplicateStream stream, long count, long[] table)
    {
        draw++;
        taken.Clear();
        Array.Clear(table);
        for (var top = trials - count; top < trials; top++)
        {
            var place = stream.Below(top + 1);
            if (!Take(place)) Take(place = top);
            table[Group(place)]++;
        }
    }

    private bool Take(long place)
    {
        if (groups is null) return taken.Add(place);
        if (drawn[place] == draw) return false;
        drawn[place] = draw;
        return true;
    }

    private int Group(long place)
    {
        if (groups is not null) return groups[place];
        var index = Array.BinarySearch(starts, place);
        if (index < 0) return ~index - 1;
        while (index + 1 < starts.Length && starts[index + 1] == starts[index]) index++;
        return index;
    }
}
