using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>A part of a table as HTML: caption, scoped headings, its own box to scroll in, and a word on rows that only the file has.</summary>
internal static class TableHtml
{
    /// <summary>Columns of fixed words, joined by hyphens in files and by spaces on the page.</summary>
    private static readonly HashSet<string> Words = new(StringComparer.Ordinal) { "by", "basis", "measure", "flag", "finding", "entry", "kind", "outcome", "adjustment", "reason", "test", "segment", "direction", "term" };

    /// <summary>Writes the table; a table without rows is left out.</summary>
    public static void Write(Markup page, TableView view)
    {
        if (view.Table.RowCount == 0) return;
        if (view.Folded) page.Open("details").Element("summary", view.Caption);
        WriteRows(page, view);
        if (view.Folded) page.Close();
    }

    private static void WriteRows(Markup page, TableView view)
    {
        var filled = view.Columns.Where(column => !IsBlank(view, column)).ToImmutableArray();
        var same = filled.Where(column => OneMethod(view, column) is not null).ToImmutableArray();
        var columns = filled.RemoveRange(same);
        var notes = new Notes();
        page.Open("div", ("class", "scroll"), ("tabindex", "0"), ("role", "region"), ("aria-label", view.Caption)).Open("table");
        page.Element("caption", view.Caption);
        page.Open("thead").Open("tr");
        foreach (var column in columns)
        {
            var info = view.Table.Columns[view.IndexOf(column.Name)];
            page.Element("th", column.Heading ?? info.Heading, ("scope", "col"), ("title", info.Meaning), ("class", Style(info)));
        }

        page.Close().Close().Open("tbody");
        for (var row = 0; row < view.ShownRows; row++)
        {
            page.Open("tr");
            for (var place = 0; place < columns.Length; place++)
            {
                var style = Style(view.Table.Columns[view.IndexOf(columns[place].Name)]);
                var text = Print(view, columns[place], row, notes);
                if (place == 0) page.Element("th", text, ("scope", "row"), ("class", style));
                else if (Below(view, columns[place], row) is { } limits) page.Trusted($"<td class=\"{style}\">{Markup.Escape(text)}<small>{Markup.Escape(limits)}</small></td>\n");
                else page.Element("td", text, ("class", text.Length > LongText && style == "t" ? "t l" : columns[place].OneLine ? "t d" : style));
            }

            page.Close();
        }

        page.Close().Close().Close();
        notes.Write(page);
        WriteMethods(page, view, same);
        if (view.ShownRows == view.Table.RowCount) return;
        page.Open("p", ("class", "note"))
            .Text(string.Create(CultureInfo.InvariantCulture, $"The first {view.ShownRows:N0} of {view.Table.RowCount:N0} rows; all stand in "))
            .Element("a", $"tables/{view.Table.Id}.csv", ("href", $"tables/{view.Table.Id}.csv"))
            .Close();
    }

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
        if (column.Kind is { } kind && view.Table.CellAt(row, view.IndexOf(kind)) is { Kind: CellKind.Text } word) text = $"{word.AsText} {text}";
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
