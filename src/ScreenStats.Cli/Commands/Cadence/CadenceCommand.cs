using System.Collections.Immutable;
using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;

namespace ScreenStats.Cli.Commands.Cadence;

/// <summary><c>cadence</c>: ways of screening side by side.</summary>
internal sealed class CadenceCommand : RunnerCommand
{
    private readonly Option<string> every, weekdays, sensitivity, specificity, window, infectious, delay, incidence, people;
    private readonly Option<string[]> course;
    private readonly Option<string> detectionLimit, infectiousness, symptoms, confirmationDelay, misses, participation;
    private readonly Option<string> spread, dispersion, broughtIn, days, immunity, from, seed;

    public CadenceCommand()
        : base("cadence", "How often to screen: what each interval finds, and what it costs in false alarms",
            "screenstats cadence --every 1,3.5,7 --sensitivity 0.6 --specificity 0.998 --window 3,10 --infectious 2,8 --delay 1 --incidence 0.0005 --people 1000",
            "screenstats cadence --every 3.5,7 --weekdays Monday,Thursday --sensitivity 61/97 --specificity 0.998 --window 3,10 --infectious 2,8 --delay 1 --misses 0.3 --participation 0.85 --incidence 12/24000 --people 400 --spread 1.4 --dispersion 0.4",
            "screenstats cadence --from my-program --every 1,3.5,7")
    {
        every = TakeOption("--every", "days", "Days from one screen to the next, one or more, such as 1,2,3.5,7,14. Required, but for --weekdays or --from.");
        weekdays = TakeOption("--weekdays", "days", "Fixed days of the week as one more way of screening, such as Monday,Thursday.");
        sensitivity = TakeOption("--sensitivity", "share", "Sensitivity of one screen while the infection can be detected: a fraction, counts such as 61/97, or a value with its 95 % interval such as 0.73[0.65,0.80]; counts and intervals give limits. Required, but for --course or --from.");
        specificity = TakeOption("--specificity", "share", "Specificity of one screen, likewise. Default: not known, and no figure of false positives.");
        window = TakeOption("--window", "days", "Days since infection between which a screen can be positive, such as 3,13. Required, but for --course or --from.");
        infectious = TakeOption("--infectious", "days", "Days since infection between which it is passed on, such as 3,10. Default: not known, and no infectious days.");
        delay = TakeOption("--delay", "days", "Days from a positive screen to isolation. Default 0.");
        incidence = TakeOption("--incidence", "share", "New infections per person-day (never a prevalence), such as 0.0005, 12/24000 or 0.0005[0.0003,0.0009]. Default: not known, and no true positives.");
        people = TakeOption("--people", "number", "People screened. Default: not given, and no figures for all people.");
        course = TakePair("--course", "kind", "windows (the default, by --window and --infectious); by-day FILE, a CSV file with the columns day, detection and infectiousness; or viral-load, simulated courses of a fast respiratory infection, whose figures are shown.");
        course.CompletionSources.Add("windows", "by-day", "viral-load");
        detectionLimit = TakeOption("--detection-limit", "log10", "With --course viral-load: logarithm to base 10 of the load from which a screen is positive. Default 5.");
        infectiousness = TakeOption("--infectiousness", "name", "With --course viral-load: log-above-threshold (default), proportional or step.");
        infectiousness.CompletionSources.Add("log-above-threshold", "proportional", "step");
        symptoms = TakeOption("--symptoms", "figures", "Share of infected people who get symptoms, median days to them, and if wanted the standard deviation of the logarithm of these days (0) and the share who stay away then (1), such as 0.4,5 or 0.4,5,0.3,0.9. Default: nobody stays away.");
        confirmationDelay = TakeOption("--confirmation-delay", "days", "Days from the screen to the confirmatory result, for which isolation waits. Default: it does not wait.");
        misses = TakeOption("--misses", "correlation", "How far misses repeat within a person: a correlation from 0 (each by itself) to below 1. Default 0.");
        participation = TakeOption("--participation", "share", "Share of due screens that are taken. Default 1.");
        spread = TakeOption("--spread", "number", "Infections inside that one case causes where nobody is screened: gives the spread under each way of screening.");
        dispersion = TakeOption("--dispersion", "number", "With the spread: dispersion k of that number; the smaller, the fewer cases cause most of it. Default: Poisson.");
        broughtIn = TakeOption("--brought-in", "share", "With the spread: share of new infections that is brought in. Default 1.");
        days = TakeOption("--days", "number", "With the spread: days for which infections are counted. Default 91.");
        immunity = TakeOption("--immunity", "days", "With the spread: days after which someone infected can be infected again; those infected in as many days before are taken as immune at the beginning. Default: nobody is, nor infected twice.");
        from = TakeOption("--from", "program", "A folder with exports, or its program.json: what the line leaves out is taken from there (accuracy, incidence, people, gaps as they were, and what the program file says under cadence), and the answer says so.");
        seed = TakeOption("--seed", "number", "Where the draws behind limits, and simulated courses, start. Default 1.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var asked = Read(invocation);
        if (invocation.Text(from) is { } program) asked = CadenceProgram.Fill(asked, invocation, program);
        Complete(asked);
        var answer = CadenceAnswer.Of(asked);
        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(answer));
        else CadenceScreen.Render(asked, answer, invocation.Screen);
        return ExitCode.Done;
    }

