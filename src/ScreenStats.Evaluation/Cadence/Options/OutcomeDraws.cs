using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Evaluation.Cadence.Options;

/// <summary>What each option gives and costs at the centre, and in every draw.</summary>
internal sealed class OutcomeDraws
{
    private readonly OptionList options;
    private readonly KnownFigures known;
    private readonly ParameterDraws draws;
    private readonly double confidence;

    public OutcomeDraws(OptionList options, KnownFigures known, ParameterDraws draws, double confidence)
    {
        this.options = options;
        this.known = known;
        this.draws = draws;
        this.confidence = confidence;
        Rows = [.. options.All.SelectMany(Burden)];
    }

    public ImmutableArray<CadenceOutcome> Rows { get; }

    public CadenceBasis LeadingBasis => known.Knows(Parameter.BroughtIn) || known.Knows(Parameter.Reproduction) ? CadenceBasis.AsStated : CadenceBasis.AllBroughtIn;

    /// <summary>The incidence, with all that it rests on.</summary>
    public EstimateFinding Incidence { get; } = EstimateFinding.Undefined("without a course of the infection the share found is not known");

    private IEnumerable<CadenceOutcome> Burden(ScreeningOption option)
    {
        var days = known.Settings.Days;
        double Screens(ParameterSet at) => known.People * option.ScreensPerDay * days * (option.IsAsDone ? 1 : at.Known(Parameter.Participation));
        yield return Row(option, CadenceMeasure.Screens, Of(Screens));
        var rate = known.Knows(Parameter.FalsePositiveRate) ? null : "the specificity of a screen is not known";
        yield return Row(option, CadenceMeasure.FalseAlarms, Of(at => Screens(at) * at.Known(Parameter.FalsePositiveRate), rate));
        yield return Row(option, CadenceMeasure.AnyFalseAlarm, Of(
            at => known.People == 0 ? 0 : FalseAlarm.ChanceOfAny(Screens(at) / known.People, 1 - at.Known(Parameter.FalsePositiveRate)), rate));
        yield return Row(option, CadenceMeasure.DaysLost, Of(
            at => Screens(at) * at.Known(Parameter.FalsePositiveRate) * at.Known(Parameter.FalseAlarmDays),
            rate ?? (known.Knows(Parameter.FalseAlarmDays) ? null : "the working days that a false alarm costs are not known")));
    }

    private static CadenceOutcome Row(ScreeningOption option, CadenceMeasure measure, EstimateFinding figure) => new(
        $"{option.Name}|{CadenceNames.Of(CadenceBasis.Either)}|{CadenceNames.Of(measure)}", option.Name, measure, CadenceBasis.Either, true, figure);

    private EstimateFinding Of(Func<ParameterSet, double> figure, string? undefined = null)
    {
        if (undefined is not null) return EstimateFinding.Undefined(undefined);
        var centre = figure(draws.Centre);
        var values = new double[draws.Count];
        for (var index = 0; index < values.Length; index++) values[index] = figure(draws.At(index));
        var (lower, upper) = ParameterDraws.Limits(values, confidence);
        return new EstimateFinding(centre, null, Math.Min(lower, centre), Math.Max(upper, centre), CadenceNotes.Draws, confidence);
    }
}
