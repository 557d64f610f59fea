using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Cli.Commands;

/// <summary><c>cadence</c>: intervals between screens side by side, in closed form.</summary>
internal sealed class CadenceCommand : RunnerCommand
{
    private readonly Option<string> every;
    private readonly Option<string> sensitivity;
    private readonly Option<string> specificity;
    private readonly Option<string> window;
    private readonly Option<string> infectious;
    private readonly Option<string> delay;
    private readonly Option<string> incidence;
    private readonly Option<string> people;

    public CadenceCommand()
        : base("cadence", "How often to screen: what each interval finds, and what it costs in false alarms",
            "screenstats cadence --every 1,3.5,7 --sensitivity 0.6 --window 0,7 --infectious 0,7 --incidence 0.0005 --people 1000",
            "screenstats cadence --every 3.5,7 --sensitivity 61/97 --specificity 0.998 --window 3,10 --infectious 2,8 --delay 1")
    {
        every = TakeOption("--every", "days", "Days from one screen to the next, one or more, such as 1,2,3.5,7,14.", required: true);
        sensitivity = TakeOption("--sensitivity", "share", "Sensitivity of one screen while the infection can be detected: a fraction, or counts such as 61/97.", required: true);
        specificity = TakeOption("--specificity", "share", "Specificity of one screen, likewise. Default: not known, and no figure of false positives.");
        window = TakeOption("--window", "days", "Days since infection between which a screen can be positive, such as 3,13.", required: true);
        infectious = TakeOption("--infectious", "days", "Days since infection between which it is passed on, such as 3,10. Default: not known, and no infectious days.");
        delay = TakeOption("--delay", "days", "Days from a positive screen to isolation. Default 0.");
        incidence = TakeOption("--incidence", "share", "New infections per person-day (never a prevalence), such as 0.0005 or 12/24000. Default: not known, and no true positives.");
        people = TakeOption("--people", "number", "People screened. Default: not given, and no figures for all people.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var intervals = Figures.List("--every", invocation.Text(every)!);
        foreach (var days in intervals)
        {
            if (days is not (>= ScreeningRoutine.ShortestInterval and <= 1e9))
                throw new UsageException("--every: an interval must be above 0 and at most a billion days; leave it out to see no screening.");
        }

        if (intervals.Length > 1000) throw new UsageException("--every: at most 1,000 intervals are compared at once.");
        var detectable = Span("--window", invocation.Text(window)!, "3,13");
        var question = new CadenceQuestion
        {
            DetectableFrom = detectable.Lower, DetectableTo = detectable.Upper,
            Infectious = invocation.Text(infectious) is { } span ? Span("--infectious", span, "3,10") : null,
            DelayDays = Days("--delay", Figures.Finite("--delay", invocation.Text(delay) ?? "0")),
            Sensitivity = Share("--sensitivity", invocation.Text(sensitivity)), Specificity = Share("--specificity", invocation.Text(specificity)),
            Incidence = Share("--incidence", invocation.Text(incidence)),
            People = invocation.Text(people) is { } count ? Figures.Whole("--people", count, 1, 1_000_000_000_000) : null,
        };
        var result = CadenceResult.Of(question, CadenceComparison.Of(question, intervals));
        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else CadenceScreen.Render(question, result, invocation.Screen);
        return ExitCode.Done;
    }

    private static double? Share(string name, string? text) => text is null ? null : Figures.Probability(name, text).Value;

    private static Interval Span(string name, string text, string example)
    {
        var ends = Figures.List(name, text);
        if (ends.Length != 2) throw new UsageException($"{name}: \"{text}\" is not two days; write the first and the last day since infection such as {example}.");
        if (ends[1] < ends[0]) throw new UsageException($"{name}: {text} ends before it begins; write the earlier day first, such as {example}.");
        return new Interval(Days(name, ends[0]), Days(name, ends[1]));
    }

    private static double Days(string name, double value) =>
        value is >= 0 and <= 1e9 ? value : throw new UsageException($"{name} must be days from 0 to a billion.");
}
