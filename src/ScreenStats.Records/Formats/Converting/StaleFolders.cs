namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// Removes the private folders that processes have left which were killed before they could: they hold what exports were turned
/// into. One is removed only where its name begins as ours do, it is a folder itself and no link, nobody but its owner can look into
/// it, and the lock file in it is there and held by nobody. Links in it are removed, what they lead to is not.
/// </summary>
internal static class StaleFolders
{
    /// <summary>Removes them; what cannot be removed stays.</summary>
    /// <param name="temporary">The folder of temporary files.</param>
    public static void Remove(string temporary)
    {
        try
        {
            foreach (var folder in new DirectoryInfo(temporary).EnumerateDirectories(PrivateFolder.Prefix + "*", new EnumerationOptions { AttributesToSkip = FileAttributes.ReparsePoint }))
            {
                if (!Remove(folder)) return;
            }
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or System.Security.SecurityException)
        {
            // Another process may remove the same folders, and some belong to others: neither is a reason not to read.
        }
    }

    /// <summary>False where files cannot be locked here, so that nothing tells a folder in use from one that was left.</summary>
    private static bool Remove(DirectoryInfo folder)
    {
        try
        {
            if (folder.LinkTarget is not null || !Private(folder)) return true;
            var file = new FileInfo(Path.Combine(folder.FullName, PrivateFolder.Lock));
            if (!file.Exists || file.LinkTarget is not null || file.Attributes.HasFlag(FileAttributes.ReparsePoint)) return true;
            using (var held = Hold(file.FullName))
            {
                if (held is null) return true;
                using var again = Hold(file.FullName);
                if (again is not null) return false;
                // Windows removes no file that is open; elsewhere nobody else can take it for a folder to remove meanwhile.
                if (!OperatingSystem.IsWindows()) folder.Delete(recursive: true);
            }

            if (OperatingSystem.IsWindows()) folder.Delete(recursive: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or System.Security.SecurityException)
        {
            // It belongs to somebody else, or another process removes it.
        }

        return true;
    }

    private static bool Private(DirectoryInfo folder) =>
        OperatingSystem.IsWindows() || folder.UnixFileMode == (UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);

    private static FileStream? Hold(string file)
    {
        try
        {
            return new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException)
        {
            return null;
        }
    }
}
