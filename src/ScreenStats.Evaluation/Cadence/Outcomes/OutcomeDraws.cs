using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Cadence.Outcomes;

/// <summary>The figures of all options at the centre, and in every draw: the same draw for all options, so that differences are paired.</summary>
internal sealed class OutcomeDraws
{
    private readonly OutcomeModel exact;
    private readonly ParameterDraws draws;
    private readonly double confidence;
    private readonly double[] centre;
    private readonly double[][] drawn;

    /// <summary>Works them out.</summary>
    /// <param name="exact">The model for the centre.</param>
    /// <param name="quick">The model for the draws.</param>
    /// <param name="draws">The draws.</param>
    /// <param name="known">The figures: where none that matters has a range each draw is the centre, to the last digit.</param>
    public OutcomeDraws(OutcomeModel exact, OutcomeModel quick, ParameterDraws draws, KnownFigures known)
    {
        this.exact = exact;
        this.draws = draws;
        confidence = known.Confidence;
        centre = exact.Values(draws.Centre);
        drawn = new double[draws.Count][];
        var ranged = draws.Ranged.Any(known.Matters);
        // Every draw has its place, so that no digit depends on who computed what.
        Parallel.For(0, draws.Count, index => drawn[index] = ranged ? quick.Values(draws.At(index)) : Fixed(quick.Values(draws.At(index))));
        Rows = [.. AllAtOnce.Of(exact.Slots.Slots.Length, place => exact.Slots.Slots[place] is { Option.LeavesOnScreen: false } slot ? Row(slot, place) : null).OfType<CadenceOutcome>()];
        Incidence = Figure(centre[^1], Drawn(values => values[^1]), "no screen of the data could have found an infection");
        Reproduction = Figure(centre[^2], Drawn(values => values[^2]), "when an infection is passed on is not known");
        Growing = drawn.Length == 0 ? 0 : (double)drawn.Count(values => values[^2] >= 1) / drawn.Length;
    }

    public OutcomeSlots Slots => exact.Slots;

    public CadenceBasis LeadingBasis => Slots.Bases[0];

    public ImmutableArray<CadenceOutcome> Rows { get; }

    /// <summary>The incidence, with all that it rests on.</summary>
    public EstimateFinding Incidence { get; }

    /// <summary>Infections that one case causes inside without screening, as the share brought in and what was done have it; under two bounds where all spread inside.</summary>
    public EstimateFinding Reproduction { get; }

    /// <summary>The share of draws in which that is 1 or more: infection would grow by itself.</summary>
    public double Growing { get; }

    /// <summary>Infections that one case causes inside without screening, in every draw.</summary>
    public double[] Reproductions => Drawn(values => values[^2]);

    /// <summary>Days' worth of infections that became cases in the data, at the centre and in every draw.</summary>
    public (double Centre, double[] Drawn) Exposure => (centre[^3], Drawn(values => values[^3]));

    /// <summary>Infectious days removed at the centre of all else, for any incidence; null where they are not known.</summary>
    public Func<double, Func<ScreeningOption, double>>? DaysRemoved() => exact.DaysRemoved(draws.Centre, LeadingBasis);

    /// <summary>Whether infectious days removed are known at the centre.</summary>
    public bool KnowsGain(ScreeningOption option, CadenceBasis basis) =>
        Slots.KnowsGain && double.IsFinite(centre[Slots.Place(option, CadenceMeasure.InfectiousDaysRemoved, basis)]);

    /// <summary>The figure at the centre; NaN where it cannot be given.</summary>
    public double Centre(ScreeningOption option, CadenceMeasure measure, CadenceBasis basis) => centre[Slots.Place(option, measure, basis)];

    /// <summary>Values at other assumptions, by the model of the centre.</summary>
    public Func<ScreeningOption, CadenceMeasure, CadenceBasis, double> At(ParameterSet at)
    {
        var values = exact.Values(at);
        return (option, measure, basis) => values[Slots.Place(option, measure, basis)];
    }

    /// <summary>The incidence at other assumptions, by the model of the centre.</summary>
    public double IncidenceAt(ParameterSet at) => exact.Values(at)[^1];

    /// <summary>Values for any number of infections per person-day, all else at the centre, by the model of the centre.</summary>
    public Func<double, Func<ScreeningOption, CadenceMeasure, CadenceBasis, double>> AtIncidence()
    {
        var at = exact.AtIncidence(draws.Centre);
        return incidence =>
        {
            var values = at(incidence);
            return (option, measure, basis) => values[Slots.Place(option, measure, basis)];
        };
    }

    /// <summary>A figure in every draw; those in which it cannot be given are NaN.</summary>
    public double[] Drawn(ScreeningOption option, CadenceMeasure measure, CadenceBasis basis)
    {
        var place = Slots.Place(option, measure, basis);
        return Drawn(values => values[place]);
    }

    /// <summary>A figure with limits from its draws, which hold it.</summary>
    public EstimateFinding Figure(double value, double[] values, string undefined, string method = CadenceNotes.Draws)
    {
        if (!double.IsFinite(value)) return EstimateFinding.Undefined(undefined);
        double[] finite = Array.TrueForAll(values, double.IsFinite) ? values : [.. values.Where(double.IsFinite)];
        if (finite.Length == 0) return new EstimateFinding(value, null, null, null, method, null);
        var (lower, upper) = ParameterDraws.Limits(finite, confidence);
        return new EstimateFinding(value, null, Math.Min(lower, value), Math.Max(upper, value), method, confidence);
    }

    // All but the exposure, which stands beside a stated incidence with a range of its own.
    private double[] Fixed(double[] values)
    {
        var exposure = values[^3];
        centre.CopyTo(values, 0);
        values[^3] = exposure;
        return values;
    }

    private double[] Drawn(Func<double[], double> figure) => Array.ConvertAll(drawn, values => figure(values));

    private CadenceOutcome Row(OutcomeSlot slot, int place) => new(
        $"{slot.Option.Name}|{CadenceNames.Of(slot.Basis)}|{CadenceNames.Of(slot.Measure)}", slot.Option.Name, slot.Measure, slot.Basis,
        slot.Basis == CadenceBasis.Either || slot.Basis == LeadingBasis,
        slot.Undefined is { } reason ? EstimateFinding.Undefined(reason) : Figure(centre[place], Drawn(values => values[place]), Missing(slot)));

    private static string Missing(OutcomeSlot slot) => slot.Measure switch
    {
        CadenceMeasure.PredictiveValue => "no screen can be positive",
        CadenceMeasure.ShareRemoved => "symptoms alone remove all infectious days",
        _ => "no screen of the data could have found an infection",
    };
}
