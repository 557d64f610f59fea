namespace ScreenStats.Testing;

/// <summary>Finds the checkout: source paths in a deterministic build say nothing about where the files are.</summary>
public static class RepositoryRoot
{
    public static string Path { get; } = Find();

    public static string Combine(params string[] parts) => System.IO.Path.Combine([Path, .. parts]);

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(System.IO.Path.Combine(folder.FullName, "ScreenStats.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException("No folder above the tests holds ScreenStats.sln.");
    }
}
