using ScreenStats.Evaluation.Cadence.Courses;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Statistics.Cadence.Intervals;
using ScreenStats.Statistics.Cadence.Spread;

namespace ScreenStats.Evaluation.Cadence.Outcomes;

/// <summary>All figures of all options from one value for each assumption.</summary>
internal sealed class OutcomeModel
{
    /// <summary>An outbreak: so many cases from one infection brought in, itself included.</summary>
    public const int Outbreak = 5;

    /// <summary>For shares where no infection is expected: the share of the first one that would come.</summary>
    private const double Trace = 1e-9;

    private readonly KnownFigures known;
    private readonly ICourseModel? course;
    private readonly ScreeningOption[] options;
    private readonly SpreadInside spread;

    public OutcomeModel(OptionList list, KnownFigures known, OutcomeSlots slots, ICourseModel? course)
    {
        this.known = known;
        this.course = course;
        Slots = slots;
        options = [.. list.Computed];
        spread = new SpreadInside(known.People, known.Settings.Days, Array.IndexOf(options, list.AsDone ?? list.Planned), [.. options.Select(option => option.IsNone)]);
    }

    public OutcomeSlots Slots { get; }

    /// <summary>What stands after the slots: days' worth of infections that become cases, infections by one case without screening, and the incidence.</summary>
    public const int Further = 3;

    /// <summary>The figures, slot by slot, and then the further ones; NaN where one cannot be given.</summary>
    public double[] Values(ParameterSet at)
    {
        var figures = course?.Of(at);
        return Values(at, figures, ByDay(at, figures));
    }

    /// <summary>The same for any number of infections per person-day, the other figures being as they are: what a course does to one infection is worked out once.</summary>
    public Func<double, double[]> AtIncidence(ParameterSet at)
    {
        var figures = course?.Of(at);
        var byDay = ByDay(at, figures);
        // Where the incidence is from cases it goes with them.
        var each = known.IncidenceFromCases ? Exposure(at, figures) : 1;
        return incidence => Values(at.With(Parameter.Incidence, incidence * each), figures, byDay);
    }

    private double[] ByDay(ParameterSet at, CourseFigures? figures) => figures is null || !course!.KnowsInfectious ? [] : course.InfectiousnessByDay(at);

    private double[] Values(ParameterSet at, CourseFigures? figures, double[] byDay)
    {
        var values = new double[Slots.Slots.Length + Further];
        Array.Fill(values, double.NaN);
        var incidence = Incidence(at, figures);
        values[^1] = incidence ?? double.NaN;
        values[^3] = Exposure(at, figures);
        var burden = options.Select(option => Screens(option, at)).ToArray();
        for (var index = 0; index < options.Length; index++) Burden(values, index, burden[index], at);
        if (figures is null) return values;
        if (course!.KnowsInfectious) values[^2] = spread.WithoutScreening(Slots.Bases[^1], at, figures);
        for (var index = 0; index < options.Length; index++)
        {
            Set(values, index, CadenceMeasure.Detection, CadenceBasis.Either, figures.Detection[index]);
            if (figures.Caught.Length > 0) Set(values, index, CadenceMeasure.CaughtBeforeSpread, CadenceBasis.Either, figures.Caught[index]);
        }

        if (incidence is { } rate && known.People > 0)
        {
            foreach (var basis in Slots.Bases) Gains(values, basis, at, figures, rate, byDay, burden);
        }

        return values;
    }

    /// <summary>Infectious days removed by each option, for any incidence, the other figures being as they are: none where they are not known.</summary>
    public Func<double, Func<ScreeningOption, double>>? DaysRemoved(ParameterSet at, CadenceBasis basis)
    {
        if (!Slots.KnowsGain || course?.Of(at) is not { Removed.Length: > 0 } figures) return null;
        var byDay = course.InfectiousnessByDay(at);
        return incidence =>
        {
            var infections = spread.Of(basis, at, figures, incidence, byDay);
            var without = infections[^1].Expected * figures.InfectiousDays * (1 - figures.RemovedBySymptoms);
            return option => Array.IndexOf(options, option) is var index && index < 0 ? double.NaN : without - (infections[index].Expected * figures.InfectiousDays * (1 - figures.Removed[index]));
        };
    }

    private static double Exposure(ParameterSet at, CourseFigures? figures) => (figures?.Exposure ?? 0) * (at[Parameter.FollowThrough] ?? 1);

