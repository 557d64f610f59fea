using System.Text;

namespace ScreenStats.Testing;

/// <summary>
/// Compares a text with a committed file. <c>UPDATE_GOLDEN=1</c> writes the file instead, which a build server (CI set) refuses.
/// A missing file is a failure: a check that writes what it compares with checks nothing.
/// </summary>
public static class Golden
{
    /// <summary>
    /// Checks <paramref name="text"/> against <c>tests/golden/&lt;name&gt;</c>; the name may hold folders, such as <c>cli/help-root.txt</c>.
    /// </summary>
    public static void Check(string name, string text) =>
        Check(RepositoryRoot.Combine("tests", "golden", name), text,
            Environment.GetEnvironmentVariable("UPDATE_GOLDEN"), Environment.GetEnvironmentVariable("CI"));

    /// <summary>The same with everything named, so that the helper itself can be tested.</summary>
    public static void Check(string path, string text, string? update, string? ci)
    {
        if (text.Contains('\r', StringComparison.Ordinal)) throw new GoldenException($"{path}: the text holds a carriage return; line ends are \\n.");
        if (update == "1")
        {
            if (!string.IsNullOrEmpty(ci)) throw new GoldenException("UPDATE_GOLDEN is refused where CI is set: golden files are made and read by people.");
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text, new UTF8Encoding(false));
            return;
        }

        if (!File.Exists(path)) throw new GoldenException($"{path} is missing. Run the test with UPDATE_GOLDEN=1 and read the file before it is committed.");
        var expected = File.ReadAllText(path);
        if (expected == text) return;
        var (line, wanted, found) = FirstDifference(expected, text);
        throw new GoldenException($"{path}, line {line}:\n  file: {wanted}\n  text: {found}\nRun with UPDATE_GOLDEN=1 if the text is right.");
    }

    private static (int Line, string Wanted, string Found) FirstDifference(string expected, string text)
    {
        var wanted = expected.Split('\n');
        var found = text.Split('\n');
        var line = 0;
        while (line < wanted.Length && line < found.Length && wanted[line] == found[line]) line++;
        return (line + 1, line < wanted.Length ? wanted[line] : "(ends)", line < found.Length ? found[line] : "(ends)");
    }
}
