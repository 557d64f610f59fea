using System.Collections.Immutable;
using System.Text.Json;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs.Reading.Cadence;
using ScreenStats.Counting.Programs.Reading.Costs;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>Turns the items of a program file into settings, section by section.</summary>
internal static class ProgramReading
{
    private const double MostHours = 24 * 366;

    public static ProgramSettings Read(JsonItem root, ProgramProblems problems)
    {
        var section = new ProgramSection(root, ProgramKeys.Program, "key", problems);
        var defaults = new ProgramSettings();
        section.Text("$schema");
        var cadence = CadenceReader.Read(section.Find("cadence"), problems);
        return new ProgramSettings
        {
            Title = section.Text("title") ?? defaults.Title,
            TimeZone = TimeZone(section, problems),
            StartsOn = DayReader.Read(section, "startsOn", "2026-01-05", problems),
            DataAsOf = DataAsOf(section, problems),
            Exports = Exports(section.Find("exports"), problems),
            Warehouse = WarehouseSection.Read(section.Find("warehouse"), problems),
            Screens = Screens(section, problems),
            ConfirmatoryTest = ConfirmatoryTest(section.Find("confirmatoryTest"), problems),
            Prevalence = Prevalence(section.Find("prevalence"), problems),
            Policy = Policy(section.Find("policy"), problems),
            Audits = AuditReader.Read(section.Find("audits"), problems),
            Alarms = AlarmReader.Read(section.Find("alarms"), problems),
            Changes = SurroundingsReader.Changes(section, problems),
            Outbreaks = SurroundingsReader.Outbreaks(section, problems),
            Community = CommunityReader.Read(section.Find("community"), problems),
            Cadence = cadence,
            Costs = CostReader.Read(section.Find("costs"), cadence, problems),
            Report = Report(section.Find("report"), problems),
        };
    }

    private static string? TimeZone(ProgramSection section, ProgramProblems problems)
    {
        if (section.Text("timeZone") is not { } name) return null;
        if (TimeZoneInfo.TryFindSystemTimeZoneById(name, out _)) return name;
        problems.WrongValue(section.Find("timeZone")!, "the IANA name of a time zone that this machine knows, such as \"Europe/Berlin\"");
        return null;
    }

    private static StatedMoment? DataAsOf(ProgramSection section, ProgramProblems problems)
    {
        if (section.Find("dataAsOf") is not { } item) return null;
        if (item.Kind == JsonValueKind.String && StatedMomentText.Read(item.Text) is { } moment) return moment;
        problems.WrongValue(item, "an ISO 8601 date or time in quotes, such as \"2026-03-31\" or \"2026-03-31T18:00+02:00\"");
        return null;
    }

    private static ExportsSettings Exports(JsonItem? item, ProgramProblems problems)
    {
        var section = new ProgramSection(item, ProgramKeys.Exports, "export", problems);
        return new ExportsSettings
        {
            Screening = Export(section.Find("screening"), ProgramKeys.ScreeningColumns, ProgramKeys.ScreeningWords, problems),
            Confirmatory = Export(section.Find("confirmatory"), ProgramKeys.ConfirmatoryColumns, ProgramKeys.ConfirmatoryWords, problems),
            Controls = Export(section.Find("controls"), ProgramKeys.ControlsColumns, ProgramKeys.ControlsWords, problems),
            Headcount = Export(section.Find("headcount"), ProgramKeys.HeadcountColumns, [], problems),
            Sites = Export(section.Find("sites"), ProgramKeys.SitesColumns, [], problems),
        };
    }

    private static ExportSettings Export(
        JsonItem? item, ImmutableArray<string> knownColumns, ImmutableArray<string> knownWords, ProgramProblems problems)
    {
        var section = new ProgramSection(item, ProgramKeys.Export, "key", problems);
        var columns = new ProgramSection(section.Find("columns"), knownColumns, "column", problems);
        var headings = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (column, heading) in columns.Known)
        {
            if (columns.TextOf(heading) is { } text) headings[column] = text;
        }

