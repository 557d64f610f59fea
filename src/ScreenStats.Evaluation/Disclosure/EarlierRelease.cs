using System.Collections.Immutable;
using System.Text;
using ScreenStats.Evaluation.Disclosure.Tables;

namespace ScreenStats.Evaluation.Disclosure;

/// <summary>The tables of an earlier report of the same program, as its readers have them.</summary>
/// <param name="Tables">Comma-separated text of each table by its identifier.</param>
public sealed record EarlierRelease(ImmutableDictionary<string, string> Tables)
{
    /// <summary>The sites that the report speaks of.</summary>
    public IEnumerable<string> Sites => Tables.TryGetValue("sites", out var text) ? Rows(text).Select(row => row["site"]).Distinct(StringComparer.Ordinal) : [];

    internal ReleasedCounts Counts() => ReleasedCounts.Of(id => Tables.TryGetValue(id, out var text) ? Rows(text) : []);

    private static IEnumerable<Row> Rows(string text)
    {
        Dictionary<string, int>? names = null;
        foreach (var fields in Records(text))
        {
            if (names is null)
            {
                names = fields.Select((name, index) => (name, index)).ToDictionary(pair => pair.name, pair => pair.index, StringComparer.Ordinal);
                continue;
            }

            var columns = names;
            yield return new Row(name => columns.TryGetValue(name, out var column) && column < fields.Count ? Unguarded(fields[column]) : "");
        }
    }

    // Our own tables: an apostrophe before what a spreadsheet would take for a formula.
    private static string Unguarded(string field) => field is ['\'', '=' or '+' or '-' or '@' or '\t' or '\r' or '\n', ..] ? field[1..] : field;

    private static IEnumerable<List<string>> Records(string text)
    {
        var fields = new List<string>();
        var field = new StringBuilder();
        var quoted = false;
        for (var at = 0; at < text.Length; at++)
        {
            var one = text[at];
            if (quoted)
            {
                if (one != '"') field.Append(one);
                else if (at + 1 < text.Length && text[at + 1] == '"') field.Append(text[++at]);
                else quoted = false;
            }
            else if (one == '"') quoted = true;
            else if (one is ',' or '\n')
            {
                fields.Add(field.ToString());
                field.Clear();
                if (one != '\n') continue;
                yield return fields;
                fields = [];
            }
            else field.Append(one);
        }
    }
}
