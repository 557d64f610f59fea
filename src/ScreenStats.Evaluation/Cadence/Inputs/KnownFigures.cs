using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Rules;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics.Cadence.Answers;
using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Evaluation.Cadence.Inputs;

/// <summary>Every figure of the computation: stated, else taken from the data, else not known.</summary>
internal sealed class KnownFigures
{
    private const double LeastConfirmed = 1e-3;
    private readonly List<KnownFigure> figures = [];

    public KnownFigures(Tally tally, ProgramSettings settings, IReadOnlyCollection<string> flaggedLots, AccuracyFindings accuracy)
    {
        Settings = settings.Cadence;
        Data = new DataFigures(tally, flaggedLots, settings.Report.Confidence);
        Confidence = settings.Report.Confidence;
        People = Settings.People ?? Data.People;
        IsolationDays = settings.Policy.IsolationDays;
        figures.Add(Sensitivity(settings, accuracy, tally));
        figures.Add(Specificity(settings, tally));
        AddCourse();
        Add(Parameter.Delay, Settings.DelayDays, share: false, 0, "taken as 0: a positive screen is acted on at once");
        if (Settings.IsolateOn == IsolateOn.Confirmation) figures.Add(ConfirmatoryDelay());
        Add(Parameter.RepeatedMisses, Settings.RepeatedMisses, share: true, 0, "taken as 0: screens of one person miss independently; where the same people are missed again and again less is found");
        figures.Add(Participation());
        if (Data.FollowThrough is { } followed) figures.Add(new(Parameter.FollowThrough, followed, CadenceOrigin.Data, "positive runs that were confirmed or refuted, of those due", CadenceNotes.Draws));
        figures.Add(Incidence(settings));
        Add(Parameter.Reproduction, Settings.Reproduction, share: false, null, "");
        Add(Parameter.BroughtIn, Settings.BroughtIn, share: true, null, Settings.Reproduction is null ? "both bounds are given: all infections brought in, and all spread inside" : "follows from the reproduction and from what screening removes now");
        if (Settings.Dispersion is not null) Add(Parameter.Dispersion, Settings.Dispersion, share: false, null, "");
        Add(Parameter.ImmunityDays, Settings.ImmunityDays, share: false, null, "nobody is infected twice within the days looked at, nor immune at their beginning");
        figures.Add(FalseAlarmDays());
        AddInconclusive();
        Figures = figures.Where(figure => figure.Figure is not null).ToDictionary(figure => figure.Parameter, figure => figure.Figure!);
    }

    public CadenceSettings Settings { get; }

    public DataFigures Data { get; }

    public double Confidence { get; }

    public long People { get; }

    /// <summary>How long a case is kept away by the policy; null where not stated.</summary>
    public int? IsolationDays { get; }

    /// <summary>All figures, known or not, in the order in which they are listed.</summary>
    public IReadOnlyList<KnownFigure> All => figures;

    /// <summary>The known ones.</summary>
    public IReadOnlyDictionary<Parameter, Uncertain> Figures { get; }

    /// <summary>Whether the incidence comes from the cases of the data: its figure then holds cases, to be divided by the exposure and the share followed up.</summary>
    public bool IncidenceFromCases { get; private set; }

    /// <summary>Whether a positive that is never settled keeps its person away for the whole isolation time: people leave on the screen, and the policy states how long.</summary>
    public bool UnsettledStayAway => Settings.IsolateOn == IsolateOn.Screen && IsolationDays is not null;

    /// <summary>Working days lost to one false alarm, refuted or never settled; null where they are not known.</summary>
    public double? DaysOfFalseAlarm(ParameterSet at)
    {
        if (at[Parameter.FalseAlarmDays] is not { } refuted) return null;
        if (!UnsettledStayAway || !Data.HasUnsettled) return refuted;
        var settled = at[Parameter.FollowThrough] ?? 0;
        return (settled * refuted) + ((1 - settled) * IsolationDays!.Value);
    }

    /// <summary>Whether any outcome moves with a figure: with the share followed up only where something unsettled counts.</summary>
    public bool Matters(Parameter parameter) => parameter != Parameter.FollowThrough || IncidenceFromCases || Settings.IsolateOn == IsolateOn.Confirmation || (UnsettledStayAway && Data.HasUnsettled);

