using System.Collections.Immutable;
using System.Text.Json;
using ScreenStats.Counting.Programs.Cadence;

namespace ScreenStats.Counting.Programs.Reading.Cadence;

/// <summary>Reads what is stated for the question how often to screen.</summary>
internal static class CadenceReader
{
    private const double MostDelay = 366;
    private const double MostImmunity = 36_600;

    public static CadenceSettings Read(JsonItem? item, ProgramProblems problems)
    {
        var section = new ProgramSection(item, CadenceKeys.Cadence, "key", problems);
        var defaults = new CadenceSettings();
        var reader = new OptionReader(problems);
        var stated = reader.List(section);
        var options = stated ?? defaults.Options;
        return new CadenceSettings
        {
            Options = options,
            OptionsStated = stated is not null,
            Planned = section.Find("planned") is { } planned ? reader.Of(planned, options) : null,
            PlannedAt = PlannedAt(section, reader, options, problems),
            Course = CourseReader.Read(section.Find("course"), problems),
            DelayDays = RangeReader.Days(section, "delayDays", MostDelay, problems),
            ConfirmatoryDelayDays = RangeReader.Days(section, "confirmatoryDelayDays", MostDelay, problems),
            IsolateOn = (IsolateOn?)section.Word("isolateOn", CadenceKeys.IsolateOn) ?? defaults.IsolateOn,
            RepeatedMisses = RangeReader.Number(section, "repeatedMisses", 0, Math.BitDecrement(1.0), "a correlation from 0 to below 1, such as 0.3", problems),
            Participation = RangeReader.Share(section, "participation", problems),
            People = section.Whole("people", 1, int.MaxValue, "a whole number of people, at least 1"),
            Days = section.Whole("days", 1, 3660, "a whole number of days from 1 to 3660") ?? defaults.Days,
            Incidence = RangeReader.Number(section, "incidence", 0, 1, "infections per person-day, a fraction from 0 to 1 such as 0.0005 (never a prevalence)", problems),
            Reproduction = RangeReader.Number(section, "reproduction", 0, 100, "the infections inside that one case causes without any screening, from 0 to 100", problems),
            BroughtIn = RangeReader.Share(section, "broughtIn", problems),
            Dispersion = RangeReader.Above(section, "dispersion", 0, 1e6, "a number above 0, such as 0.4; leave it out where all cases infect alike", problems),
            ImmunityDays = RangeReader.Number(section, "immunityDays", 1, MostImmunity, "days after which someone infected can be infected again, from 1 to 36600; leave it out where nobody is", problems),
            FalseAlarmDays = RangeReader.Days(section, "falseAlarmDays", MostDelay, problems),
            Worthwhile = section.Number("worthwhile", 0, 1e6, "infectious days removed per 1,000 more screens, a number from 0 to 1000000"),
            Sensitivity = AccuracyReader.Read(section, "sensitivity", problems),
            Specificity = AccuracyReader.Read(section, "specificity", problems),
            Draws = section.Whole("draws", 2000, 100_000, "a whole number of random draws from 2000 to 100000") ?? defaults.Draws,
            Seed = section.Whole("seed", 0, int.MaxValue, "a whole number from 0 to 2147483647") is { } seed ? (ulong)seed : defaults.Seed,
            Source = section.Text("source") ?? "",
        };
    }

    private static ImmutableArray<SitePlanSettings> PlannedAt(
        ProgramSection cadence, OptionReader reader, ImmutableArray<CadenceOptionSettings> options, ProgramProblems problems)
    {
        var plans = ImmutableArray.CreateBuilder<SitePlanSettings>();
        foreach (var one in cadence.List("plannedAt", "a list in brackets, such as [{ \"sites\": [\"A*\"], \"option\": \"weekly\" }]"))
        {
            var section = new ProgramSection(one, CadenceKeys.SitePlan, "key", problems);
            if (one.Kind != JsonValueKind.Object) continue;
            var sites = section.Texts("sites", "a list of site patterns in brackets, such as [\"A*\"]");
            if (section.Find("option") is not { } written || section.Find("sites") is null or { Kind: JsonValueKind.Array, Items.IsEmpty: true })
                problems.WrongValue(one, "given with \"sites\", a list of at least one site pattern, and \"option\", how people there were to be screened");
            else if (reader.Of(written, options) is { } option && !sites.IsEmpty) plans.Add(new SitePlanSettings(sites, option));
        }

        return plans.ToImmutable();
    }
}
