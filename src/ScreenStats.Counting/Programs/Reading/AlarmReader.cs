using System.Collections.Immutable;
using System.Text.Json;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>Reads how often an alarm may be false, and which are dealt with.</summary>
internal static class AlarmReader
{
    public static AlarmSettings Read(JsonItem? item, ProgramProblems problems)
    {
        var section = new ProgramSection(item, ProgramKeys.Alarms, "key", problems);
        var defaults = new AlarmSettings();
        return new AlarmSettings
        {
            FalseAlarmChance = Inside(section, "falseAlarmChance", problems) ?? defaults.FalseAlarmChance,
            FalseAlarmEveryDays = section.Whole("falseAlarmEveryDays", 1, 36_600, "a whole number of days from 1 to 36600") ?? defaults.FalseAlarmEveryDays,
            InvalidRateLimit = Inside(section, "invalidRateLimit", problems) ?? defaults.InvalidRateLimit,
            BaselineDays = section.Whole("baselineDays", 1, 3660, "a whole number of days from 1 to 3660") ?? defaults.BaselineDays,
            Acknowledged = Acknowledged(section, problems),
        };
    }

    /// <summary>The occasions for control swabs; none where not stated.</summary>
    public static ImmutableArray<ControlTrigger> Triggers(ProgramSection policy) =>
    [
        .. policy.List("controlsRequired", "a list of occasions in brackets, such as [\"new-lot\", \"new-operator\"]")
            .Select(word => policy.WordOf(word, ProgramKeys.ControlTriggers)).OfType<int>().Distinct().Order().Select(index => (ControlTrigger)index),
    ];

    private static double? Inside(ProgramSection section, string name, ProgramProblems problems)
    {
        var share = section.Share(name);
        if (share is not (0 or 1)) return share;
        problems.WrongValue(section.Find(name)!, "between 0 and 1, such as 0.01");
        return null;
    }

    private static ImmutableArray<AcknowledgedAlarm> Acknowledged(ProgramSection alarms, ProgramProblems problems)
    {
        var known = ImmutableArray.CreateBuilder<AcknowledgedAlarm>();
        foreach (var one in alarms.List("acknowledged", "a list of alarms in brackets, such as [{ \"rule\": \"lot-evidence\", \"level\": \"...\", \"until\": \"2026-01-31\" }]"))
        {
            var section = new ProgramSection(one, ProgramKeys.Acknowledged, "key", problems);
            if (one.Kind != JsonValueKind.Object) continue;
            if (section.Find("rule") is null || section.Find("level") is null) problems.WrongValue(one, "given with the \"rule\" and the \"level\" that the alarm prints");
            else if (section.Word("rule", ProgramKeys.AlarmRules) is { } rule && section.Text("level") is { } level)
                known.Add(new AcknowledgedAlarm(ProgramKeys.AlarmRules[rule], level, DayReader.Read(section, "until", "2026-01-31", problems)));
        }

        return known.ToImmutable();
    }
}
