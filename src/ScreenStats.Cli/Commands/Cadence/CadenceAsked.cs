using System.Collections.Immutable;
using ScreenStats.Cli.Results.Cadence;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;

namespace ScreenStats.Cli.Commands.Cadence;

/// <summary>What is asked of <c>cadence</c>: from the line, and what the line leaves out from a program. Null: not given.</summary>
internal sealed record CadenceAsked
{
    public ImmutableArray<CadenceWay> Ways { get; init; } = [];

    public CourseKind? Kind { get; init; }

    public Interval? Window { get; init; }

    public Interval? Infectious { get; init; }

    public ImmutableArray<CourseDay> Days { get; init; } = [];

    public string? CourseFile { get; init; }

    public double? DetectionLimit { get; init; }

    public InfectiousnessFunction? Infectiousness { get; init; }

    /// <summary>True where a sensitivity was written, be it one that cannot answer (0/0).</summary>
    public bool SensitivityGiven { get; init; }

    public AccuracyStatement? Sensitivity { get; init; }

    public AccuracyStatement? Specificity { get; init; }

    public AccuracyStatement? Incidence { get; init; }

    public long? People { get; init; }

    public double? DelayDays { get; init; }

    /// <summary>Days from the screen to the confirmatory result, for which isolation waits.</summary>
    public double? ConfirmationDelayDays { get; init; }

    public double? MissCorrelation { get; init; }

    public double? Participation { get; init; }

    public SymptomOnset? Symptoms { get; init; }

    public double? Reproduction { get; init; }

    public double? Dispersion { get; init; }

    public double? BroughtIn { get; init; }

    public int? Horizon { get; init; }

    public double? Immunity { get; init; }

    public ulong Seed { get; init; } = 1;

    /// <summary>What was taken from a program.</summary>
    public ImmutableArray<TakenItem> Taken { get; init; } = [];

    /// <summary>True where the closed forms answer all that is asked.</summary>
    public bool ClosedForm => (Kind is null or CourseKind.Windows) && ConfirmationDelayDays is null && (MissCorrelation is null or 0) && (Participation is null or 1)
        && Symptoms is null && Reproduction is null && BroughtIn is null && Ways.All(way => way.IsRegular);

    public ScreeningRules Rules => new()
    {
        DelayDays = DelayDays ?? 0,
        ConfirmatoryDelayDays = Math.Max(0, (ConfirmationDelayDays ?? 0) - (DelayDays ?? 0)),
        IsolateOn = ConfirmationDelayDays is null ? IsolationTrigger.Screen : IsolationTrigger.Confirmation,
        MissCorrelation = MissCorrelation ?? 0,
    };
}
