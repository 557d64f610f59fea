using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html.Tables;

/// <summary>A part of a table as HTML: caption, scoped headings, its own box to scroll in, the values behind it, and a word on rows that only the file has.</summary>
internal static class TableHtml
{
    /// <summary>Columns of fixed words, joined by hyphens in files and by spaces on the page.</summary>
    private static readonly HashSet<string> Words = new(StringComparer.Ordinal)
    {
        "adjustment", "assumption", "basis", "box", "by", "centre_from", "change", "claim", "clusters", "confirmation", "direction", "entry", "figure", "finding", "flag", "item", "kind",
        "known_by", "limits_of", "measure", "outcome", "parameter", "points_are", "reason", "rule", "segment", "signals", "size", "stage", "standing", "status", "term", "test", "trigger", "verdict", "within",
    };

    /// <summary>Writes the table; a table without rows is left out.</summary>
    public static void Write(Markup page, TableView view)
    {
        if (view.Table.RowCount == 0) return;
        if (view.Folded) page.Open("details", ("id", view.Anchor)).Element("summary", view.Caption);
        WriteRows(page, view);
        if (view.Folded) page.Close();
    }

    private static void WriteRows(Markup page, TableView view)
    {
        var filled = view.Columns.Where(column => !IsBlank(view, column)).ToImmutableArray();
        var same = filled.Where(column => OneMethod(view, column) is not null).ToImmutableArray();
        var columns = filled.RemoveRange(same);
        var notes = new Notes();
        var styles = columns.Select(column => Style(view.Table.Columns[view.IndexOf(column.Name)])).ToImmutableArray();
        var headings = columns.Select(column => column.Heading ?? view.Table.Columns[view.IndexOf(column.Name)].Heading).ToImmutableArray();
        var cells = Cells(view, columns, styles, notes);
        var isLong = cells.Length > TableView.FirstRows;
        var where = view.Folded || view.Anchor.Length == 0 ? [] : ((string, string)[])[("id", view.Anchor)];
        page.Open("div", [.. where, ("class", isLong ? "scroll long" : "scroll"), ("tabindex", "0"), ("role", "group"), ("aria-label", view.Caption)]);
        page.Open("table", PrintedWidth.Class(headings, styles, cells) is { Length: > 0 } width ? [("class", width)] : []);
        page.Element("caption", view.Caption).Open("thead").Open("tr");
        for (var column = 0; column < columns.Length; column++) page.Element("th", headings[column], ("scope", "col"), ("class", styles[column]));
        page.Close().Close();
        WriteBody(page, cells.AsSpan()[..Math.Min(cells.Length, TableView.FirstRows)]);
        if (isLong) WriteBody(page, cells.AsSpan()[TableView.FirstRows..], ("class", "rest"));
        page.Close();
        page.Trusted("<script type=\"application/json\">").Trusted(TableData.Json(view, columns)).Trusted("</script>\n");
        page.Close();
        notes.Write(page);
        WriteMethods(page, view, same);
        WriteCut(page, view);
        WriteMeanings(page, view, columns, headings);
    }

    /// <summary>Rows as compact as they can be: a page holds many thousands of them. A figure needs no class, it is what a cell is, nor a name before a row.</summary>
    private static void WriteBody(Markup page, ReadOnlySpan<ImmutableArray<TableCell>> rows, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        page.Open("tbody", attributes);
        foreach (var row in rows)
        {
            page.Trusted("<tr>");
            for (var place = 0; place < row.Length; place++)
            {
                var cell = row[place];
                if (place == 0) page.Trusted(cell.Style == "t" ? "<th scope=\"row\">" : $"<th scope=\"row\" class=\"{cell.Style}\">").Text(cell.Text).Trusted("</th>");
                else
                {
                    page.Trusted(cell.Style == "n" || cell.Text.Length == 0 ? "<td>" : $"<td class=\"{cell.Style}\">").Text(cell.Text);
                    if (cell.Below.Length > 0) page.Trusted("<small>").Text(cell.Below).Trusted("</small>");
                    page.Trusted("</td>");
                }
            }

            page.Trusted("</tr>\n");
        }

        page.Close();
    }

    /// <summary>Which rows are not there: on the page, where it has no room for all, and on paper, which is for the first.</summary>
    private static void WriteCut(Markup page, TableView view)
    {
        if (view.ShownRows <= TableView.FirstRows) return;
        var all = view.ShownRows == view.Table.RowCount;
        page.Open("p", ("class", all ? "note paper" : "note"));
        if (!all) page.Text(string.Create(CultureInfo.InvariantCulture, $"The page has the first {view.ShownRows:N0} of {view.Table.RowCount:N0} rows, and sorts and filters these. "));
        page.Trusted(all ? "" : "<span class=\"paper\">").Text(string.Create(CultureInfo.InvariantCulture, $"Printed are the first {TableView.FirstRows}{(all ? $" of {view.Table.RowCount:N0} rows" : "")}. ")).Trusted(all ? "" : "</span>")
            .Text("All stand in ").Element("a", $"tables/{view.Table.Id}.csv", ("href", $"tables/{view.Table.Id}.csv")).Close();
    }

    /// <summary>What each column means, folded; on paper it stands there in small type. Never in a hover only, which no finger, key or printer has.</summary>
    private static void WriteMeanings(Markup page, TableView view, ImmutableArray<ViewColumn> columns, ImmutableArray<string> headings)
    {
        page.Open("details", ("class", "columns")).Element("summary", "What the columns mean").Open("dl");
        for (var place = 0; place < columns.Length; place++)
        {
            page.Trusted("<div><dt>").Text(headings[place]).Trusted("</dt> <dd>").Text(view.Table.Columns[view.IndexOf(columns[place].Name)].Meaning).Trusted("</dd></div>\n");
        }

        page.Close().Close();
    }

