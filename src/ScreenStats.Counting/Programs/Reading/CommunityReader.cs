using System.Collections.Immutable;
using System.Text.Json;
using ScreenStats.Counting.Programs.Surroundings;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>Reads the rate of the community outside.</summary>
internal static class CommunityReader
{
    private const double MostCases = 100_000;

    public static CommunitySettings? Read(JsonItem? item, ProgramProblems problems)
    {
        if (item is null) return null;
        var section = new ProgramSection(item, ProgramKeys.Community, "key", problems);
        if (item.Kind != JsonValueKind.Object) return null;
        if (section.Find("measure") is null || section.Find("source") is null || section.Find("values") is null)
            problems.WrongValue(item, "given with the \"measure\", the \"source\" and the \"values\"");
        var measure = section.Word("measure", ProgramKeys.CommunityMeasures);
        var source = section.Text("source");
        var values = Values(section, (CommunityMeasure)(measure ?? 0), problems);
        var until = DayReader.Read(section, "until", "2026-03-29", problems);
        if (values.Length > 0 && until < values[^1].From)
        {
            problems.WrongValue(section.Find("until")!, "a day that is not before the last value's \"from\"");
            return null;
        }

        if (measure is null || source is null || values.IsEmpty) return null;
        return new CommunitySettings { Measure = (CommunityMeasure)measure, Source = source, Values = values, Until = until };
    }

    private static ImmutableArray<CommunityValue> Values(ProgramSection community, CommunityMeasure measure, ProgramProblems problems)
    {
        const string expected = "a list of values in brackets, such as [{ \"from\": \"2026-01-05\", \"value\": 0.012 }]";
        var values = ImmutableArray.CreateBuilder<CommunityValue>();
        var list = community.List("values", expected);
        if (community.Find("values") is { Kind: JsonValueKind.Array, Items.IsEmpty: true } none) problems.WrongValue(none, expected);
        foreach (var one in list)
        {
            var section = new ProgramSection(one, ProgramKeys.CommunityValue, "key", problems);
            if (one.Kind != JsonValueKind.Object) continue;
            if (section.Find("from") is null) problems.WrongValue(one, "given with \"from\", its first day");
            var from = DayReader.Read(section, "from", "2026-01-05", problems);
            var limits = AccuracyReader.WithLimits(section, limitsNeeded: false, problems, (inside, name) => Rate(inside, name, measure));
            if (from is not { } day || limits is not { } value) continue;
            if (values.Count > 0 && day <= values[^1].From) problems.WrongValue(section.Find("from")!, "later than that of the value before it");
            else values.Add(new CommunityValue(day, value.Value, value.Lower, value.Upper));
        }

        return values.ToImmutable();
    }

    private static double? Rate(ProgramSection section, string name, CommunityMeasure measure) => measure == CommunityMeasure.Positivity
        ? section.Share(name)
        : section.Number(name, 0, MostCases, "a number of cases in 100,000 people in a week, from 0 to 100000");
}