    /// <summary>Days between a person's consecutive screens, as the statistics take them.</summary>
    public ImmutableArray<ObservedGap> ObservedGaps => [.. Data.Gaps.Select(gap => new ObservedGap(gap.Days, gap.Count))];

    /// <summary>The chance that the confirmatory test finds an infection.</summary>
    public Uncertain ConfirmatorySensitivity { get; private set; } = Uncertain.Exact(1);

    /// <summary>Whether the false positives are those of the data without the flagged lots.</summary>
    public bool LeavesOutFalseAlarms => Data.LeavesOutLots && figures.Exists(figure => figure is { Parameter: Parameter.FalsePositiveRate, Origin: CadenceOrigin.Data });

    /// <summary>Whether the sensitivity is that of the audits.</summary>
    public bool SensitivityFromAudits => figures.Exists(figure => figure is { Parameter: Parameter.Sensitivity, Origin: CadenceOrigin.Data });

    public bool Knows(Parameter parameter) => Figures.ContainsKey(parameter);

    /// <summary>What the data and the program file give.</summary>
    public CadenceInputs Inputs(ParameterDraws draws, EstimateFinding incidence) => new()
    {
        Sensitivity = Figure(Parameter.Sensitivity, draws),
        Specificity = Figure(Parameter.FalsePositiveRate, draws),
        Incidence = IncidenceFromCases ? incidence : Figure(Parameter.Incidence, draws),
        FoundPerPersonDay = Found(),
        FollowThrough = Data.Settled is { Estimate: { } share } followed
            ? new EstimateFinding(share, null, followed.WidenedLower, followed.WidenedUpper, Statistics.Clusters.WidenedInterval.MethodName, followed.Confidence)
            : EstimateFinding.Undefined("no positive run was due for a confirmatory test"),
        Participation = Figure(Parameter.Participation, draws),
        FalseAlarmDays = Figure(Parameter.FalseAlarmDays, draws),
        People = People,
        PeopleInData = Data.People,
        Cases = Data.Cases,
        Gaps = Data.Gaps,
        AtWeekends = Data.AtWeekends,
    };

    private EstimateFinding Figure(Parameter parameter, ParameterDraws draws)
    {
        if (All.FirstOrDefault(figure => figure.Parameter == parameter) is not { Figure: { } known } row) return EstimateFinding.Undefined("not known");
        var ends = draws.Ends(parameter);
        var (lower, upper) = (ends?.Lower, ends?.Upper);
        return parameter == Parameter.FalsePositiveRate
            ? new EstimateFinding(1 - known.Centre, null, 1 - upper, 1 - lower, row.Method, Confidence)
            : new EstimateFinding(known.Centre, null, lower, upper, row.Method, Confidence);
    }

    private EstimateFinding Found()
    {
        if (!Data.HasConfirmatory) return EstimateFinding.Undefined("there is no confirmatory export, so no case is confirmed");
        if (Data.PersonDays == 0) return EstimateFinding.Undefined("nobody was tested twice, so there are no person-days at risk");
        // Cases come in clusters, as in the incidence.
        var cases = Math.Min(Data.Cases, Data.PersonDays);
        var found = Statistics.Clusters.WidenedInterval.Wilson(cases, Data.PersonDays, Data.CaseDesignEffect, Data.CaseClusters, Confidence);
        return new EstimateFinding((double)cases / Data.PersonDays, null, found.Lower, found.Upper, Statistics.Clusters.WidenedInterval.MethodName, Confidence);
    }

