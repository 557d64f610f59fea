namespace ScreenStats.Records.Formats;

/// <summary>Tells whether a file lies inside a folder, once every link on its way is followed.</summary>
internal sealed class FolderBounds(string folder)
{
    private const int MostLinks = 40;
    private readonly string real = Real(Path.GetFullPath(folder));

    /// <summary>True for a name that is not relative to a folder, or climbs out of it.</summary>
    public static bool LeadsOut(string name) =>
        Path.IsPathRooted(name) || name.StartsWith('/') || name.StartsWith('\\') || (name.Length > 1 && name[1] == ':')
        || name.Split('/', '\\').Contains("..");

    /// <summary>True where the file lies inside the folder.</summary>
    public bool Holds(string file)
    {
        var target = Real(Path.GetFullPath(file));
        return target.StartsWith(Path.EndsInDirectorySeparator(real) ? real : real + Path.DirectorySeparatorChar, StringComparison.Ordinal);
    }

    /// <summary>The path with every link followed; the path itself where links lead in a circle.</summary>
    private static string Real(string path)
    {
        var links = 0;
        var root = Path.GetPathRoot(path) ?? "";
        var pending = new Stack<string>(path[root.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).Reverse());
        var at = root;
        while (pending.TryPop(out var step))
        {
            if (step == ".") continue;
            if (step == "..")
            {
                at = Path.GetDirectoryName(at) ?? root;
                continue;
            }

            var next = Path.Combine(at, step);
            var target = new FileInfo(next).LinkTarget;
            if (target is null || ++links > MostLinks)
            {
                at = next;
                continue;
            }

            if (Path.IsPathRooted(target)) at = Path.GetPathRoot(target) ?? root;
            foreach (var part in target.Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).Reverse()) pending.Push(part);
        }

        return at;
    }
}
