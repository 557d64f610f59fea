namespace ScreenStats.Records.PersonLog.Sums;

/// <summary>One person's counts by level (site or lot), emptied into the sums of all people.</summary>
internal sealed class LevelCounts(int levels)
{
    private readonly PersonCounts[] counts = new PersonCounts[levels];
    private readonly List<int> touched = [];

    /// <summary>Levels counted since the last emptying.</summary>
    public List<int> Touched => touched;

    /// <summary>The sums over people, by code of the level.</summary>
    public ScopeSums[] Sums { get; } = new ScopeSums[levels];

    public ref PersonCounts Of(int level)
    {
        ref var found = ref counts[level];
        if (found.Runs == 0) touched.Add(level);
        return ref found;
    }

    /// <summary>Empties the counts into the sums.</summary>
    public void EndPerson()
    {
        foreach (var level in touched) Sums[level].Add(counts[level]);
        Clear();
    }

    /// <summary>Empties the counts.</summary>
    public void Clear()
    {
        foreach (var level in touched) counts[level] = default;
        touched.Clear();
    }
}
