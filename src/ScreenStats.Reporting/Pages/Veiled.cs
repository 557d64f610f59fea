using System.Collections.Immutable;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Pages;

/// <summary>Puts on the pages what the disclosure stage decided: nothing is decided here.</summary>
internal static class Veiled
{
    /// <summary>Pictures that are drawn from points which are left out one by one where their figures are hidden.</summary>
    private static readonly HashSet<string> ByPoint = new(StringComparer.Ordinal) { "positivity", "invalid-runs", "refuted", "follow-up", "flow", "predictive-values" };

    /// <summary>Whether a picture may be shown.</summary>
    public static bool Shows(Chart chart, ReleaseDisclosure? disclosure) => disclosure is null || ByPoint.Contains(chart.TableId);

    /// <summary>The pages as they may be seen; unchanged where nothing is hidden.</summary>
    public static ImmutableArray<PageGroup> Of(ImmutableArray<PageGroup> groups, ReleaseDisclosure? disclosure) => disclosure is null ? groups :
    [
        .. groups.Select(group => group with
        {
            Pages = [.. group.Pages.Select(page => page with
            {
                Finding = disclosure.Veil(page.Finding),
                Tables = [.. page.Tables.Select(view => view with { Table = disclosure.Veil(view.Table), Columns = Columns(view) })],
                Charts = Of(page.Charts, disclosure),
                AtTop = Of(page.AtTop, disclosure),
            })],
        }),
    ];

    private static ImmutableArray<Chart> Of(ImmutableArray<Chart> charts, ReleaseDisclosure disclosure) =>
        [.. charts.Where(chart => Shows(chart, disclosure)).Select(chart => chart with { Caption = Of(chart.Caption, disclosure) })];

    // Of a caption what speaks of hidden figures goes; how to read the marks stays, and so do numbers of marks drawn.
    private static Caption Of(Caption caption, ReleaseDisclosure disclosure) =>
        Caption.Of(caption.Sentences.Select(sentence => sentence.Figures.All(figure => figure.Id == Caption.OfThePage) ? sentence : disclosure.Seen(sentence, without: true)).OfType<Sentence>());

    // Widened limits and remarks are hidden in every row: the plain limits take their place where the table has them.
    private static ImmutableArray<ViewColumn> Columns(TableView view)
    {
        var plain = view.Table.Columns.Any(column => column.Name == "lower") && view.Columns.All(column => column.Name != "lower");
        return
        [
            .. view.Columns.Where(column => !column.AsNotes)
                .Where(column => plain || column.Name != "widened_lower")
                .Select(column => column.Name == "widened_lower" ? new ViewColumn("lower", "Limits, not widened", "upper") : column),
        ];
    }

    /// <summary>Findings about the files without their lines, counts and words, which speak of single rows: code, severity and file stay.</summary>
    public static ImmutableArray<Diagnostic> Diagnostics(ImmutableArray<Diagnostic> found) => found.IsDefaultOrEmpty ? found :
    [
        .. found.Select(one => (one.Code, one.Severity, one.File)).Distinct()
            .Select(one => new Diagnostic(one.Code, one.Severity, one.File, null, "", "what it says of single rows is left out of this report")),
    ];
}
