namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// A folder for what files of other formats are turned into. Only this user can look into it; it goes with all that is in it. A
/// file in it stays locked as long as the folder is used, so that what a killed process leaves can be told from what is in use
/// (<see cref="StaleFolders"/>).
/// </summary>
internal sealed class PrivateFolder : IDisposable
{
    /// <summary>How the names of such folders begin.</summary>
    public const string Prefix = "screenstats-";

    /// <summary>The file in it that is locked while it is used.</summary>
    public const string Lock = "lock";

    private string? path;
    private FileStream? held;
    private int files;

    /// <summary>The folder, once a file was made in it.</summary>
    public string? Path => path;

    /// <summary>A new file, open for writing.</summary>
    public FileStream Create(out string name)
    {
        if (path is null)
        {
            path = Directory.CreateTempSubdirectory(Prefix).FullName;
            held = Hold(path);
        }

        name = System.IO.Path.Combine(path, $"{++files}");
        return New(name, FileShare.Read);
    }

    public void Dispose()
    {
        if (path is null) return;
        try
        {
            held?.Dispose();
            Directory.Delete(path, recursive: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // It cannot be told to anybody better than the error that may be on its way; only this user can look into it.
        }

        path = null;
    }

    /// <summary>A file of the name <see cref="Lock"/> is locked from its first moment on: it is locked under another name first.</summary>
    private static FileStream Hold(string folder)
    {
        var name = System.IO.Path.Combine(folder, Lock);
        // Windows locks a file as it makes it, and moves none that is open.
        if (OperatingSystem.IsWindows()) return New(name, FileShare.None);
        var held = New(name + ".new", FileShare.None);
        File.Move(name + ".new", name);
        return held;
    }

    private static FileStream New(string name, FileShare share)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.ReadWrite, Share = share, BufferSize = 1 << 16 };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return new FileStream(name, options);
    }
}
