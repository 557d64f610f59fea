namespace ScreenStats.Records.Validation;

/// <summary>A row's place before the lines of earlier blocks are known: file, block and line in the block, ordered as in the export.</summary>
internal static class Place
{
    public static long Of(int file, int block, int line) => ((long)file << 48) | ((long)block << 24) | (uint)line;

    /// <summary>The same place in a file of another number.</summary>
    public static long In(int file, long place) => (place & 0xFFFF_FFFF_FFFF) | ((long)file << 48);

    public static int File(long place) => (int)(place >> 48);

    public static int Block(long place) => (int)(place >> 24) & 0xFF_FFFF;

    public static int Line(long place) => (int)place & 0xFF_FFFF;
}
