using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// How much a reading may write into the folder of temporary files: no more than was stated, and never so much that the disk
/// is left without room for others.
/// </summary>
/// <param name="largest">Bytes that all files of the reading may be turned into together.</param>
/// <param name="free">Bytes that are free on the disk of temporary files; null where nobody can tell.</param>
internal sealed class UnpackingRoom(long largest, Func<long?> free)
{
    /// <summary>Bytes that may come out of a file whatever went in.</summary>
    public const long AlwaysAllowed = 64L << 20;

    /// <summary>How many times as long as the file what comes out may be beyond that; text of exports is 5 to 30 times as long.</summary>
    public const int MostTimes = 200;

    /// <summary>Bytes that stay free on the disk of temporary files.</summary>
    public const long LeftFree = 512L << 20;

    private const long Step = 16L << 20;
    private const double Gigabyte = 1L << 30;

    private long taken;
    private long looked = -Step;

    /// <summary>Takes room for bytes that are to be written.</summary>
    /// <param name="bytes">How many.</param>
    /// <param name="name">The file they come from.</param>
    /// <exception cref="FileFault">There is no room for them.</exception>
    public void Take(long bytes, string name)
    {
        taken += bytes;
        if (taken > largest)
        {
            throw new FileFault(ReadingDiagnostics.NoRoomToUnpack, FormattableString.Invariant(
                $"{name} and the files before it unpack to more than {largest / Gigabyte:0.##} GB, which is as much as is unpacked into temporary files. {Instead}"));
        }

        if (taken - looked < Step) return;
        looked = taken;
        if (free() is { } left && left - bytes < LeftFree)
        {
            throw new FileFault(ReadingDiagnostics.NoRoomToUnpack, FormattableString.Invariant(
                $"{name} cannot be unpacked: the disk of temporary files would be left with less than {LeftFree / Gigabyte:0.##} GB. Make room there, or {char.ToLowerInvariant(Instead[0])}{Instead[1..]}"));
        }
    }

    /// <summary>Bytes that are free where a folder lies; null where nobody can tell.</summary>
    public static long? FreeAt(string? folder)
    {
        try
        {
            return folder is null ? null : new DriveInfo(folder).AvailableFreeSpace;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return null;
        }
    }

    private const string Instead = "Unpack it yourself (gunzip; a workbook: export it as CSV) and put the text in its place: text is read where it lies and needs no room.";
}
