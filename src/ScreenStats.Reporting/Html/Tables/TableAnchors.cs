using System.Collections.Immutable;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html.Tables;

/// <summary>Gives each table that the page shows its place: the first part of a table bears its name, the others a number after it.</summary>
internal static class TableAnchors
{
    /// <summary>The pages with the places of their tables.</summary>
    public static ImmutableArray<PageGroup> Of(ImmutableArray<PageGroup> groups)
    {
        var times = new Dictionary<string, int>(StringComparer.Ordinal);
        TableView Placed(TableView view)
        {
            if (view.Table.RowCount == 0) return view;
            var time = times[view.Table.Id] = times.GetValueOrDefault(view.Table.Id) + 1;
            return view with { Anchor = time == 1 ? "table-" + view.Table.Id : FormattableString.Invariant($"table-{view.Table.Id}-{time}") };
        }

        return [.. groups.Select(group => group with { Pages = [.. group.Pages.Select(page => page with { Tables = [.. page.Tables.Select(Placed)] })] })];
    }

    /// <summary>Where the figures of a picture stand: in the section of the picture, else in the first part of its table; null where the page has none.</summary>
    public static string? Of(ImmutableArray<TableView> own, ImmutableArray<PageGroup> groups, string table) =>
        own.Concat(groups.SelectMany(group => group.Pages).SelectMany(page => page.Tables)).FirstOrDefault(view => view.Table.Id == table && view.Anchor.Length > 0)?.Anchor;
}
