using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Rows;

namespace ScreenStats.Evaluation.Cadence.Outcomes;

/// <summary>
/// Which option to choose, where the program file says what 1,000 more screens must remove: the one with most infectious days removed after that
/// price. Where each step adds less than the one before that is the last step that adds as much; where a step adds more than the one before, as spread
/// inside can make it, a step is not taken for its own gain while the way to it costs more than both give.
/// </summary>
internal sealed class Choice
{
    private const double PerScreens = 1_000;
    private readonly OptionList options;
    private readonly double? worthwhile;

    public Choice(OptionList options, OutcomeDraws outcomes, double? worthwhile)
    {
        this.options = options;
        this.worthwhile = worthwhile;
        if (worthwhile is null || options.Options.IsEmpty || !outcomes.KnowsGain(options.Options[0], outcomes.LeadingBasis)) return;
        Chosen = At(outcomes.Centre, outcomes.LeadingBasis);
        Rows = [.. outcomes.Slots.Bases.SelectMany(basis => Of(outcomes, basis))];
    }

    /// <summary>The option chosen at the centre; null where there is none to choose by.</summary>
    public ScreeningOption? Chosen { get; }

    public ImmutableArray<CadenceChoice> Rows { get; } = [];

    /// <summary>The option chosen at other figures.</summary>
    public ScreeningOption? At(Func<ScreeningOption, CadenceMeasure, CadenceBasis, double> figure, CadenceBasis basis)
    {
        if (worthwhile is not { } price) return null;
        ScreeningOption? best = null;
        var most = double.NegativeInfinity;
        foreach (var option in options.Options)
        {
            var net = figure(option, CadenceMeasure.InfectiousDaysRemoved, basis) - (price * figure(option, CadenceMeasure.Screens, basis) / PerScreens);
            // A tie goes to fewer screens.
            if (net > most) (best, most) = (option, net);
        }

        return best;
    }

    private IEnumerable<CadenceChoice> Of(OutcomeDraws outcomes, CadenceBasis basis)
    {
        var chosen = At(outcomes.Centre, basis);
        var gains = options.Options.ToDictionary(option => option, option => outcomes.Drawn(option, CadenceMeasure.InfectiousDaysRemoved, basis));
        var screens = options.Options.ToDictionary(option => option, option => outcomes.Drawn(option, CadenceMeasure.Screens, basis));
        var times = options.Options.ToDictionary(option => option, _ => 0);
        var draws = gains[options.Options[0]].Length;
        var counted = 0;
        for (var index = 0; index < draws; index++)
        {
            if (At((option, measure, _) => (measure == CadenceMeasure.Screens ? screens : gains)[option][index], basis) is not { } best) continue;
            times[best]++;
            counted++;
        }

        return options.Options.Select(option => new CadenceChoice(
            $"{option.Name}|{CadenceNames.Of(basis)}", option.Name, basis, basis == outcomes.LeadingBasis, counted == 0 ? 0 : (double)times[option] / counted, option == chosen));
    }
}
