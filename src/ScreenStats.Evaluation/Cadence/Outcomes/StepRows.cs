using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Cadence.Outcomes;

/// <summary>What each step to the next more frequent option adds.</summary>
internal static class StepRows
{
    private const double PerScreens = 1_000;
    private const double Least = 1e-9;
    private static readonly CadenceMeasure[] Gains = [CadenceMeasure.InfectiousDaysRemoved, CadenceMeasure.InfectionsAverted, CadenceMeasure.OutbreaksAvoided];

    public static ImmutableArray<CadenceStep> Of(OptionList options, OutcomeDraws outcomes)
    {
        var steps = outcomes.Slots.Bases
            .SelectMany(basis => Gains.SelectMany(measure => Enumerable.Range(1, Math.Max(0, options.Options.Length - 1)).Select(index => (Basis: basis, Measure: measure, Index: index)))).ToList();
        return [.. AllAtOnce.Of(steps, step => Of(options.Options[step.Index - 1], options.Options[step.Index], step.Measure, step.Basis, outcomes))];
    }

    private static CadenceStep Of(ScreeningOption from, ScreeningOption to, CadenceMeasure measure, CadenceBasis basis, OutcomeDraws outcomes)
    {
        var (gain, gains) = Difference(measure);
        var (screens, moreScreens) = Difference(CadenceMeasure.Screens);
        var (alarms, moreAlarms) = Difference(CadenceMeasure.FalseAlarms);
        var undefined = Reason(to, measure) ?? Reason(from, measure);
        var alarmsUndefined = Reason(to, CadenceMeasure.FalseAlarms);
        return new CadenceStep
        {
            Key = $"{from.Name}|{to.Name}|{CadenceNames.Of(basis)}|{CadenceNames.Of(measure)}",
            From = from.Name,
            To = to.Name,
            Measure = measure,
            Basis = basis,
            Leads = basis == outcomes.LeadingBasis && measure == CadenceMeasure.InfectiousDaysRemoved,
            Gain = outcomes.Figure(gain, gains, undefined ?? "not known"),
            MoreScreens = outcomes.Figure(screens, moreScreens, Reason(to, CadenceMeasure.Screens) ?? "not known"),
            PerThousandScreens = outcomes.Figure(PerScreens * Ratio(gain, screens), Ratios(gains, moreScreens, PerScreens), undefined ?? "no screens are added", CadenceNotes.Steps),
            MoreFalseAlarms = outcomes.Figure(alarms, moreAlarms, alarmsUndefined ?? "not known"),
            PerFalseAlarm = outcomes.Figure(Ratio(gain, alarms), Ratios(gains, moreAlarms, 1), undefined ?? alarmsUndefined ?? "no false alarm is added", CadenceNotes.Steps),
        };

        (double Centre, double[] Draws) Difference(CadenceMeasure of)
        {
            var (less, more) = (outcomes.Drawn(from, of, basis), outcomes.Drawn(to, of, basis));
            return (outcomes.Centre(to, of, basis) - outcomes.Centre(from, of, basis), [.. more.Zip(less, (high, low) => high - low)]);
        }

        string? Reason(ScreeningOption option, CadenceMeasure of) => outcomes.Slots.Slots[outcomes.Slots.Place(option, of, basis)].Undefined;
    }

    private static double Ratio(double gain, double cost) => cost > Least ? gain / cost : double.NaN;

    private static double[] Ratios(double[] gains, double[] costs, double scale) => [.. gains.Zip(costs, (gain, cost) => scale * Ratio(gain, cost))];
}
