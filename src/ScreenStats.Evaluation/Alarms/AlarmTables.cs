using System.Collections.Immutable;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Alarms;

internal static class AlarmTables
{
    private const string NoAlarm = "no alarm came";

    public static Table<RaisedAlarm> Alarms(ImmutableArray<RaisedAlarm> rows) => new(
        "alarms",
        "Alarms",
        "Every alarm that would have come had the command alarms run at the end of each day, with what was to be read on its first day. Each day sees only what was collected and reported by then.",
        [
            new("rule", "Rule", Unit.Text, "Name of the rule.", row => Cell.Text(row.Rule)),
            new("by", "By", Unit.Text, "What the level is.", row => Cell.Text(row.By)),
            new("level", "Level", Unit.Text, "The lot, site, site and lot, or operator (for training, not for discipline).", row => Cell.Text(row.Level)),
            new("since", "Since", Unit.Date, "First day of the alarm.", row => Cell.Date(row.Since)),
            new("until", "Until", Unit.Date, "Last day; empty where it still stands at the end of the data.", row => Cell.Date(row.Until)),
            new("days", "Days", Unit.Count, "Days on which it stood.", row => Cell.Count(row.Days)),
            new("status", "Status at the end", Unit.Text, "How it stands at the end of the data: new, standing, out-of-use, acknowledged, or ended.", row => Cell.Text(row.Status)),
            new("evidence", "Evidence on the first day", Unit.Text, "What the alarm stood on, in a line.", row => Cell.Text(row.Evidence)),
            new("found", "Found", Unit.Count, "Events counted against the place by the first day.", row => Cell.Count(row.Found)),
            new("among", "Among", Unit.Count, "Among how many they were; empty where there is no such number.", row => row.Among is { } among ? Cell.Count(among) : Cell.Empty),
            new("expected", "Expected", Unit.Ratio, "How many were to be expected; empty where the rule expects none.", row => Number(row.Expected)),
            new("statistic", "Statistic", Unit.Ratio, "The cumulative sum, or the evidence as a power of ten (3 is a thousand to one); empty where the rule only counts.", row => Number(row.Statistic)),
            new("statistic_threshold", "Threshold", Unit.Ratio, "From where on the alarm is raised, on the same scale.", row => Number(row.StatisticThreshold)),
            new("method", "Method", Unit.Text, "How the statistic is made; empty where the rule only counts.", row => MethodOf(row.Rule) is { } method ? Cell.Text(method) : Cell.Empty),
            new("next", "What to do next", Unit.Text, "What to do next.", row => Cell.Text(row.Next)),
        ],
        rows);

    public static Table<LotAlarm> Lots(ImmutableArray<LotAlarm> rows) => new(
        "lot-alarms",
        "When bad lots would have been known",
        "Each lot that is flagged for its refuted positives, or that an alarm names: the day of the first alarm had it run daily, and what came before and after. What is left of a lot on hand is not in the exports.",
        [
            new("lot", "Lot", Unit.Text, "Name of the lot.", row => Cell.Text(row.Lot)),
            new("flagged", "Flagged", Unit.Text, "Whether the evaluation of the whole span flags it for refuted positives.", row => Cell.Text(row.Flagged ? "yes" : "no")),
            new("alarm_day", "Alarm", Unit.Date, "Day at whose end the first alarm that names it would have come.", row => row.AlarmDay is { } day ? Cell.Date(day) : Cell.Undefined(NoAlarm)),
            new("rule", "Rule", Unit.Text, "Rule of that alarm.", row => row.Rule.Length == 0 ? Cell.Empty : Cell.Text(row.Rule)),
            new("refuted_before", "Refuted before", Unit.Count, "Its positive runs reported refuted before that day.", row => Count(row.RefutedBefore)),
            new("refuted_by", "Refuted by then", Unit.Count, "The same by the end of that day.", row => Count(row.RefutedBy)),
            new("refuted", "Refuted in all", Unit.Count, "Its refuted positive runs in the whole span.", row => Cell.Count(row.Refuted)),
            new("positives_after", "Positives after", Unit.Count, "Its positive runs after that day: each a person sent home, or kept from work, once.", row => Count(row.PositivesAfter)),
            new("runs_after", "Runs after", Unit.Count, "Its runs after that day.", row => Count(row.RunsAfter)),
            new("last_use", "Last used", Unit.Date, "Last day on which it was used.", row => Cell.Date(row.LastUse)),
        ],
        rows);

    public static Table<LotEvidencePoint> Evidence(ImmutableArray<LotEvidencePoint> rows) => new(
        "alarm-evidence",
        "Evidence day by day",
        "For each lot that had an alarm of its own: the evidence at the end of every day on which a refuted positive was reported that could have fallen on it.",
        [
            new("lot", "Lot", Unit.Text, "Name of the lot.", row => Cell.Text(row.Lot)),
            new("day", "Day", Unit.Date, "The day.", row => Cell.Date(row.Day)),
            new("found", "Found", Unit.Count, "Refuted positives on the lot so far.", row => Cell.Count(row.Found)),
            new("among", "Among", Unit.Count, "Refuted positives so far that could have fallen on it or on other lots.", row => Cell.Count(row.Among)),
            new("expected", "Expected", Unit.Ratio, "How many of them were to be expected on it.", row => Cell.Number(row.Expected)) { Method = MethodNames.LotEvidence },
            new("evidence", "Evidence", Unit.Ratio, "The evidence as a power of ten: 3 is a thousand to one.", row => Cell.Number(row.Evidence)) { Method = MethodNames.LotEvidence },
            new("threshold", "Threshold", Unit.Ratio, "From where on the alarm is raised, on the same scale.", row => Cell.Number(row.Threshold)) { Method = MethodNames.LotEvidence },
        ],
        rows);

    private static string? MethodOf(string rule) => rule switch
    {
        "lot-evidence" or "low-yield" => MethodNames.LotEvidence,
        "invalid-evidence" => MethodNames.InvalidEvidence,
        "invalid-rise" => MethodNames.InvalidRise,
        "refuted-rise" => MethodNames.RefutedRise,
        _ => null,
    };

    private static Cell Number(double? value) => value is { } some ? Cell.Number(some) : Cell.Empty;

    private static Cell Count(long? value) => value is { } some ? Cell.Count(some) : Cell.Undefined(NoAlarm);
}
