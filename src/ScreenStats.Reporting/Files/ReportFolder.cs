namespace ScreenStats.Reporting.Files;

/// <summary>Puts a whole folder in its place at once, and never over something that is not ours.</summary>
internal static class ReportFolder
{
    /// <summary>Whether a report may be written here; looks only.</summary>
    /// <param name="folder">Where the report is to be.</param>
    /// <exception cref="NotOurFolderException">A file, or a folder that is not wholly a report of ours, stands there.</exception>
    public static void Check(string folder)
    {
        var target = Full(folder);
        if (File.Exists(target)) throw new NotOurFolderException($"{folder} is a file; nothing was written. Choose another folder for the report.");
        if (!Directory.Exists(target)) return;
        var own = Manifest.OwnFilesOf(target) ?? throw new NotOurFolderException(
            $"The folder {folder} exists and holds no {Manifest.FileName} of a report of ours; nothing was written. Choose another folder, or remove it yourself.");
        foreach (var path in Directory.EnumerateFiles(target, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            var name = Path.GetRelativePath(target, path).Replace('\\', '/');
            if (!own.Contains(name) && name is not (Report.PrintName or Report.PrintPartName))
            {
                throw new NotOurFolderException(
                    $"The report folder {folder} holds {name}, which is not part of the report; nothing was written. Move it elsewhere, or choose another folder.");
            }
        }
    }

    /// <summary>Writes the files beside the place and swaps them in. On any failure the place is as it was, and nothing is left over.</summary>
    /// <param name="folder">Where the report is to be.</param>
    /// <param name="files">Relative paths with slashes, and bytes.</param>
    /// <param name="cancellationToken">Stops before the swap.</param>
    /// <param name="ownerOnly">The file that its owner alone may read; null: all have the mode that files usually have.</param>
    /// <exception cref="NotOurFolderException">As <see cref="Check"/>.</exception>
    public static void Write(string folder, IReadOnlyCollection<KeyValuePair<string, byte[]>> files, CancellationToken cancellationToken, string? ownerOnly = null)
    {
        Check(folder);
        var target = Full(folder);
        var parent = Path.GetDirectoryName(target) ?? throw new NotOurFolderException($"{folder} is the root of a disk; choose a folder for the report.");
        var mark = Guid.NewGuid().ToString("N")[..8];
        var building = Path.Combine(parent, $".{Path.GetFileName(target)}.{mark}.new");
        var former = Path.Combine(parent, $".{Path.GetFileName(target)}.{mark}.old");
        try
        {
            var usual = CreatePrivate(building);
            foreach (var (name, bytes) in files)
            {
                cancellationToken.ThrowIfCancellationRequested();
                CheckName(name);
                var path = Path.Combine(building, name.Replace('/', Path.DirectorySeparatorChar));
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.WriteAllBytes(path, bytes);
                if (name == ownerOnly && !OperatingSystem.IsWindows()) File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);
            }

            cancellationToken.ThrowIfCancellationRequested();
            if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(building, usual);
            Swap(target, building, former);
        }
        finally
        {
            if (Directory.Exists(building)) Directory.Delete(building, recursive: true);
        }
    }

    /// <summary>Makes the folder that the report is built in, which its owner alone can enter until it is whole; answers the mode that folders usually have.</summary>
    private static UnixFileMode CreatePrivate(string building)
    {
        Directory.CreateDirectory(building);
        if (OperatingSystem.IsWindows()) return default;
        var usual = File.GetUnixFileMode(building);
        File.SetUnixFileMode(building, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        return usual;
    }

    // Names of files are made of the ids of tables and pictures. None may lead out of the folder, whatever an id comes to hold.
    private static void CheckName(string name)
    {
        if (Path.IsPathRooted(name) || name.Split('/', '\\').Any(part => part is "" or "." or "..") || name.Any(char.IsControl) || name.Contains(':', StringComparison.Ordinal))
        {
            throw new ArgumentException("The name of a file of the report leads out of its folder.", nameof(name));
        }
    }

    private static void Swap(string target, string building, string former)
    {
        var replaces = Directory.Exists(target);
        if (replaces) Directory.Move(target, former);
        try
        {
            Directory.Move(building, target);
        }
        catch when (replaces)
        {
            Directory.Move(former, target);
            throw;
        }

        if (replaces) Directory.Delete(former, recursive: true);
    }

    private static string Full(string folder) => Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
}
