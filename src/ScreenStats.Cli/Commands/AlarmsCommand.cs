using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Evaluation.Alarms;

namespace ScreenStats.Cli.Commands;

/// <summary><c>alarms</c>: what a nightly job prints.</summary>
internal sealed class AlarmsCommand : ProgramCommand
{
    private readonly Option<string> asOf;
    private readonly Option<bool> fail;

    public AlarmsCommand()
        : base("alarms", "Which lots, sites and controls need looking into this morning, from what was reported by a day",
            "screenstats alarms my-program", "screenstats alarms my-program --as-of 2026-03-31 --fail-on-alarm")
    {
        asOf = TakeOption("--as-of", "date", "The day at whose end is looked, such as 2026-03-31: what was collected or reported later is not seen. Default: the day up to which the data are complete.");
        fail = TakeSwitch("--fail-on-alarm", "Exit with 3 where an alarm is new or standing; not for places out of use, nor for alarms that the program file acknowledges.");
        TakeResources();
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        DateOnly? day = invocation.Text(asOf) is { } written ? Figures.Day("--as-of", written) : null;
        var program = Open(invocation);
        var reading = Read(invocation, program);
        invocation.Say([.. reading.Diagnostics.Where(found => found.Severity == Severity.Error)]);
        var alarms = reading.Tally.AlarmsAt(program.Settings, day);
        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(alarms));
        else Render(program.Settings.Title, alarms, invocation.Screen);
        return invocation.Parsed.GetValue(fail) && alarms.Alarms.Any(alarm => alarm.NeedsAction) ? ExitCode.Alarm : ExitCode.Done;
    }

    private static void Render(string title, AlarmsOfDay found, Screen screen)
    {
        var act = found.Alarms.Where(alarm => alarm.NeedsAction).ToList();
        var fresh = act.Count(alarm => alarm.Status == AlarmStatus.New);
        var count = act.Count == 0 ? "no alarm" : $"{(act.Count == 1 ? "1 alarm" : $"{Show.Count(act.Count)} alarms")} ({(fresh == 0 ? "none" : Show.Count(fresh))} new)";
        screen.Title($"{title}: {count} at the end of {Date(found.AsOf)}");
        foreach (var alarm in act)
        {
            screen.Line();
            screen.Attention($"{AlarmNames.Of(alarm.Status)} since {Date(alarm.Since)}: {alarm.What} ({AlarmNames.Of(alarm.Rule)})");
            screen.Indented(alarm.Evidence.Text);
            screen.Indented("Next: " + alarm.Next);
        }

        Others(found, AlarmStatus.OutOfUse, "Not used in the last 14 days", screen);
        Others(found, AlarmStatus.Acknowledged, "Acknowledged in the program file", screen);
        if (!found.Notes.IsEmpty) screen.Line();
        foreach (var note in found.Notes) screen.Text(note);
        screen.Line();
        screen.Line(Cautions.Alarms);
        screen.Caution();
    }

    private static void Others(AlarmsOfDay found, AlarmStatus status, string heading, Screen screen)
    {
        var alarms = found.Alarms.Where(alarm => alarm.Status == status).ToList();
        if (alarms.Count == 0) return;
        screen.Line();
        screen.Text($"{heading}: {string.Join("; ", alarms.Select(alarm => $"{alarm.Level} ({AlarmNames.Of(alarm.Rule)} since {Date(alarm.Since)})"))}");
    }

    private static string Date(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
