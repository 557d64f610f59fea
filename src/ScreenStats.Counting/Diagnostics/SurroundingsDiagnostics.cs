using System.Collections.Immutable;

namespace ScreenStats.Counting.Diagnostics;

/// <summary>What is found in the export of sites, and where the program file speaks of what the exports do not hold.</summary>
public static class SurroundingsDiagnostics
{
    /// <summary>A site that comes twice in the export of sites, without a contradiction.</summary>
    public const string RepeatedSite = "repeated-site";

    /// <summary>A site with two regions.</summary>
    public const string TwoRegions = "two-regions";

    /// <summary>A screened site of which the export of sites names no region.</summary>
    public const string SiteWithoutRegion = "site-without-region";

    /// <summary>A site of the export of sites without a counted run.</summary>
    public const string SiteNeverScreened = "site-never-screened";

    /// <summary>Runs that were taken because of an outbreak.</summary>
    public const string OutbreakRuns = "outbreak-runs";

    /// <summary>An outbreak of the program file without a run.</summary>
    public const string OutbreakWithoutRuns = "outbreak-without-runs";

    /// <summary>A change of the program file without runs on both sides of it.</summary>
    public const string ChangeWithoutRuns = "change-without-runs";

    /// <summary>A community rate of the program file for no day with a run.</summary>
    public const string CommunityWithoutRuns = "community-without-runs";

    /// <summary>Every code with its severity, meaning and advice.</summary>
    public static ImmutableArray<DiagnosticDescription> All { get; } =
    [
        new(RepeatedSite, Severity.Warning, "A site comes more than once in the export of sites, each time with the same region or without one; it counts once.", "Keep one row for each site."),
        new(TwoRegions, Severity.Error, "The export of sites gives a site two different regions.", "Keep one row for each site."),
        new(SiteWithoutRegion, Severity.Warning, "A screened site has no row in the export of sites, or a row without a region; its region is (none).", "Add the site, spelled as in the screening export."),
        new(SiteNeverScreened, Severity.Note, "A site of the export of sites has no counted run.", "Nothing, if the site does not screen; else check how it is spelled."),
        new(OutbreakRuns, Severity.Note, "Runs are marked as taken because of an outbreak at their site, by the column outbreak or by outbreaks in the program file; they are counted, and sites and times are compared without them.",
            "Check that the marks are right."),
        new(OutbreakWithoutRuns, Severity.Warning, "An outbreak of the program file holds no counted run.", "Check how the site is spelled, and the days."),
        new(ChangeWithoutRuns, Severity.Warning, "A change of the program file has no counted runs before it, or none from it on, at the sites that it names.", "Check the day and the patterns of sites."),
        new(CommunityWithoutRuns, Severity.Warning, "The community rate of the program file holds on no day with a counted run.", "Check its days, and bring the values up to date."),
    ];
}