    private KnownFigure Sensitivity(ProgramSettings settings, AccuracyFindings accuracy, Tally tally)
    {
        const Parameter Own = Parameter.Sensitivity;
        if (Settings.Sensitivity is { } stated)
        {
            var figure = StatedFigures.Of(stated);
            return new(Own, figure, CadenceOrigin.Stated, StatedFigures.Source("", Settings.Source, figure.Draw is null), MethodNames.Stated);
        }

        if (Settings.Course is { Kind: CourseKind.ByDay })
            return new(Own, null, CadenceOrigin.NotKnown, "not needed: the course by day holds the chance that a screen is positive", null);
        if (Settings.Course is { Kind: CourseKind.ViralLoad })
            return new(Own, Uncertain.Exact(1), CadenceOrigin.NotKnown, "taken as 1: a screen is positive wherever the viral load is above its limit of detection", MethodNames.Stated);
        if (accuracy.Sensitivity is { Estimate: { } audited, Lower: { } lower, Upper: { } upper })
        {
            return new(Own, Uncertain.Share(audited, Math.Min(lower, audited), Math.Max(upper, audited)), CadenceOrigin.Data,
                Audited(settings, tally, accuracy.Missed), accuracy.Sensitivity.Method);
        }

        return Devices(settings, tally, Own, screen => screen.Sensitivity, value => value)
            ?? new(Own, null, CadenceOrigin.NotKnown, "no audits, and nothing is stated", null);
    }

    // What the program file states of the devices is no count of the data: it may stand beside.
    private static string Audited(ProgramSettings settings, Tally tally, long missed)
    {
        var source = "audits of negative runs, of all infections that the confirmatory test can find" + (missed < Clusters.ProportionFinding.FewBelow ? "; few counts: few of them were missed infections" : "");
        return Devices(settings, tally, Parameter.Sensitivity, screen => screen.Sensitivity, value => value)?.Figure is { } devices
            ? source + string.Create(System.Globalization.CultureInfo.InvariantCulture, $"; the program file states {devices.Centre:0.00} of the devices, by their runs, which is not used") : source;
    }

    private KnownFigure Specificity(ProgramSettings settings, Tally tally)
    {
        const Parameter Own = Parameter.FalsePositiveRate;
        if (Settings.Specificity is { } stated)
        {
            var figure = Complement(StatedFigures.Of(stated));
            return new(Own, figure, CadenceOrigin.Stated, StatedFigures.Source("", Settings.Source, figure.Draw is null), MethodNames.Stated);
        }

        if (Data.FalsePositiveRate() is { } rate)
        {
            return new(Own, rate, CadenceOrigin.Data,
                Data.LeavesOutLots
                    ? "positives refuted of valid tests, as many of those never settled; without the flagged lots, whose false alarms are a fault to mend and not the price of screening"
                    : "positives refuted of valid tests, as many of those never settled", CadenceNotes.Draws);
        }

        return Devices(settings, tally, Own, screen => screen.Specificity, Complement)
            ?? new(Own, null, CadenceOrigin.NotKnown, "no positive was confirmed or refuted, and nothing is stated", null);
    }

    /// <summary>What is stated of the devices, weighted by their runs; null where a device with runs states nothing.</summary>
    private static KnownFigure? Devices(
        ProgramSettings settings, Tally tally, Parameter parameter, Func<ScreenSettings, StatedAccuracy?> stated, Func<Uncertain, Uncertain> turn)
    {
        if (settings.Screens.All(screen => stated(screen) is null)) return null;
        var runs = new Dictionary<ScreenSettings, long>(ReferenceEqualityComparer.Instance);
        foreach (var lot in tally.Cells.Screens.GroupBy(cell => cell.Lot, StringComparer.Ordinal))
        {
            if (DeviceRule.Of(lot.Key, settings.Screens) is not { } screen) continue;
            runs[screen] = runs.GetValueOrDefault(screen) + lot.Sum(cell => cell.Runs);
        }

        var used = runs.Count > 0 ? runs.Select(device => (Weight: (double)device.Value, Screen: device.Key)) : settings.Screens.Select(screen => (Weight: 1.0, Screen: screen));
        var known = used.Where(device => stated(device.Screen) is not null).OrderBy(device => device.Screen.Name, StringComparer.Ordinal)
            .Select(device => (device.Weight, turn(StatedFigures.Of(stated(device.Screen)!)))).ToList();
        if (known.Count == 0) return null;
        var figure = StatedFigures.Weighted(known);
        return new(parameter, figure, CadenceOrigin.Stated, StatedFigures.Source("stated of the screening devices, by their runs", "", figure.Draw is null), MethodNames.Stated);
    }

