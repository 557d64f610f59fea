namespace ScreenStats.Records.Formats;

/// <summary>
/// Lines of the text that is read as lines of the file that somebody can open: rows of a sheet, lines of resources.
/// Holds only the lines at which the distance between the two changes.
/// </summary>
internal sealed class LineMap
{
    /// <summary>Lines of a file that is read as it is.</summary>
    public static readonly LineMap Same = new();

    private readonly List<(long Line, long Source)> changes = [];

    /// <summary>Says where a line comes from; lines come in order.</summary>
    public void Add(long line, long source)
    {
        if (Of(line) != source) changes.Add((line, source));
    }

    /// <summary>The line of the original file.</summary>
    public long Of(long line)
    {
        var low = -1;
        var high = changes.Count - 1;
        while (low < high)
        {
            var middle = (low + high + 1) >> 1;
            if (changes[middle].Line <= line) low = middle;
            else high = middle - 1;
        }

        return low < 0 ? line : changes[low].Source + line - changes[low].Line;
    }
}
