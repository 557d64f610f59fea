using System.Globalization;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html.Top;

/// <summary>Title and span of the page, and what is to be known before anything is read.</summary>
internal static class TopHtml
{
    /// <summary>Writes the top.</summary>
    public static void Write(Markup page, ReportModel model)
    {
        var span = model.Findings.Span;
        page.Open("header").Element("h1", model.Title);
        page.Element("p", span is { FirstDay: { } first, LastDay: { } last }
            ? $"Screening from {Day(first)} to {Day(last)}" + (span.DataAsOf is { } asOf ? $", data as of {asOf.ToString(model.Findings.Disclosure is null ? "yyyy-MM-dd HH:mm" : "yyyy-MM-dd", CultureInfo.InvariantCulture)}." : ".")
            : "No run was counted.", ("class", "span"));
        if (model.Findings.Settings.Report.SuppressBelow <= 1)
        {
            page.Element("p", "This report holds small counts and is not for circulation.", ("class", "notice"));
        }

        if (model.Findings.Disclosure is { } disclosure) page.Element("p", DisclosureHtml.Text(disclosure), ("class", "disclosure"));

        page.Close();
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