    private static Uncertain Complement(Uncertain figure) => new(
        1 - figure.Centre, figure.Upper is { } upper ? 1 - upper : null, figure.Lower is { } lower ? 1 - lower : null, figure.Draw is { } draw ? stream => 1 - draw(stream) : null);

    private void AddCourse()
    {
        if (Settings.Course is not { } course) return;
        Add(Parameter.DetectableFrom, course.DetectableFrom, false, null, "", course.Source);
        Add(Parameter.DetectableTo, course.DetectableTo, false, null, "", course.Source);
        if (course.Kind == CourseKind.Windows) Add(Parameter.InfectiousFrom, course.InfectiousFrom, false, null, "no infectious days can be given", course.Source);
        if (course.Kind == CourseKind.Windows) Add(Parameter.InfectiousTo, course.InfectiousTo, false, null, "no infectious days can be given", course.Source);
        Add(Parameter.DetectionLimit, course.DetectionLimit, false, null, "", course.Source);
        if (course.Symptoms is not { } symptoms)
        {
            if (course.Kind == CourseKind.ViralLoad)
            {
                var published = ViralLoadExample.Respiratory(1);
                figures.Add(new(Parameter.SymptomShare, Uncertain.Exact(published.SymptomShare), CadenceOrigin.NotKnown, "not stated; as in the published model of viral loads, where all of them stay away", MethodNames.Stated));
                figures.Add(new(Parameter.SymptomIsolation, Uncertain.Exact(published.SymptomIsolationShare), CadenceOrigin.NotKnown, "not stated; as in the published model of viral loads", MethodNames.Stated));
                return;
            }

            figures.Add(new(Parameter.SymptomShare, Uncertain.Exact(0), CadenceOrigin.NotKnown, "taken as 0: nobody stays away because of symptoms, so screening is given all that it removes", MethodNames.Stated));
            return;
        }

        Add(Parameter.SymptomShare, symptoms.Share, true, null, "", course.Source);
        if (course.Kind != CourseKind.ViralLoad)
        {
            Add(Parameter.SymptomOnset, symptoms.OnsetDays, false, null, "", course.Source);
            Add(Parameter.SymptomSpread, symptoms.Spread, false, 0, "taken as 0: symptoms begin on the same day for everybody", course.Source);
        }

        Add(Parameter.SymptomIsolation, symptoms.Isolate, true, 1, "taken as 1: everybody with symptoms stays away", course.Source);
    }

    // What is not stated: a value that stands for it, or none.
    private void Add(Parameter parameter, StatedRange? stated, bool share, double? without, string remark, string source = "")
    {
        if (StatedFigures.Of(parameter, stated, source.Length > 0 ? source : Settings.Source, share) is { } figure) figures.Add(figure);
        else if (remark.Length > 0 || without is not null) figures.Add(new(parameter, without is { } value ? Uncertain.Exact(value) : null, CadenceOrigin.NotKnown, remark, without is null ? null : MethodNames.Stated));
    }

    private KnownFigure ConfirmatoryDelay() =>
        StatedFigures.Of(Parameter.ConfirmatoryDelay, Settings.ConfirmatoryDelayDays, Settings.Source, share: false)
        ?? (Data.ConfirmatoryDays is { } days
            ? new(Parameter.ConfirmatoryDelay, days, CadenceOrigin.Data, "mean time from a confirmed positive to the report that confirmed it", CadenceNotes.Draws)
            : new(Parameter.ConfirmatoryDelay, null, CadenceOrigin.NotKnown, "people are sent away on confirmation, but nothing says how long that takes", null));

    private KnownFigure Participation()
    {
        if (StatedFigures.Of(Parameter.Participation, Settings.Participation, Settings.Source, share: true) is { } stated) return stated;
        var plan = new SitePlans(Data, Settings);
        if (plan.Due <= 0)
        {
            return new(Parameter.Participation, Uncertain.Exact(1), CadenceOrigin.NotKnown,
                Settings.Planned is null && Settings.PlannedAt.IsEmpty ? "taken as 1: everybody takes every screen; where planned is stated it comes from your data" : "taken as 1: everybody takes every screen", MethodNames.Stated);
        }

        var share = plan.Done / plan.Due;
        return new(Parameter.Participation, Uncertain.Exact(Math.Min(1, share)), CadenceOrigin.Data,
            share > 1 ? "more screens were done than planned; taken as 1" : "screens done of those due by the plan, between each person's first and last", CadenceNotes.Adherence);
    }

