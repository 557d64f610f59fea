namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// A folder for what files of other formats are turned into. Only this user can look into it; it goes with all that is in it.
/// </summary>
internal sealed class PrivateFolder : IDisposable
{
    private string? path;
    private int files;

    /// <summary>The folder, once a file was made in it.</summary>
    public string? Path => path;

    /// <summary>A new file, open for writing.</summary>
    public FileStream Create(out string name)
    {
        path ??= Directory.CreateTempSubdirectory("screenstats-").FullName;
        name = System.IO.Path.Combine(path, $"{++files}");
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.ReadWrite, Share = FileShare.Read, BufferSize = 1 << 16 };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return new FileStream(name, options);
    }

    public void Dispose()
    {
        if (path is null) return;
        try
        {
            Directory.Delete(path, recursive: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // It cannot be told to anybody better than the error that may be on its way; only this user can look into it.
        }

        path = null;
    }
}