    private double? Incidence(ParameterSet at, CourseFigures? figures)
    {
        if (at[Parameter.Incidence] is not { } value) return null;
        if (!known.IncidenceFromCases) return value;
        var exposure = Exposure(at, figures);
        return exposure > 0 ? Math.Min(1, value / exposure) : null;
    }

    private double Screens(ScreeningOption option, ParameterSet at) =>
        known.People * option.ScreensPerDay * known.Settings.Days * (option.IsAsDone ? 1 : at.Known(Parameter.Participation));

    private void Burden(double[] values, int index, double screens, ParameterSet at)
    {
        Set(values, index, CadenceMeasure.Screens, CadenceBasis.Either, screens);
        if (at[Parameter.Inconclusive] is { } unclear)
        {
            Set(values, index, CadenceMeasure.Inconclusive, CadenceBasis.Either, screens * unclear);
            Set(values, index, CadenceMeasure.InconclusiveTests, CadenceBasis.Either, screens * unclear * (at[Parameter.InconclusiveTested] ?? 0));
            Set(values, index, CadenceMeasure.InconclusiveRepeats, CadenceBasis.Either, screens * unclear * (at[Parameter.InconclusiveRepeated] ?? 0));
        }

        if (at[Parameter.FalsePositiveRate] is not { } rate || known.People == 0) return;
        var alarms = screens * rate;
        Set(values, index, CadenceMeasure.FalseAlarms, CadenceBasis.Either, alarms);
        Set(values, index, CadenceMeasure.AnyFalseAlarm, CadenceBasis.Either, FalseAlarm.ChanceOfAny(screens / known.People, 1 - rate));
        if (known.DaysOfFalseAlarm(at) is { } days) Set(values, index, CadenceMeasure.DaysLost, CadenceBasis.Either, alarms * days);
    }

    private void Gains(double[] values, CadenceBasis basis, ParameterSet at, CourseFigures figures, double incidence, double[] byDay, double[] screens)
    {
        var infections = spread.Of(basis, at, figures, incidence, byDay);
        var none = infections[^1];
        var knows = figures.Removed.Length > 0;
        var daysWithout = none.Expected * figures.InfectiousDays * (1 - figures.RemovedBySymptoms);
        var outbreaksWithout = knows && basis == CadenceBasis.AsStated ? Outbreaks(none, at) : 0;
        var traces = incidence > 0 || !knows ? null : spread.Of(basis, at, figures, Trace / known.People, byDay);
        for (var index = 0; index < options.Length; index++)
        {
            var here = infections[index];
            var found = here.Expected * figures.Detection[index];
            if (knows || basis != CadenceBasis.AllInside)
            {
                Set(values, index, CadenceMeasure.TruePositives, basis, found);
                if (figures.Away.Length > 0) Set(values, index, CadenceMeasure.DaysAwayAdded, basis, (here.Expected * figures.Away[index]) - (none.Expected * figures.AwayBySymptoms));
            }

            if (at[Parameter.FalsePositiveRate] is { } rate && found + (screens[index] * rate) is > 0 and var positives) Set(values, index, CadenceMeasure.PredictiveValue, basis, found / positives);
            if (!knows) continue;
            Set(values, index, CadenceMeasure.InfectiousDaysRemoved, basis, daysWithout - (here.Expected * figures.InfectiousDays * (1 - figures.Removed[index])));
            Set(values, index, CadenceMeasure.InfectionsAverted, basis, none.Expected - here.Expected);
            Set(values, index, CadenceMeasure.DaysOfAverted, basis, (none.Expected - here.Expected) * figures.InfectiousDays * (1 - figures.RemovedBySymptoms));
            var (with, without) = traces is null ? (here.Expected, none.Expected) : (traces[index].Expected, traces[^1].Expected);
            var share = 1 - (with * (1 - figures.Removed[index]) / (without * (1 - figures.RemovedBySymptoms)));
            if (double.IsFinite(share)) Set(values, index, CadenceMeasure.ShareRemoved, basis, share);
            if (basis == CadenceBasis.AsStated) Set(values, index, CadenceMeasure.OutbreaksAvoided, basis, outbreaksWithout - Outbreaks(here, at));
        }
    }

    private static double Outbreaks(Infections infections, ParameterSet at) =>
        infections.Introductions * new OffspringProcess(infections.Reproduction, at[Parameter.Dispersion]).AtLeast(Outbreak);

    private void Set(double[] values, int option, CadenceMeasure measure, CadenceBasis basis, double value)
    {
        var place = Slots.Place(options[option], measure, basis);
        if (Slots.Slots[place].Undefined is null) values[place] = value;
    }
}