    private KnownFigure Incidence(ProgramSettings settings)
    {
        if (StatedFigures.Of(Parameter.Incidence, Settings.Incidence, Settings.Source, share: true) is { } stated) return stated;
        if (!Data.HasConfirmatory) return new(Parameter.Incidence, null, CadenceOrigin.NotKnown, "there is no confirmatory export, so no case is confirmed", null);
        if (Data.PersonDays == 0) return new(Parameter.Incidence, null, CadenceOrigin.NotKnown, "nobody was tested twice, so there are no person-days at risk", null);
        if (Settings.Course is null) return new(Parameter.Incidence, null, CadenceOrigin.NotKnown, "without a course of the infection the share found is not known", null);
        if (Data.Settled is { Trials: > 0, Events: 0 }) return new(Parameter.Incidence, null, CadenceOrigin.NotKnown, "no positive run was followed up to a conclusive result", null);
        IncidenceFromCases = true;
        if (settings.ConfirmatoryTest?.Sensitivity is { } confirmed) ConfirmatorySensitivity = StatedFigures.Of(confirmed);
        // The confirmatory test misses a few too; what was never followed up is divided out with the follow-through's own draws.
        return new(Parameter.Incidence, Infections(Data.Cases), CadenceOrigin.Data,
            "cases found, by the chance that an infection was found under the real gaps between screens and followed up; never a prevalence", CadenceNotes.Incidence);
    }

    /// <summary>The infections that so many cases stand for where each was followed up: gamma, widened as the cases cluster, with what the confirmatory test misses.</summary>
    public Uncertain Infections(long cases)
    {
        var effect = Data.CaseDesignEffect;
        double Confirmed(ParameterStream? stream) => Math.Max(LeastConfirmed, Value(ConfirmatorySensitivity, stream));
        return Uncertain.Drawn(cases / Confirmed(null), stream => stream.Gamma((cases / effect) + 0.5) * effect / Confirmed(stream));
    }

    private void AddInconclusive()
    {
        if (Data.Inconclusive() is not { } known) return;
        var without = Data.LeavesOutLots ? "; without the flagged lots" : "";
        figures.Add(new(Parameter.Inconclusive, known.Rate, CadenceOrigin.Data, "runs whose control line was missing though the test line was there, of all runs" + without, CadenceNotes.Draws));
        if (known.Rate.Centre == 0) return;
        figures.Add(new(Parameter.InconclusiveTested, known.Tested, CadenceOrigin.Data, "inconclusive runs with a confirmatory specimen in time", CadenceNotes.Draws));
        figures.Add(new(Parameter.InconclusiveRepeated, known.Repeated, CadenceOrigin.Data, "repeats done of those due, by the same person on the same day", CadenceNotes.Draws));
    }

    private static double Value(Uncertain figure, ParameterStream? stream) => stream is null || figure.Draw is null ? figure.Centre : figure.Draw(stream);

    private KnownFigure FalseAlarmDays() =>
        StatedFigures.Of(Parameter.FalseAlarmDays, Settings.FalseAlarmDays, Settings.Source, share: false)
        ?? (Settings.IsolateOn == IsolateOn.Confirmation
            ? new(Parameter.FalseAlarmDays, Uncertain.Exact(0), CadenceOrigin.NotKnown, "taken as 0: people leave on confirmation, so a refuted positive keeps nobody away", MethodNames.Stated)
            : Data.FalseAlarmDays is { } days
            ? new(Parameter.FalseAlarmDays, days, CadenceOrigin.Data, "mean time from a refuted positive to the report that refuted it, in days of 24 hours, each taken as a working day", CadenceNotes.Draws)
            : new(Parameter.FalseAlarmDays, null, CadenceOrigin.NotKnown, "working days lost are not given", null));
}
