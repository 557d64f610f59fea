using System.Globalization;
using ScreenStats.Counting.Programs;
using ScreenStats.Testing;

namespace ScreenStats.Warehouse.Tests.Programs;

/// <summary>The sample program, its words put into those of the contract, as whoever writes a view does.</summary>
internal static class SamplePrograms
{
    private static readonly Lazy<SmallProgram> Known = new(Read);

    public static SmallProgram Marrowlight() => Known.Value;

    private static SmallProgram Read()
    {
        var folder = RepositoryRoot.Combine("sample-data", "marrowlight");
        var settings = ScreeningProgram.Open(folder).Settings;
        var text = File.ReadAllText(Path.Combine(folder, "program.json")).Trim();
        // The mapping of headings and words is of files: here rows have canonical ones already, on every road.
        var exports = System.Text.Json.Nodes.JsonNode.Parse(text)!.AsObject();
        exports.Remove("exports");
        var members = exports.ToJsonString().Trim();
        return new SmallProgram("marrowlight", members[1..^1], Rows(Path.Combine(folder, "screening.csv"), settings.Exports.Screening), Rows(Path.Combine(folder, "confirmatory.csv"), settings.Exports.Confirmatory),
            new[] { "controls.csv", "headcount.csv", "sites.csv" }.ToDictionary(name => name, name => File.ReadAllText(Path.Combine(folder, name))))
        {
            Zone = settings.TimeZone is null ? null : TimeZoneInfo.FindSystemTimeZoneById(settings.TimeZone),
        };
    }

    private static List<Row> Rows(string path, ExportSettings settings)
    {
        var rows = Row.Of(File.ReadAllText(path));
        var words = new Dictionary<string, string>(settings.Words, StringComparer.OrdinalIgnoreCase);
        foreach (var row in rows)
        {
            foreach (var (column, heading) in settings.Columns)
            {
                row[column] = row[heading];
                row[heading] = "";
            }

            foreach (var column in new[] { "result", "specimen", "collection", "symptomatic", "exposed", "control", "reason" })
            {
                if (words.TryGetValue(row[column], out var meaning)) row[column] = meaning;
                row[column] = row[column].ToLowerInvariant();
            }

            // A time that cannot be read is not there, in a typed column.
            foreach (var column in new[] { "collected_at", "read_at", "lot_expiry", "reported_at" })
            {
                if (!Readable(row[column])) row[column] = "";
            }

            foreach (var column in new[] { "symptomatic", "exposed" })
            {
                if (row[column] is not ("yes" or "no")) row[column] = "";
            }
        }

        return [.. rows];
    }

    private static bool Readable(string text) => text.Length == 0
        || DateTime.TryParseExact(text, ["yyyy-MM-dd", "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd'T'HH:mm:ss"], CultureInfo.InvariantCulture, DateTimeStyles.None, out _);
}
