using System.Collections.Immutable;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Results.Cadence;
using ScreenStats.Cli.Terminal;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Records;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Cadence.Answers;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;

namespace ScreenStats.Cli.Commands.Cadence;

/// <summary>Takes what the line leaves out from a program: its data, and what its program file states.</summary>
internal sealed class CadenceProgram
{
    private readonly CadenceFindings findings;
    private readonly CadenceSettings settings;
    private readonly ImmutableArray<TakenItem>.Builder taken = ImmutableArray.CreateBuilder<TakenItem>();

    private CadenceProgram(CadenceFindings findings, CadenceSettings settings)
    {
        this.findings = findings;
        this.settings = settings;
    }

    public static CadenceAsked Fill(CadenceAsked asked, Invocation invocation, string path)
    {
        var program = ScreeningProgram.Open(invocation.Environment.PathOf(path));
        var reading = invocation.Progress.During(() => program.Read(new ReadOptions { Progress = invocation.Progress, CancellationToken = invocation.Environment.Cancelled }));
        invocation.Environment.Cancelled.ThrowIfCancellationRequested();
        invocation.Say([.. reading.Diagnostics.Where(found => found.Severity == Severity.Error)]);
        return new CadenceProgram(invocation.Progress.During(() => reading.Tally.Evaluate(program.Settings, invocation.Progress)).Cadence, program.Settings.Cadence).Fill(asked);
    }

    private CadenceAsked Fill(CadenceAsked asked)
    {
        asked = Course(asked);
        asked = asked with
        {
            Ways = Ways(asked),
            People = asked.People ?? (long)Taken("people", findings.People, settings.People is null ? "people with a counted run" : "program file"),
            Specificity = asked.Specificity ?? Share("specificity", findings.Inputs.Specificity),
            Incidence = asked.Incidence ?? Share("incidence", findings.Inputs.Incidence),
            DelayDays = asked.DelayDays ?? Stated("delay"),
            MissCorrelation = asked.MissCorrelation ?? Stated("repeated-misses"),
            Participation = asked.Participation ?? Stated("participation"),
        };
        if (settings.IsolateOn == IsolateOn.Confirmation) asked = asked with { ConfirmationDelayDays = asked.ConfirmationDelayDays ?? Stated("confirmatory-delay") };
        if (!asked.SensitivityGiven && asked.Kind is null or CourseKind.Windows && Share("sensitivity", findings.Inputs.Sensitivity) is { } sensitivity)
            asked = asked with { Sensitivity = sensitivity, SensitivityGiven = true };
        return Spread(asked) with { Taken = taken.ToImmutable() };
    }

    /// <summary>The course of the program file, where the line gives none.</summary>
    private CadenceAsked Course(CadenceAsked asked)
    {
        if (settings.Course is not { } course) return asked;
        if (asked.Kind is null && asked.Window is null) asked = asked with { Kind = course.Kind };
        if ((asked.Kind ?? CourseKind.Windows) != course.Kind) return asked;
        switch (course.Kind)
        {
            case CourseKind.ByDay:
                if (asked.Days.IsEmpty) asked = asked with { Days = CadenceFigures.Points(course.Days), CourseFile = course.File };
                break;
            case CourseKind.ViralLoad:
                return asked with
                {
                    DetectionLimit = asked.DetectionLimit ?? Stated("detection-limit"),
                    Infectiousness = asked.Infectiousness ?? (InfectiousnessFunction?)course.Infectiousness,
                };
            default:
                asked = asked with { Window = asked.Window ?? Span("detectable"), Infectious = asked.Infectious ?? Span("infectious") };
                break;
        }

        return course.Symptoms is null || asked.Symptoms is not null ? asked : asked with { Symptoms = Symptoms() };
    }

    private SymptomOnset? Symptoms() => Stated("symptoms") is { } share && Stated("symptom-onset") is { } onset
        ? new SymptomOnset(share, onset, Stated("symptom-spread") ?? 0, Stated("symptom-isolation") ?? 1)
        : null;

    private ImmutableArray<CadenceWay> Ways(CadenceAsked asked)
    {
        var ways = asked.Ways;
        if (ways.IsEmpty)
        {
            ways =
            [
                .. findings.Options.Where(option => !option.IsNone && !option.IsAsDone).Select(option => settings.Options.Append(settings.Planned).First(one => one?.Name == option.Option)!)
                    .Select(option => option.EveryDays is { } days ? CadenceWay.Every(days) : CadenceWay.On(option.Weekdays)),
            ];
        }

        ImmutableArray<ObservedGap> gaps = [.. findings.Inputs.Gaps.Where(gap => gap.Days <= 36_525).Select(gap => new ObservedGap(gap.Days, gap.Count))];
        if (gaps.IsEmpty) return ways;
        var done = CadenceWay.AsDone(gaps);
        Taken("gaps", done.EveryDays, "days between a person's screens, as they were: one more way of screening");
        return ways.Add(done);
    }

    /// <summary>The spread: as stated, or from the share brought in under the screening as it was.</summary>
    private CadenceAsked Spread(CadenceAsked asked)
    {
        var reproduction = asked.Reproduction ?? Stated("reproduction");
        if (reproduction is null && !asked.Ways.IsEmpty && asked.Ways[^1] is { Gaps.IsEmpty: false } done && CadenceAnswer.CanAnswer(asked)
            && (asked.BroughtIn ?? settings.BroughtIn?.Value) is { } share)
        {
            var without = CourseComparison.ReproductionWithout(CadenceAnswer.Question(asked) with { Sensitivity = asked.Sensitivity?.Value }, done.Schedule(1), share);
            if (without.Value is { } number) reproduction = Taken("reproduction", number, "the share brought in, and what screening as it was took away");
        }

        return reproduction is null
            ? asked
            : asked with
            {
                Reproduction = reproduction,
                BroughtIn = asked.BroughtIn ?? Stated("brought-in"),
                Dispersion = asked.Dispersion ?? Stated("dispersion"),
                Immunity = asked.Immunity ?? Stated("immunity-days"),
                Horizon = asked.Horizon ?? (int)Taken("days", findings.Days, "program file, or a quarter"),
            };
    }

    private Interval? Span(string name) => Stated(name + "-from") is { } from && Stated(name + "-to") is { } to && to >= from ? new Interval(from, to) : null;

    /// <summary>A figure that is stated or from the data; null where neither.</summary>
    private double? Stated(string name)
    {
        var row = findings.Assumptions.FirstOrDefault(one => one.Assumption == name);
        return row is { Value: { } value, Origin: not CadenceOrigin.NotKnown } ? Taken(name, value, row.Source.Length > 0 ? row.Source : "program file") : null;
    }

    private AccuracyStatement? Share(string name, EstimateFinding figure)
    {
        if (figure.Estimate is not (>= 0 and <= 1)) return null;
        var value = figure.Estimate.Value;
        var row = findings.Assumptions.FirstOrDefault(one => one.Assumption == name);
        Interval? limits = figure is { Lower: { } lower, Upper: { } upper } && lower <= value && value <= upper && upper > lower
            ? new Interval(Math.Max(lower, 0), Math.Min(upper, 1))
            : null;
        taken.Add(new TakenItem(name, Figure.Of(value).WithLimits(limits), row?.Source is { Length: > 0 } source ? source : "program file"));
        return limits is { } range ? AccuracyStatement.FromInterval(value, range.Lower, range.Upper, figure.Confidence ?? 0.95) : AccuracyStatement.Exact(value);
    }

    private double Taken(string name, double value, string source)
    {
        taken.Add(new TakenItem(name, Figure.Of(value), source));
        return value;
    }
}
