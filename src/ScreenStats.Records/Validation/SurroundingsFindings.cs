using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Surroundings;

namespace ScreenStats.Records.Validation;

/// <summary>Where the export of sites, the changes, the outbreaks and the community rate do not meet the counted runs.</summary>
internal sealed class SurroundingsFindings
{
    private const int MostNamed = 5;

    private readonly ImmutableArray<Diagnostic>.Builder found = ImmutableArray.CreateBuilder<Diagnostic>();
    private readonly SortedDictionary<string, (DateOnly First, DateOnly Last)> days = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HashSet<DateOnly>> daysOf = new(StringComparer.Ordinal);
    private readonly HashSet<string> outbreakSites = new(StringComparer.Ordinal);
    private readonly long runs;
    private readonly long outbreakRuns;

    private SurroundingsFindings(ImmutableArray<ScreenCell> screens)
    {
        foreach (ref readonly var cell in screens.AsSpan())
        {
            runs += cell.Runs;
            days[cell.Site] = days.TryGetValue(cell.Site, out var known) ? (Min(known.First, cell.Day), Max(known.Last, cell.Day)) : (cell.Day, cell.Day);
            if (!daysOf.TryGetValue(cell.Site, out var own)) daysOf.Add(cell.Site, own = []);
            own.Add(cell.Day);
            if (cell.Occasion != Occasion.Outbreak) continue;
            outbreakRuns += cell.Runs;
            outbreakSites.Add(cell.Site);
        }
    }

    /// <summary>What is to be said.</summary>
    /// <param name="settings">The program file.</param>
    /// <param name="counted">The counted cubes.</param>
    /// <param name="sites">What the export of sites says.</param>
    /// <param name="siteTable">Name of its file; null where there is none.</param>
    public static ImmutableArray<Diagnostic> Of(ProgramSettings settings, TallyCells counted, ImmutableArray<SiteCell> sites, string? siteTable)
    {
        if (siteTable is null && settings is { Changes.IsEmpty: true, Outbreaks.IsEmpty: true, Community: null } && counted.Screens.All(cell => cell.Occasion == Occasion.Routine)) return [];
        var findings = new SurroundingsFindings(counted.Screens);
        if (siteTable is not null) findings.Sites(sites, siteTable);
        findings.Outbreaks(settings.Outbreaks);
        foreach (var change in settings.Changes) findings.Change(change);
        if (settings.Community is { } community) findings.Community(community);
        return findings.found.ToImmutable();
    }

    private void Sites(ImmutableArray<SiteCell> sites, string siteTable)
    {
        var regions = sites.ToDictionary(cell => cell.Site, cell => cell.Region, StringComparer.Ordinal);
        var without = days.Keys.Where(site => regions.GetValueOrDefault(site, Levels.None) == Levels.None).ToList();
        if (without.Count > 0)
        {
            Add(SurroundingsDiagnostics.SiteWithoutRegion, siteTable, without.Count,
                $"{Figure(without.Count)} of {Figure(days.Count)} screened sites {(without.Count == 1 ? "has" : "have")} no region in {siteTable}: {Named(without)}. "
                + $"{(without.Count == 1 ? "Its" : "Their")} region is {Levels.None}; add {(without.Count == 1 ? "it" : "them")}, spelled as in the screening export.");
        }

        var never = regions.Keys.Where(site => !days.ContainsKey(site)).Order(StringComparer.Ordinal).ToList();
        if (never.Count > 0)
        {
            Add(SurroundingsDiagnostics.SiteNeverScreened, siteTable, never.Count,
                $"{Figure(never.Count)} {(never.Count == 1 ? "site" : "sites")} of {siteTable} {(never.Count == 1 ? "has" : "have")} no counted run: {Named(never)}. Nothing needs to be done if {(never.Count == 1 ? "it does" : "they do")} not screen; else check the spelling.");
        }
    }

    private void Outbreaks(ImmutableArray<OutbreakSettings> outbreaks)
    {
        if (outbreakRuns > 0)
        {
            Add(SurroundingsDiagnostics.OutbreakRuns, "", outbreakRuns,
                $"{Figure(outbreakRuns)} of {Figure(runs)} counted runs, at {Figure(outbreakSites.Count)} {(outbreakSites.Count == 1 ? "site" : "sites")}, {(outbreakRuns == 1 ? "is" : "are")} marked as taken because of an outbreak. "
                + "They are counted as all others; sites and times are compared without them. Check that the marks are right.");
        }

        for (var at = 0; at < outbreaks.Length; at++)
        {
            var outbreak = outbreaks[at];
            if (daysOf.TryGetValue(outbreak.Site, out var own) && own.Any(day => outbreak.Holds(outbreak.Site, day))) continue;
            Add(SurroundingsDiagnostics.OutbreakWithoutRuns, "", 1,
                $"The outbreak of the program file from {Day(outbreak.From)} (outbreaks[{Figure(at)}]) holds no counted run: "
                + (days.ContainsKey(outbreak.Site) ? "its site has none on these days. Check the days." : "no counted run is of its site. Check how the site is spelled."));
        }
    }

    private void Change(ChangeSettings change)
    {
        var touched = days.Where(site => change.Touches(site.Key)).Select(site => site.Value).ToList();
        var what = touched.Count == 0 ? "no counted run is of a site that it names. Check the patterns of sites."
            : touched.TrueForAll(site => site.First >= change.On) ? "no run was counted before it there. Check the day."
            : touched.TrueForAll(site => site.Last < change.On) ? "no run was counted from it on there. Check the day."
            : null;
        if (what is not null) Add(SurroundingsDiagnostics.ChangeWithoutRuns, "", 1, $"Of the change of {Day(change.On)} that the program file names (changes), before and after cannot be compared: {what}");
    }

    private void Community(CommunitySettings community)
    {
        if (runs == 0 || daysOf.Values.Any(own => own.Any(day => community.On(day) is not null))) return;
        Add(SurroundingsDiagnostics.CommunityWithoutRuns, "", 1,
            $"The community rate of the program file begins on {Day(community.Values[0].From)}{(community.LastDay is { } last ? $" and ends on {Day(last)}" : "")}, and no counted run lies in that time. Check its days, and bring the values up to date.");
    }

    private void Add(string code, string file, long count, string message) =>
        found.Add(new Diagnostic(code, SurroundingsDiagnostics.All.First(one => one.Code == code).Severity, file, null, "", message, count));

    private static string Named(List<string> sites) =>
        string.Join(", ", sites.Take(MostNamed).Select(site => $"\"{site}\"")) + (sites.Count > MostNamed ? $" and {Figure(sites.Count - MostNamed)} more" : "");

    private static string Figure(long value) => FindingTexts.Figure(value);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static DateOnly Min(DateOnly a, DateOnly b) => a < b ? a : b;

    private static DateOnly Max(DateOnly a, DateOnly b) => a > b ? a : b;
}