        return new ExportSettings
        {
            Files = section.Texts("files", "a list of file names in brackets, such as [\"screening.csv\"]"),
            Sheets = section.Texts("sheets", "a list of sheet names in brackets, such as [\"Log\"]"),
            Columns = headings.ToImmutable(),
            Words = Words(section, knownWords, problems),
            DateOrder = (DateOrder?)section.Word("dateOrder", ProgramKeys.DateOrders),
            TwoDigitYears = section.YesNo("twoDigitYears") ?? false,
        };
    }

    private static ImmutableSortedDictionary<string, string> Words(
        ProgramSection section, ImmutableArray<string> known, ProgramProblems problems)
    {
        var words = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        if (section.Find("words") is not { } item) return words.ToImmutable();
        // Here the keys are the words of the export, so every one is known; the meanings are what is checked.
        var inside = new ProgramSection(item, [.. item.Members.Select(member => member.Key)], "word", problems);
        foreach (var (word, meaning) in inside.Known)
        {
            if (known.IsEmpty) problems.WrongValue(meaning, "left out: this export has no words");
            else if (inside.WordOf(meaning, known) is { } index) words[word] = known[index];
        }

        return words.ToImmutable();
    }

    private static ImmutableArray<ScreenSettings> Screens(ProgramSection program, ProgramProblems problems)
    {
        var screens = ImmutableArray.CreateBuilder<ScreenSettings>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var item in program.List("screens", "a list of devices in brackets, such as [{ \"name\": \"...\" }]"))
        {
            var section = new ProgramSection(item, ProgramKeys.Screen, "key", problems);
            if (item.Kind == JsonValueKind.Object && section.Find("name") is null) problems.WrongValue(item, "given with a \"name\"");
            var name = section.Text("name") ?? "";
            if (name.Length > 0 && !names.Add(name)) problems.WrongValue(section.Find("name")!, "different for each device");
            var window = ReadWindow(section, problems);
            screens.Add(new ScreenSettings
            {
                Name = name,
                Lots = section.Texts("lots", "a list of lot patterns in brackets, such as [\"A*\"]"),
                Sensitivity = AccuracyReader.Read(section, "sensitivity", problems),
                Specificity = AccuracyReader.Read(section, "specificity", problems),
                Source = section.Text("source") ?? "",
                ReadFromMinutes = window?.From,
                ReadToMinutes = window?.To,
                RunsPerKit = section.Whole("runsPerKit", 1, 1_000_000, "a whole number of runs, at least 1"),
            });
        }

        return screens.ToImmutable();
    }

    private static (int From, int To)? ReadWindow(ProgramSection section, ProgramProblems problems)
    {
        if (section.Find("readWindowMinutes") is not { } item) return null;
        if (item.Items is [var first, var second]
            && ProgramSection.WholeOf(first, 0, 1440) is { } from && ProgramSection.WholeOf(second, 0, 1440) is { } to && from <= to)
            return (from, to);
        problems.WrongValue(item, "two whole numbers of minutes, the earlier first, such as [10, 20]");
        return null;
    }

    private static ConfirmatoryTestSettings? ConfirmatoryTest(JsonItem? item, ProgramProblems problems)
    {
        if (item is null) return null;
        var section = new ProgramSection(item, ProgramKeys.ConfirmatoryTest, "key", problems);
        return new ConfirmatoryTestSettings
        {
            Sensitivity = AccuracyReader.Read(section, "sensitivity", problems),
            Specificity = AccuracyReader.Read(section, "specificity", problems),
            Source = section.Text("source") ?? "",
        };
    }

    private static PrevalenceSettings? Prevalence(JsonItem? item, ProgramProblems problems)
    {
        if (item is null) return null;
        if (item.Kind != JsonValueKind.Object)
        {
            problems.WrongValue(item, "an object such as { \"value\": 0.004, \"source\": \"...\" }");
            return null;
        }

        var section = new ProgramSection(item, ProgramKeys.Prevalence, "key", problems);
        var source = section.Text("source") ?? "program file";
        return AccuracyReader.WithLimits(section, limitsNeeded: false, problems) is { } limits
            ? new(limits.Value, limits.Lower, limits.Upper, source)
            : null;
    }

    private static PolicySettings Policy(JsonItem? item, ProgramProblems problems)
    {
        var section = new ProgramSection(item, ProgramKeys.Policy, "key", problems);
        var defaults = new PolicySettings();
        const string hours = "a number of hours from 0 to 8784";
        return new PolicySettings
        {
            ConfirmWithinHours = section.Number("confirmWithinHours", 0, MostHours, hours) ?? defaults.ConfirmWithinHours,
            ConfirmBeforeHours = section.Number("confirmBeforeHours", 0, MostHours, hours) ?? defaults.ConfirmBeforeHours,
            AuditWithinHours = section.Number("auditWithinHours", 0, MostHours, hours) ?? defaults.AuditWithinHours,
            ReportLagHours = section.Number("reportLagHours", 0, MostHours, hours) ?? defaults.ReportLagHours,
            EpisodeDays = section.Whole("episodeDays", 1, 3660, "a whole number of days from 1 to 3660") ?? defaults.EpisodeDays,
            IsolationDays = section.Whole("isolationDays", 0, 366, "a whole number of days from 0 to 366, or null"),
            FollowUp = FollowUp(section, problems) ?? defaults.FollowUp,
            ControlsRequired = AlarmReader.Triggers(section),
        };
    }

    private static ImmutableArray<Outcome>? FollowUp(ProgramSection section, ProgramProblems problems)
    {
        const string expected = "a list with \"positive\", \"inconclusive\" or both";
        if (section.Find("followUp") is not { } item) return null;
        var outcomes = section.List("followUp", expected)
            .Select(word => section.WordOf(word, ProgramKeys.FollowUp))
            .OfType<int>()
            .Distinct()
            .Order()
            .Select(index => index == 0 ? Outcome.Positive : Outcome.Inconclusive)
            .ToImmutableArray();
        if (item.Kind == JsonValueKind.Array && item.Items.IsEmpty) problems.WrongValue(item, expected);
        return outcomes;
    }

    private static ReportSettings Report(JsonItem? item, ProgramProblems problems)
    {
        var section = new ProgramSection(item, ProgramKeys.Report, "key", problems);
        var defaults = new ReportSettings();
        var confidence = section.Share("confidence");
        if (confidence is 0 or 1) problems.WrongValue(section.Find("confidence")!, "between 0 and 1, such as 0.95");
        return new ReportSettings
        {
            Confidence = confidence is > 0 and < 1 ? confidence.Value : defaults.Confidence,
            Period = (ReportPeriod?)section.Word("period", ProgramKeys.Periods) ?? defaults.Period,
            SuppressBelow = section.Whole("suppressBelow", 0, 1_000_000, "a whole number of people or runs, 0 to hide none") ?? 0,
            ControlLimits = (ControlLimits?)section.Word("controlLimits", ProgramKeys.ControlLimits) ?? defaults.ControlLimits,
            CompareBy = (CompareBy?)section.Word("compareBy", ProgramKeys.CompareBy) ?? defaults.CompareBy,
        };
    }
}
