using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Worth.Options;
using ScreenStats.Evaluation.Worth.Prices;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Sure;

/// <summary>What each uncertain figure does to the net benefit of the option judged, the others at their centre.</summary>
internal static class SwingsInMoney
{
    public static ImmutableArray<WorthSwing> Of(CostModel model, OptionTable options)
    {
        if (model.Value is not { } value || options.Judged is not { IsKnown: true } judged) return [];
        var of = model.Work.Draws;
        var centre = model.Work.Outcomes.At(of.Centre);
        var moves = new List<(string Id, string Name, double Lower, double Upper, Func<double, (ParameterSet At, PriceSet Prices, double Worth)> Move)>();
        foreach (var parameter in of.Ranged)
        {
            var (id, name, _) = ParameterWords.Of(parameter);
            var (lower, upper) = of.Ends(parameter)!.Value;
            var turned = parameter == Parameter.FalsePositiveRate;
            var scale = parameter == Parameter.Incidence && model.Work.Known.IncidenceFromCases && of.Centre[parameter] is > 0 and var cases ? model.Work.Outcomes.IncidenceAt(of.Centre) / cases : 1;
            if (!double.IsFinite(scale)) continue;
            moves.Add(turned
                ? (id, name, 1 - upper, 1 - lower, end => (of.Centre.With(parameter, 1 - end), model.Prices.Centre, value.Value))
                : (id, name, lower * scale, upper * scale, end => (of.Centre.With(parameter, end / scale), model.Prices.Centre, value.Value)));
        }

        foreach (var price in model.Prices.Ranged)
        {
            var (_, id, name) = PriceWords.Of(price);
            var stated = model.Prices.Stated(price)!;
            moves.Add((id, name, stated.Lower!.Value, stated.Upper!.Value, end => (of.Centre, model.Prices.Centre.With(price, end), value.Value)));
        }

        if (!value.TakenAsExact) moves.Add(("value-of-effect", $"value of one {WorthNames.One(model.Effect)}", value.Lower!.Value, value.Upper!.Value, end => (of.Centre, model.Prices.Centre, end)));
        return
        [
            .. AllAtOnce.Of(moves, move => Row(move.Id, move.Name, move.Lower, move.Upper, At(move.Move(move.Lower)), At(move.Move(move.Upper)))).OfType<WorthSwing>()
                .OrderByDescending(row => row.Swing).ThenBy(row => row.Figure, StringComparer.Ordinal),
        ];

        (double Net, string Best) At((ParameterSet At, PriceSet Prices, double Worth) state)
        {
            // Prices leave what an option does as it is.
            var does = state.At == of.Centre ? centre : model.Work.Outcomes.At(state.At);
            double Net(OptionFigures option)
            {
                var sum = model.At(option.Choice, does, state.At, state.Prices, option.Pool);
                return (state.Worth * sum.Effect) - sum.Cost;
            }

            return (Net(judged), options.Known.MaxBy(Net)!.Choice.Key);
        }
    }

    // None where the figure moves nothing.
    private static WorthSwing? Row(string id, string name, double lower, double upper, (double Net, string Best) low, (double Net, string Best) high) =>
        !double.IsFinite(low.Net) || !double.IsFinite(high.Net) || (low.Net == high.Net && low.Best == high.Best) ? null : new WorthSwing
        {
            Figure = id,
            Name = name,
            AtLower = lower,
            AtUpper = upper,
            Low = low.Net,
            High = high.Net,
            Swing = Math.Abs(high.Net - low.Net),
            BestAtLower = low.Best,
            BestAtUpper = high.Best,
        };
}