    private CadenceAsked Read(Invocation invocation)
    {
        var kind = CadenceFigures.Course(invocation.Parsed.GetValue(course), invocation.Environment, out var file, out var byDay);
        var sensitive = Share("--sensitivity", invocation.Text(sensitivity));
        ImmutableArray<CadenceWay> ways =
        [
            .. invocation.Text(every) is { } intervals ? CadenceFigures.Every("--every", intervals) : [],
            .. invocation.Text(weekdays) is { } week ? [CadenceFigures.Weekdays("--weekdays", week)] : ImmutableArray<CadenceWay>.Empty,
        ];
        var asked = new CadenceAsked
        {
            Ways = ways,
            Kind = kind,
            CourseFile = file,
            Days = byDay,
            Window = invocation.Text(window) is { } detectable ? CadenceFigures.Span("--window", detectable, "3,13") : null,
            Infectious = invocation.Text(infectious) is { } span ? CadenceFigures.Span("--infectious", span, "3,10") : null,
            DetectionLimit = invocation.Text(detectionLimit) is { } limit ? CadenceFigures.Within("--detection-limit", limit, 0, 12, open: true) : null,
            Infectiousness = invocation.Text(infectiousness) is { } function ? Function(function) : null,
            SensitivityGiven = sensitive is not null,
            Sensitivity = sensitive?.Statement,
            Specificity = Share("--specificity", invocation.Text(specificity))?.Statement,
            Incidence = Share("--incidence", invocation.Text(incidence))?.Statement,
            People = invocation.Text(people) is { } count ? Figures.Whole("--people", count, 1, 1_000_000_000_000) : null,
            DelayDays = invocation.Text(delay) is { } wait ? CadenceFigures.Days("--delay", Figures.Finite("--delay", wait)) : null,
            ConfirmationDelayDays = invocation.Text(confirmationDelay) is { } longer ? CadenceFigures.Days("--confirmation-delay", Figures.Finite("--confirmation-delay", longer)) : null,
            MissCorrelation = invocation.Text(misses) is { } correlation ? CadenceFigures.BelowOne("--misses", correlation) : null,
            Participation = Share("--participation", invocation.Text(participation)) is { } part ? CadenceFigures.Known("--participation", part) : null,
            Symptoms = invocation.Text(symptoms) is { } onset ? CadenceFigures.Symptoms("--symptoms", onset) : null,
            Reproduction = invocation.Text(spread) is { } number ? CadenceFigures.Within("--spread", number, 0, 1000, open: false) : null,
            Dispersion = invocation.Text(dispersion) is { } k ? CadenceFigures.Within("--dispersion", k, 0, 1_000_000, open: true) : null,
            BroughtIn = Share("--brought-in", invocation.Text(broughtIn)) is { } brought ? CadenceFigures.Known("--brought-in", brought) : null,
            Horizon = invocation.Text(days) is { } horizon ? (int)Figures.Whole("--days", horizon, 1, 3660) : null,
            Immunity = invocation.Text(immunity) is { } immune ? CadenceFigures.Within("--immunity", immune, 1, 36_600, open: false) : null,
            Seed = (ulong)Figures.Whole("--seed", invocation.Text(seed) ?? "1", 0, int.MaxValue),
        };
        Check(asked, invocation.Text(from) is not null);
        return asked;
    }

    /// <summary>Options that say the same thing twice, or nothing where they stand.</summary>
    private static void Check(CadenceAsked asked, bool withProgram)
    {
        if (asked.Kind is CourseKind.ByDay or CourseKind.ViralLoad)
        {
            if (asked.Window is not null) throw new UsageException("--window belongs to a course by windows, and --course gives another; leave out one of the two.");
            if (asked.Infectious is not null) throw new UsageException("--infectious belongs to a course by windows, and --course gives another; leave out one of the two.");
        }

        if (asked.Kind == CourseKind.ByDay && asked.SensitivityGiven)
            throw new UsageException("--sensitivity: the course by day holds the chance that a screen is positive; leave the option out.");
        if (asked.Kind == CourseKind.ViralLoad && asked.Symptoms is not null)
            throw new UsageException("--symptoms: courses of the viral load have symptoms of their own; leave the option out.");
        if (asked.Kind != CourseKind.ViralLoad && !withProgram && (asked.DetectionLimit is not null || asked.Infectiousness is not null))
            throw new UsageException($"{(asked.DetectionLimit is not null ? "--detection-limit" : "--infectiousness")} goes with --course viral-load.");
        if (asked.Reproduction is null && !withProgram && (asked.Dispersion is not null || asked.BroughtIn is not null || asked.Horizon is not null || asked.Immunity is not null))
            throw new UsageException($"{(asked.Dispersion is not null ? "--dispersion" : asked.BroughtIn is not null ? "--brought-in" : asked.Horizon is not null ? "--days" : "--immunity")} goes with --spread, the infections that one case causes.");
    }

    /// <summary>One message for all that is missing.</summary>
    private static void Complete(CadenceAsked asked)
    {
        var missing = new List<string>();
        if (asked.Ways.IsEmpty) missing.Add("--every 3.5,7 (or --weekdays Monday,Thursday)");
        var windows = asked.Kind is null or CourseKind.Windows;
        if (windows && !asked.SensitivityGiven) missing.Add("--sensitivity 0.6");
        if (windows && asked.Window is null) missing.Add("--window 3,10");
        if (missing.Count == 0) return;
        var others = windows && asked.Window is null ? "--course by-day FILE or --course viral-load stand for window and sensitivity, and --from takes what is known from a program." : "--from takes what is known from a program.";
        throw new UsageException($"missing: {string.Join(", ", missing)}. {others}");
    }

    private static ProbabilityFigure? Share(string name, string? text) => text is null ? null : Figures.Probability(name, text);

    private static InfectiousnessFunction Function(string text) => text switch
    {
        "log-above-threshold" => InfectiousnessFunction.LogAboveThreshold,
        "proportional" => InfectiousnessFunction.Proportional,
        "step" => InfectiousnessFunction.Step,
        _ => throw new UsageException($"--infectiousness: \"{text}\" is not known; write log-above-threshold, proportional or step."),
    };
}
