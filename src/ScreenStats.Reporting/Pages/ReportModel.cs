using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Pages;

/// <summary>Everything the page says, before it is rendered.</summary>
/// <param name="Findings">The findings.</param>
/// <param name="Inputs">Where they come from.</param>
/// <param name="Version">Version of the program.</param>
/// <param name="Groups">The pages by question.</param>
internal sealed record ReportModel(Findings Findings, ReportInputs Inputs, string Version, ImmutableArray<PageGroup> Groups)
{
    /// <summary>What a report of findings says: its pages, pictures of one quantity on one scale, and small counts hidden where they are to be.</summary>
    public static ReportModel Of(Findings findings, ReportInputs inputs, string version) => new(
        findings, inputs, version, Veiled.Of(SharedScales.Of(AllPages.Of(findings), chart => Veiled.Shows(chart, findings.Disclosure)), findings.Disclosure));

    /// <summary>Every picture, in the order of the pages.</summary>
    public ImmutableArray<Chart> Charts => [.. Groups.SelectMany(group => group.Pages).SelectMany(page => page.Charts.Concat(page.AtTop))];

    /// <summary>Title of the report.</summary>
    public string Title => Findings.Settings.Title;
}
