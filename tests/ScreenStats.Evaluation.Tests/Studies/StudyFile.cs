using System.Globalization;
using ScreenStats.Testing;

namespace ScreenStats.Evaluation.Tests.Studies;

/// <summary>
/// A committed study: one line a figure, of the first programs and of all. Every run draws the first and holds them against the file; with
/// SCREENSTATS_FULL_STUDIES=1 all are drawn and the file is written anew.
/// </summary>
internal sealed class StudyFile(string name, string columns)
{
    public static readonly bool IsFull = Environment.GetEnvironmentVariable("SCREENSTATS_FULL_STUDIES") == "1";

    private readonly string path = RepositoryRoot.Combine("tests", "reference", "studies", name);

    /// <summary>The lines whose first column is a key, without it.</summary>
    public IReadOnlyList<string> Lines(string key) =>
        File.Exists(path) ? [.. File.ReadLines(path).Skip(1).Where(line => line.StartsWith(key + ",", StringComparison.Ordinal))] : [];

    /// <summary>Replaces the lines of a key.</summary>
    public void Write(string key, IEnumerable<string> lines)
    {
        var others = File.Exists(path) ? File.ReadLines(path).Skip(1).Where(line => !line.StartsWith(key + ",", StringComparison.Ordinal)) : [];
        File.WriteAllText(path, string.Concat(others.Concat(lines).Order(StringComparer.Ordinal).Prepend(columns).Select(line => line + "\n").ToList()));
    }

    /// <summary>Writes the lines in a full run; else they must be the committed ones.</summary>
    public void Settle(string key, IReadOnlyList<string> lines)
    {
        if (IsFull) Write(key, lines);
        else Lines(key).Should().Equal(lines, "the study is seeded: set SCREENSTATS_FULL_STUDIES to 1 to write it anew where the change is meant");
    }

    public static string Line(params object[] fields) => string.Join(',', fields.Select(field => Convert.ToString(field, CultureInfo.InvariantCulture)));
}
