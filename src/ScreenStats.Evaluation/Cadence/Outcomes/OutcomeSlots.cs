using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Rows;

namespace ScreenStats.Evaluation.Cadence.Outcomes;

/// <summary>Which figures of which options can be given, and why others cannot.</summary>
internal sealed class OutcomeSlots
{
    private static readonly CadenceMeasure[] Measures = Enum.GetValues<CadenceMeasure>();
    private readonly Dictionary<ScreeningOption, int> first = new(ReferenceEqualityComparer.Instance);
    private readonly int[] offsets = new int[Measures.Length];

    public OutcomeSlots(OptionList options, KnownFigures known, bool knowsCourse, bool knowsInfectious)
    {
        var stated = known.Knows(Parameter.BroughtIn) || known.Knows(Parameter.Reproduction);
        Bases = stated ? [CadenceBasis.AsStated] : [CadenceBasis.AllBroughtIn, CadenceBasis.AllInside];
        KnowsGain = knowsCourse && knowsInfectious && CourseUndefined(known, knowsCourse) is null && IncidenceUndefined(known) is null && known.People > 0;
        Slots = [.. options.Computed.SelectMany(option => Measures.SelectMany(measure => Of(option, measure, known, knowsCourse, knowsInfectious)))];
        for (var index = 0; index < Slots.Length; index++) first.TryAdd(Slots[index].Option, index);
        for (var index = 1; index < Measures.Length; index++) offsets[index] = offsets[index - 1] + (DependsOnBasis(Measures[index - 1]) ? Bases.Length : 1);
    }

    /// <summary>What is taken of infections brought in: the basis that leads first.</summary>
    public ImmutableArray<CadenceBasis> Bases { get; }

    public ImmutableArray<OutcomeSlot> Slots { get; }

    /// <summary>Whether infectious days removed can be given.</summary>
    public bool KnowsGain { get; }

    /// <summary>Where a figure stands.</summary>
    public int Place(ScreeningOption option, CadenceMeasure measure, CadenceBasis basis) =>
        first[option] + offsets[(int)measure] + (DependsOnBasis(measure) && basis == CadenceBasis.AllInside ? 1 : 0);

    public static bool DependsOnBasis(CadenceMeasure measure) => measure is CadenceMeasure.InfectiousDaysRemoved or CadenceMeasure.ShareRemoved
        or CadenceMeasure.InfectionsAverted or CadenceMeasure.OutbreaksAvoided or CadenceMeasure.TruePositives or CadenceMeasure.PredictiveValue or CadenceMeasure.DaysOfAverted
        or CadenceMeasure.DaysAwayAdded;

    private IEnumerable<OutcomeSlot> Of(ScreeningOption option, CadenceMeasure measure, KnownFigures known, bool knowsCourse, bool knowsInfectious)
    {
        ImmutableArray<CadenceBasis> bases = DependsOnBasis(measure) ? Bases : [CadenceBasis.Either];
        foreach (var basis in bases) yield return new(option, measure, basis, Undefined(option, measure, basis, known, knowsCourse, knowsInfectious));
    }

    private static string? Undefined(ScreeningOption option, CadenceMeasure measure, CadenceBasis basis, KnownFigures known, bool knowsCourse, bool knowsInfectious)
    {
        if (known.People == 0) return "nobody was tested";
        var specificity = known.Knows(Parameter.FalsePositiveRate) ? null : "the specificity of a screen is not known";
        var course = CourseUndefined(known, knowsCourse);
        var infectious = course ?? (knowsInfectious ? null : "when an infection is passed on is not stated");
        var incidence = IncidenceUndefined(known);
        return measure switch
        {
            CadenceMeasure.Screens => null,
            CadenceMeasure.Inconclusive or CadenceMeasure.InconclusiveTests or CadenceMeasure.InconclusiveRepeats => known.Knows(Parameter.Inconclusive) ? null : "there is no run",
            CadenceMeasure.FalseAlarms or CadenceMeasure.AnyFalseAlarm => specificity,
            CadenceMeasure.DaysLost => specificity ?? (known.Knows(Parameter.FalseAlarmDays) ? null : "the working days that a false alarm costs are not known"),
            CadenceMeasure.Detection => course,
            CadenceMeasure.CaughtBeforeSpread => infectious,
            CadenceMeasure.TruePositives => infectious is not null && basis == CadenceBasis.AllInside ? infectious : course ?? incidence,
            CadenceMeasure.PredictiveValue => option.IsNone ? "nobody is screened" : specificity ?? (infectious is not null && basis == CadenceBasis.AllInside ? infectious : course ?? incidence),
            CadenceMeasure.DaysAwayAdded => known.IsolationDays is null ? "how long a case is kept away is not stated in the policy"
                : infectious is not null && basis == CadenceBasis.AllInside ? infectious : course ?? incidence,
            CadenceMeasure.OutbreaksAvoided => infectious ?? incidence ?? (basis == CadenceBasis.AsStated ? null : "how many infections are brought in is not stated"),
            _ => infectious ?? incidence,
        };
    }

    private static string? CourseUndefined(KnownFigures known, bool knowsCourse)
    {
        if (known.Settings.Course is not { } course) return "the course of an infection is not stated";
        if (course.Kind == CourseKind.Windows && !known.Knows(Parameter.Sensitivity)) return "the sensitivity of a screen is not known";
        if (known.Settings.IsolateOn == IsolateOn.Confirmation && !known.Knows(Parameter.ConfirmatoryDelay)) return "how long a confirmatory result takes is not known";
        return knowsCourse ? null : "there is no option to compare";
    }

    private static string? IncidenceUndefined(KnownFigures known) =>
        known.Knows(Parameter.Incidence) ? null : known.All.FirstOrDefault(figure => figure.Parameter == Parameter.Incidence)?.Source ?? "the incidence is not known";
}
