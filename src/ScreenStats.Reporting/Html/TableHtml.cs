using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>A part of a table as HTML: caption, scoped headings, its own box to scroll in, and a word on rows that only the file has.</summary>
internal static class TableHtml
{
    /// <summary>Writes the table; a table without rows is left out.</summary>
    public static void Write(Markup page, TableView view)
    {
        if (view.Table.RowCount == 0) return;
        var columns = view.Columns.Select(column => (Column: column, Index: view.IndexOf(column.Name), Upper: column.Upper is null ? -1 : view.IndexOf(column.Upper)))
            .Where(column => !IsBlank(view, column.Index)).ToImmutableArray();
        page.Open("div", ("class", "scroll"), ("tabindex", "0"), ("role", "region"), ("aria-label", view.Caption)).Open("table");
        page.Element("caption", view.Caption);
        page.Open("thead").Open("tr");
        foreach (var (column, index, _) in columns)
        {
            var info = view.Table.Columns[index];
            page.Element("th", column.Heading ?? info.Heading, ("scope", "col"), ("title", info.Meaning), ("class", IsText(info.Unit) ? "t" : "n"));
        }

        page.Close().Close().Open("tbody");
        var reasons = new SortedSet<string>(StringComparer.Ordinal);
        for (var row = 0; row < view.ShownRows; row++)
        {
            page.Open("tr");
            for (var place = 0; place < columns.Length; place++)
            {
                var (column, index, upper) = columns[place];
                var unit = view.Table.Columns[index].Unit;
                var text = Print(view.Table.CellAt(row, index), unit, reasons);
                if (upper >= 0 && view.Table.CellAt(row, index).Kind != CellKind.Undefined && text.Length > 0) text += " to " + Print(view.Table.CellAt(row, upper), unit, reasons);
                if (text.Length == 0) text = column.WhenEmpty;
                if (place == 0) page.Element("th", text, ("scope", "row"), ("class", IsText(unit) ? "t" : "n"));
                else page.Element("td", text, ("class", IsText(unit) ? "t" : "n"));
            }

            page.Close();
        }

        page.Close().Close().Close();
        Notes(page, view, reasons);
    }

    private static void Notes(Markup page, TableView view, SortedSet<string> reasons)
    {
        if (reasons.Count > 0) page.Element("p", "undefined: " + string.Join("; ", reasons) + ".", ("class", "note"));
        if (view.ShownRows == view.Table.RowCount) return;
        page.Open("p", ("class", "note"))
            .Text(string.Create(CultureInfo.InvariantCulture, $"The first {view.ShownRows:N0} of {view.Table.RowCount:N0} rows; all stand in "))
            .Element("a", $"tables/{view.Table.Id}.csv", ("href", $"tables/{view.Table.Id}.csv"))
            .Close();
    }

    /// <summary>A column without a single value in it says nothing on a page.</summary>
    private static bool IsBlank(TableView view, int index)
    {
        if (view.Table.Columns[index].Name is "level" or "flag") return false;
        for (var row = 0; row < view.ShownRows; row++)
        {
            if (view.Table.CellAt(row, index).Kind != CellKind.Empty) return false;
        }

        return true;
    }

    private static bool IsText(Unit unit) => unit is Unit.Text or Unit.Date;

    private static string Print(Cell cell, Unit unit, SortedSet<string> reasons)
    {
        if (cell.Kind == CellKind.Undefined) reasons.Add(cell.AsText);
        return Rounding.Print(cell, unit);
    }
}
