namespace ScreenStats.Records.Formats;

/// <summary>What tells, without reading it, that a file is no longer what it was: its length and when it was written to.</summary>
/// <param name="Length">Bytes; -1 where there is no such file.</param>
/// <param name="Written">When it was last written to.</param>
internal readonly record struct FileStamp(long Length, DateTime Written)
{
    public static FileStamp Of(string path)
    {
        try
        {
            var file = new FileInfo(path);
            return file.Exists ? new(file.Length, file.LastWriteTimeUtc) : new(-1, default);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return new(-1, default);
        }
    }
}
