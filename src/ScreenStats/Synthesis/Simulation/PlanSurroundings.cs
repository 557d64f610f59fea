using System.Collections.Immutable;
using System.Text.Json;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Synthesis.Planning.Surroundings;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>Regions, changes, outbreaks and the community rate of a plan: checked, looked up and written.</summary>
internal static class PlanSurroundings
{
    private static readonly string[] Measures = ["positivity", "cases-per-100000-per-week"];

    public static bool HasRegions(SynthesisPlan plan) => plan.Sites.Any(site => site.Region is not null);

    /// <summary>True where the program file, not a column, says which runs an outbreak drove.</summary>
    public static bool InProgramFile(SynthesisPlan plan) => !plan.Outbreaks.IsEmpty && !plan.ScreeningColumns.Contains("outbreak");

    /// <summary>The outbreaks of each site, as days of the program.</summary>
    public static ImmutableArray<(int First, int Last, double IncidenceFactor)> OutbreaksOf(SynthesisPlan plan, string site) =>
    [
        .. plan.Outbreaks.Where(outbreak => outbreak.Site == site)
            .Select(outbreak => (outbreak.From.DayNumber - plan.FirstDay.DayNumber, outbreak.To.DayNumber - plan.FirstDay.DayNumber, outbreak.IncidenceFactor)),
    ];

    public static void WriteSites(SynthesisPlan plan, Stream target)
    {
        using var writer = new ExportWriter(target, plan.Dirt.CarriageReturns.Contains("sites"), plan.Dirt.ByteOrderMarks.Contains("sites"));
        writer.Append("site,region"u8);
        writer.EndRow();
        foreach (var site in plan.Sites)
        {
            writer.Add(ExportWriter.Field(site.Name));
            writer.Add(ExportWriter.Field(site.Region ?? ""));
            writer.EndRow();
        }
    }

    public static void Check(SynthesisPlan plan, Action<bool, string, string> check)
    {
        for (var index = 0; index < plan.Changes.Length; index++)
        {
            var change = plan.Changes[index];
            check(!string.IsNullOrWhiteSpace(change.What), PlanCheck.Key("changes", index) + ".what", "write what changed.");
            check(change.Sites.All(name => plan.Sites.Any(site => site.Name == name)), PlanCheck.Key("changes", index) + ".sites", "name only sites of the plan.");
        }

        for (var index = 0; index < plan.Outbreaks.Length; index++)
        {
            var outbreak = plan.Outbreaks[index];
            var key = PlanCheck.Key("outbreaks", index);
            check(plan.Sites.Any(site => site.Name == outbreak.Site), key + ".site", "name a site of the plan.");
            check(outbreak.To >= outbreak.From, key + ".to", "write a day that is not before the first.");
            check(outbreak.IncidenceFactor is >= 0 and <= 1_000, key + ".incidenceFactor", "write a factor from 0 to 1000.");
        }

        if (plan.Community is { } community) Check(community, check);
        CheckSections(plan, check);
    }

    /// <summary>What the program file could not say is told now, not when it is read.</summary>
    private static void CheckSections(SynthesisPlan plan, Action<bool, string, string> check)
    {
        static string Text(JsonElement? section) => section?.GetRawText() ?? "null";
        try
        {
            // Together, as rules of frequency may name options of the cadence.
            var settings = Counting.Programs.ProgramFile.Parse($"{{\"cadence\":{Text(plan.Cadence)},\"costs\":{Text(plan.Costs)}}}");
            check(settings.Cadence.Course?.File is null, "cadence.course.file", "leave it out: no file of a course is written.");
        }
        catch (UnusableDataException problem)
        {
            foreach (var diagnostic in problem.Diagnostics)
                check(false, diagnostic.Message.StartsWith("costs", StringComparison.Ordinal) ? "costs" : "cadence", diagnostic.Message);
        }
    }

    private static void Check(SynthesisCommunity community, Action<bool, string, string> check)
    {
        var most = community.Measure == "positivity" ? 1 : 100_000;
        check(Measures.Contains(community.Measure), "community.measure", "write positivity or cases-per-100000-per-week.");
        check(!string.IsNullOrWhiteSpace(community.Source), "community.source", "write where it comes from.");
        check(community.Values.Length > 0, "community.values", "at least one is needed.");
        for (var index = 0; index < community.Values.Length; index++)
        {
            var value = community.Values[index];
            var key = PlanCheck.Key("community.values", index);
            check(value.Lower >= 0 && value.Lower <= value.Value && value.Value <= value.Upper && value.Upper <= most, key, "write limits around the value, within what the measure can be.");
            check(index == 0 || value.From > community.Values[index - 1].From, key + ".from", "write a day after that of the value before.");
        }
    }
}
