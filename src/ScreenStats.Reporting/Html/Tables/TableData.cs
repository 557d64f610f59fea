using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Files;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html.Tables;

/// <summary>
/// The values behind a table of the page, as its file has them: what the script sorts and filters by and copies. From the table as it may be
/// seen, so a hidden value is the word <c>hidden</c> here too. As JSON whose signs are safe both in HTML and in XML, and that nothing runs.
/// </summary>
internal static class TableData
{
    /// <summary>Between two values of a column of numbers or days, none of which holds it.</summary>
    private const char Between = ';';

    /// <summary>The data of the rows that the page shows.</summary>
    /// <param name="view">The table.</param>
    /// <param name="shown">The columns that the page shows, in its order.</param>
    public static string Json(TableView view, ImmutableArray<ViewColumn> shown)
    {
        var table = view.Table;
        var places = shown.Select(column => view.IndexOf(column.Name)).ToImmutableArray();
        var columns = Enumerable.Range(0, table.Columns.Length).Select(column => new Values(view, column)).ToImmutableArray();
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteString("table", table.Id);
            json.WriteNumber("rows", view.ShownRows);
            json.WriteString("kinds", string.Concat(columns.Select(column => column.Kind)));
            json.WriteStartArray("shown");
            foreach (var place in places) json.WriteNumberValue(place);
            json.WriteEndArray();
            WriteNames(json, table);
            json.WriteNumber("day", places.FirstOrDefault(place => columns[place].Kind == 'd', -1));
            json.WriteStartArray("columns");
            foreach (var column in table.Columns) json.WriteStringValue(column.Name);
            json.WriteEndArray();
            json.WriteStartArray("values");
            foreach (var column in columns) column.Write(json);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    /// <summary>Which columns name a site or a lot: always the same of the two, or the one that another column says row by row.</summary>
    private static void WriteNames(Utf8JsonWriter json, ITable table)
    {
        // Of a table of a model's terms the level is that of a term, such as a period, and not what was compared.
        var by = Place(table, "term") >= 0 ? -1 : Place(table, "by") is >= 0 and var said ? said : Place(table, "trigger");
        json.WriteStartArray("names");
        for (var column = 0; column < table.Columns.Length; column++)
        {
            var name = table.Columns[column].Name;
            if (name is not ("site" or "lot") && !(name is "level" or "other" && by >= 0)) continue;
            json.WriteStartArray();
            json.WriteNumberValue(column);
            if (name is "level" or "other") json.WriteNumberValue(by);
            else json.WriteStringValue(name);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static int Place(ITable table, string name)
    {
        for (var column = 0; column < table.Columns.Length; column++)
        {
            if (table.Columns[column].Name == name) return column;
        }

        return -1;
    }

    /// <summary>One column: <c>t</c> for texts, each once after the places where it stands, unless each row has its own or all the same; <c>n</c> for numbers and <c>d</c> for days, joined.</summary>
    private sealed class Values
    {
        private readonly string[] cells;

        public Values(TableView view, int column)
        {
            cells = new string[view.ShownRows];
            var (texts, days) = (false, false);
            for (var row = 0; row < cells.Length; row++)
            {
                var cell = view.Table.CellAt(row, column);
                texts |= cell.Kind == CellKind.Text;
                days |= cell.Kind == CellKind.Date;
                cells[row] = CsvText.Value(cell);
            }

            Kind = texts ? 't' : days ? 'd' : 'n';
        }

        public char Kind { get; }

        public void Write(Utf8JsonWriter json)
        {
            var same = cells.All(cell => cell == cells[0]);
            if (Kind != 't')
            {
                // What holds for all rows stands once; fractions, of which there can be a hundred thousand, without their zero.
                json.WriteStringValue(same ? cells[0] : string.Join(Between, cells.Select(cell => cell.StartsWith("0.", StringComparison.Ordinal) ? cell[1..] : cell)));
                return;
            }

            var places = new Dictionary<string, int>(StringComparer.Ordinal);
            var where = cells.Select(cell =>
            {
                if (!places.TryGetValue(cell, out var place)) places.Add(cell, place = places.Count);
                return place.ToString(CultureInfo.InvariantCulture);
            }).ToArray();
            json.WriteStartArray();
            json.WriteStringValue(same || places.Count == cells.Length ? "" : string.Join(Between, where));
            foreach (var text in places.Keys) json.WriteStringValue(text);
            json.WriteEndArray();
        }
    }
}
