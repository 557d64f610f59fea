using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Cadence.Outcomes;

/// <summary>What each uncertain assumption does to the answer, the others at their centre.</summary>
internal static class SwingRows
{
    public static ImmutableArray<CadenceSwing> Of(OptionList options, OutcomeDraws outcomes, ParameterDraws draws, Choice choice, ScreeningOption? spoken)
    {
        var basis = outcomes.LeadingBasis;
        // Nobody is spared anything where nobody is screened: then by the plan, or what is nearest to what was done.
        var option = spoken is { IsNone: false } ? spoken : options.Planned is { IsNone: false } planned ? planned : options.NearestToDone ?? options.Options.LastOrDefault();
        if (option is null || !outcomes.KnowsGain(option, basis)) return [];
        return
        [
            .. AllAtOnce.Of(draws.Ranged.ToList(), parameter => Of(parameter, option, outcomes, draws, choice)).OfType<CadenceSwing>()
                .OrderByDescending(row => row.Swing).ThenBy(row => row.Assumption, StringComparer.Ordinal),
        ];
    }

    // None where the assumption moves nothing.
    private static CadenceSwing? Of(Parameter parameter, ScreeningOption option, OutcomeDraws outcomes, ParameterDraws draws, Choice choice)
    {
        var (lower, upper) = draws.Ends(parameter)!.Value;
        var turned = parameter == Parameter.FalsePositiveRate;
        var (low, at) = At(turned ? upper : lower);
        var (high, then) = At(turned ? lower : upper);
        if (!double.IsFinite(low) || !double.IsFinite(high) || (low == high && at == then)) return null;
        var (id, name, _) = ParameterWords.Of(parameter);
        return new CadenceSwing
        {
            Assumption = id,
            Name = name,
            AtLower = Told(turned ? upper : lower),
            AtUpper = Told(turned ? lower : upper),
            Low = low,
            High = high,
            Swing = Math.Abs(high - low),
            OptionAtLower = at,
            OptionAtUpper = then,
        };

        // Where the incidence comes from the cases found it is drawn as cases: what they come to is told.
        double Told(double value) => parameter == Parameter.Incidence ? outcomes.IncidenceAt(draws.Centre.With(parameter, value)) : turned ? 1 - value : value;

        (double Days, string? Chosen) At(double value)
        {
            var figure = outcomes.At(draws.Centre.With(parameter, value));
            return (figure(option, CadenceMeasure.InfectiousDaysRemoved, outcomes.LeadingBasis), choice.Chosen is null ? null : choice.At(figure, outcomes.LeadingBasis)?.Name);
        }
    }
}