    private static ImmutableArray<ImmutableArray<TableCell>> Cells(TableView view, ImmutableArray<ViewColumn> columns, ImmutableArray<string> styles, Notes notes) =>
    [
        .. Enumerable.Range(0, view.ShownRows).Select(row => columns.Select((column, place) =>
        {
            var text = Print(view, column, row, notes);
            return new TableCell(
                text,
                place == 0 ? "" : Below(view, column, row) ?? "",
                place == 0 ? styles[place] : text.Length > LongText && styles[place] == "t" ? "t l" : column.OneLine ? "t d" : styles[place]);
        }).ToImmutableArray()),
    ];

    // A sentence in a cell, which would make a tall row of a narrow column.
    private const int LongText = 60;

    private static string Print(TableView view, ViewColumn column, int row, Notes notes)
    {
        var index = view.IndexOf(column.Name);
        var cell = view.Table.CellAt(row, index);
        var unit = view.Table.Columns[index].Unit;
        if (cell.Kind == CellKind.Undefined) return "undefined " + notes.Letter(cell.AsText);
        var text = Rounding.Print(cell, unit);
        if (text.Length == 0) return column.WhenEmpty;
        if (column.AsNotes && cell.Kind != CellKind.Hidden) return notes.Letter(text);
        if (Words.Contains(column.Name)) text = text.Replace('-', ' ');
        if (column.Kind is { } kind && view.Table.CellAt(row, view.IndexOf(kind)) is { Kind: CellKind.Text } word) text = $"{word.AsText.Replace('-', ' ')} {text}";
        if (column.Upper is { } upper && cell.Kind != CellKind.Hidden && Rounding.Print(view.Table.CellAt(row, view.IndexOf(upper)), unit) is { Length: > 0 } end) text += " to " + end;
        return text;
    }

    /// <summary>Without the sign of per cent, which the upper limit has.</summary>
    private static string Bare(string lower) => lower.EndsWith(" %", StringComparison.Ordinal) ? lower[..^2] : lower;

    /// <summary>The limits of a figure, where they stand below it and differ from it.</summary>
    private static string? Below(TableView view, ViewColumn column, int row)
    {
        if (column.Below is not { } below) return null;
        var (figure, unit) = (view.Table.CellAt(row, view.IndexOf(column.Name)), view.Table.Columns[view.IndexOf(column.Name)].Unit);
        var (lower, upper) = (view.Table.CellAt(row, view.IndexOf(below.Lower)), view.Table.CellAt(row, view.IndexOf(below.Upper)));
        return figure.Kind is CellKind.Number or CellKind.Count && lower.Kind is CellKind.Number or CellKind.Count && upper.Kind is CellKind.Number or CellKind.Count && lower.AsNumber < upper.AsNumber
            ? $"{Bare(Rounding.Print(lower, unit))} to {Rounding.Print(upper, unit)}" : null;
    }

    /// <summary>A column without a single value in it says nothing on a page.</summary>
    private static bool IsBlank(TableView view, ViewColumn column)
    {
        var index = view.IndexOf(column.Name);
        if (column.WhenEmpty.Length > 0) return false;
        for (var row = 0; row < view.ShownRows; row++)
        {
            if (view.Table.CellAt(row, index).Kind != CellKind.Empty) return false;
        }

        return true;
    }

    /// <summary>The method of every row, where a column of methods says the same in all; a word below the table then says it once.</summary>
    private static string? OneMethod(TableView view, ViewColumn column)
    {
        if (column.Name != "method" && !column.Name.EndsWith("_method", StringComparison.Ordinal)) return null;
        var index = view.IndexOf(column.Name);
        var first = view.Table.CellAt(0, index);
        if (first.Kind != CellKind.Text) return null;
        for (var row = 1; row < view.ShownRows; row++)
        {
            var cell = view.Table.CellAt(row, index);
            if (cell.Kind != CellKind.Text || cell.AsText != first.AsText) return null;
        }

        return first.AsText;
    }

    private static void WriteMethods(Markup page, TableView view, ImmutableArray<ViewColumn> columns)
    {
        if (columns.IsEmpty) return;
        page.Open("p", ("class", "note"));
        for (var place = 0; place < columns.Length; place++)
        {
            var heading = columns[place].Heading ?? view.Table.Columns[view.IndexOf(columns[place].Name)].Heading;
            page.Text($"{(place == 0 ? "" : ". ")}{heading}, in every row: {OneMethod(view, columns[place])}");
        }

        page.Text(".").Close();
    }

    private static string Style(ColumnInfo column) => column.Unit switch { Unit.Text => "t", Unit.Date => "t d", _ => "n" };

    /// <summary>Remarks and reasons, each once below the table under a letter.</summary>
    private sealed class Notes
    {
        private readonly List<string> texts = [];

        public string Letter(string text)
        {
            var index = texts.IndexOf(text);
            if (index < 0)
            {
                index = texts.Count;
                texts.Add(text);
            }

            return Name(index);
        }

        public void Write(Markup page)
        {
            if (texts.Count == 0) return;
            page.Open("ul", ("class", "notes"));
            for (var index = 0; index < texts.Count; index++) page.Element("li", $"{Name(index)}: {texts[index]}");
            page.Close();
        }

        private static string Name(int index) => index < 26
            ? ((char)('a' + index)).ToString()
            : string.Create(CultureInfo.InvariantCulture, $"{(char)('a' + (index % 26))}{index / 26}");
    }
}
