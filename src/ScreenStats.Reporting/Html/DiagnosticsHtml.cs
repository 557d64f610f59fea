using System.Globalization;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>What was found in the files.</summary>
internal static class DiagnosticsHtml
{
    private const int MostDiagnostics = 60;

    /// <summary>Writes the list; nothing where nothing was found.</summary>
    public static void Write(Markup page, ReportModel model)
    {
        var found = model.Inputs.Diagnostics;
        if (found.IsDefaultOrEmpty) return;
        page.Open("section").Element("h3", "What was found in the files", ("id", "diagnostics")).Open("ul");
        foreach (var diagnostic in found.Take(MostDiagnostics))
        {
            var where = DiagnosticPlaces.Text(diagnostic);
            var often = diagnostic.Occurrences > 1 ? string.Create(CultureInfo.InvariantCulture, $" ({diagnostic.Occurrences:N0} times)") : "";
            page.Open("li").Element("code", diagnostic.Code).Text($" {Word(diagnostic.Severity)}{(where.Length > 0 ? " in " + where : "")}: {diagnostic.Message}{often}").Close();
        }

        page.Close();
        if (found.Length > MostDiagnostics)
        {
            page.Element("p", string.Create(CultureInfo.InvariantCulture, $"The first {MostDiagnostics} of {found.Length:N0}; set-aside.csv lists every row that is not counted."), ("class", "note"));
        }

        page.Close();
    }

    private static string Word(Severity severity) => severity.ToString().ToLowerInvariant();
}
