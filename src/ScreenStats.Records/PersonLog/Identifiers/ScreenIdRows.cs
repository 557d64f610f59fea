namespace ScreenStats.Records.PersonLog.Identifiers;

/// <summary>The rows behind the places of a <see cref="ScreenIdLog"/>, one after the other.</summary>
internal ref struct ScreenIdRows(ReadOnlySpan<ScreenIdLog.Run> runs)
{
    private readonly ReadOnlySpan<ScreenIdLog.Run> runs = runs;
    private int run;
    private int passed;

    /// <summary>The row of the next place.</summary>
    public uint Next()
    {
        var row = At(0);
        Pass(1);
        return row;
    }

    /// <summary>The row of a place, counted from the next one.</summary>
    public readonly uint At(int ahead)
    {
        var (at, within) = (run, passed + ahead);
        for (; within >= runs[at].Count; at++) within -= runs[at].Count;
        return runs[at].First + (uint)within;
    }

    /// <summary>Passes over places.</summary>
    public void Pass(int places)
    {
        passed += places;
        while (run < runs.Length && passed >= runs[run].Count) passed -= runs[run++].Count;
    }
}
