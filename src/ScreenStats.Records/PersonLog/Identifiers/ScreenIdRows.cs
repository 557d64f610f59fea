namespace ScreenStats.Records.PersonLog.Identifiers;

/// <summary>The rows behind the places of a <see cref="ScreenIdLog"/>, one after the other.</summary>
internal ref struct ScreenIdRows(ReadOnlySpan<ScreenIdLog.Run> runs)
{
    private readonly ReadOnlySpan<ScreenIdLog.Run> runs = runs;
    private int run = -1;
    private int left;
    private uint next;

    /// <summary>The row of the next place.</summary>
    public uint Next()
    {
        while (left == 0) (next, left) = (runs[++run].First, runs[run].Count);
        left--;
        return next++;
    }
}
