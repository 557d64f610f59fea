using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>Runs every rule one day after another, each day once, with nothing of later days.</summary>
internal sealed class AlarmEngine
{
    /// <summary>Days within which a place counts as in use, and a finding of conduct as recent; the day itself is one of them.</summary>
    public const int RecentDays = 14;

    // A holiday is shorter.
    private const int QuietDays = 7;

    // One or two runs too many are mostly a kit that was changed without its number; they stand on the page on conduct.
    private const long FewestTooMany = 3;

    private readonly ProgramFacts program;
    private readonly ProgramSettings settings;
    private readonly InvalidRateRules invalid;
    private readonly ControlMissingRule missing;
    private readonly ImmutableArray<IAlarmRule> rules;
    private readonly Dictionary<Place, DateOnly> lastUse = [];
    private DateOnly? told;
    private DateOnly? lastRun;

    public AlarmEngine(Tally tally, ProgramSettings settings)
    {
        this.settings = settings;
        program = new ProgramFacts(tally);
        invalid = new InvalidRateRules(settings.Alarms);
        Refuted = new LotEvidenceRule(program, settings.Alarms, excess: true);
        Confirmed = new LotEvidenceRule(program, settings.Alarms, excess: false);
        missing = new ControlMissingRule(settings.Policy.ControlsRequired);
        rules =
        [
            .. program is { HasConfirmatory: true, KnowsWhen: true } ? (IAlarmRule[])[Refuted, new RefutedRiseRule(program, settings.Alarms, () => Refuted.LotsWithAlarm), Confirmed] : [],
            invalid,
            new ControlFailedRule(),
            missing,
            new ConductAlarmRule(AlarmRule.ExpiredLot, ConductKind.ExpiredLot, 1, cell => Place.Lot(cell.Lot), cell => cell.Site),
            new ConductAlarmRule(AlarmRule.KitOverrun, ConductKind.BeyondKitContents, FewestTooMany, cell => Place.Site(cell.Site), cell => cell.Lot),
        ];
    }

    public ProgramFacts Program => program;

    public LotEvidenceRule Refuted { get; }

    public LotEvidenceRule Confirmed { get; }

    /// <summary>Tells every rule the days up to one.</summary>
    public void AdvanceTo(DateOnly day)
    {
        if (program.Begins is not { } first) return;
        for (var next = told?.AddDays(1) ?? first; next <= day; next = next.AddDays(1))
        {
            var facts = program.On(next);
            if (facts.Uses.Count > 0) lastRun = next;
            foreach (var use in facts.Uses)
            {
                lastUse[Place.Site(use.Site)] = next;
                lastUse[Place.Lot(use.Lot)] = next;
                lastUse[Place.SiteAndLot(use.Site, use.Lot)] = next;
            }

            foreach (var pseudonym in facts.Operators) lastUse[Place.Operator(pseudonym)] = next;
            foreach (var rule in rules) rule.Advance(next, facts);
            told = next;
            if (next == DateOnly.MaxValue) return;
        }
    }

    /// <summary>The alarms at the end of the day told last.</summary>
    public AlarmsOfDay At(DateOnly day)
    {
        var alarms = rules.SelectMany(rule => rule.Standing())
            .Select(alarm => new Alarm(alarm.Rule, alarm.Place.By, alarm.Place.Level, Status(alarm, day), alarm.Since, alarm.What, alarm.Evidence, alarm.Next) { Suspect = alarm.Suspect })
            .OrderBy(alarm => alarm.Status).ThenByDescending(alarm => alarm.Since).ThenBy(alarm => alarm.Rule).ThenBy(alarm => alarm.By, Levels.Order).ThenBy(alarm => alarm.Level, Levels.Order);
        var chosen = settings.Alarms;
        return new AlarmsOfDay(
            day, chosen.FalseAlarmChance, chosen.FalseAlarmEveryDays, chosen.InvalidRateLimit, chosen.BaselineDays, invalid.BaselineRate, [.. alarms], [.. Notes(day)]);
    }

    private AlarmStatus Status(StandingAlarm alarm, DateOnly day)
    {
        var rule = AlarmNames.Of(alarm.Rule);
        if (settings.Alarms.Acknowledged.Any(known => known.Rule == rule && known.Level == alarm.Place.Level && (known.Until is not { } until || day <= until))) return AlarmStatus.Acknowledged;
        if (alarm.Since == day) return AlarmStatus.New;
        return lastUse.TryGetValue(alarm.Place, out var last) && day.DayNumber - last.DayNumber < RecentDays ? AlarmStatus.Standing : AlarmStatus.OutOfUse;
    }

    private IEnumerable<string> Notes(DateOnly day)
    {
        if (program.First is not { } first || day < first)
        {
            yield return "No run was counted by then.";
            yield break;
        }

        if (lastRun is { } last && day.DayNumber - last.DayNumber > QuietDays)
            yield return $"The last run in the exports is of {AlarmWords.Day(last)}: check that they still arrive. Nothing is known of what was done since.";
        if (!program.HasConfirmatory) yield return "There is no confirmatory export, so lots cannot be judged by their refuted and confirmed positives.";
        else if (!program.KnowsWhen) yield return "It is not known when confirmatory results were reported, so lots cannot be judged by their refuted and confirmed positives.";
        foreach (var note in missing.Notes()) yield return note;
        if (invalid.BaselineRate is null)
            yield return $"A rise of the invalid-run rate is judged from {AlarmWords.Day(first.AddDays(settings.Alarms.BaselineDays))} on: until then the program's ordinary rate is taken.";
    }
}
