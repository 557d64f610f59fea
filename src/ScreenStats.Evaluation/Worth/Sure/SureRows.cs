using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Worth.Options;
using ScreenStats.Evaluation.Worth.Prices;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Statistics.Economics.Uncertainty.Acceptability;
using ScreenStats.Statistics.Economics.Uncertainty.Information;

namespace ScreenStats.Evaluation.Worth.Sure;

/// <summary>How sure the choice is: acceptability over values of an effect, and what knowing more would be worth.</summary>
internal static class SureRows
{
    private const int Values = 21;
    private const double Beyond = 1.5;

    /// <summary>The acceptability curves, from a value of 0 to half as much again as the range of the stated value, or the last step of the frontier.</summary>
    public static ImmutableArray<WorthAcceptability> Acceptability(CostModel model, OptionTable options, ImmutableArray<WorthOption> rows)
    {
        if (options.Known.Length < 2) return [];
        var stated = model.Value is { } value ? value.Upper ?? value.Value : 0;
        var last = rows.Where(row => row.IncrementalRatio.Estimate is not null).Select(row => row.IncrementalRatio.Estimate!.Value).DefaultIfEmpty(0).Max();
        var most = Beyond * (stated > 0 ? stated : last);
        if (!(most > 0) || most > 1e15) return [];
        var grid = Enumerable.Range(0, Values).Select(step => most * step / (Values - 1)).ToList();
        if (model.Value is { Value: > 0 } own && !grid.Contains(own.Value)) grid.Add(own.Value);
        grid.Sort();
        var draws = options.Contenders.Select(OptionTable.Draws).ToArray();
        var points = AllAtOnce.Of(grid, worth => AcceptabilityCurve.Of(draws, [worth])).SelectMany(curve => curve).ToList();
        var ever = Enumerable.Range(0, draws.Length).Where(option => points.Exists(point => point.Chances[option] > 0 || point.Best == option)).ToList();
        return
        [
            .. points.SelectMany(point => ever.Select(option => new WorthAcceptability(
                point.ValueOfEffect.ToString("R", CultureInfo.InvariantCulture) + "|" + options.Contenders[option].Choice.Key, point.ValueOfEffect, options.Contenders[option].Choice.Key,
                point.Chances[option], point.Best == option))),
        ];
    }

    /// <summary>What knowing everything, and each uncertain figure, would be worth at the stated value.</summary>
    public static ImmutableArray<WorthInformation> Information(CostModel model, OptionTable options, Tally tally)
    {
        if (model.Value is not { } value || options.Known.Length < 2) return [];
        var all = NetBenefitTable.Of([.. options.Contenders.Select(option => option.NetBenefits(value.Value))]);
        var everything = PerfectInformation.OfEverything(all);
        // An option that is never the best would never be chosen by knowing.
        var chances = AcceptabilityCurve.Of([.. options.Contenders.Select(OptionTable.Draws)], [value.Value])[0].Chances;
        var table = NetBenefitTable.Of([.. options.Contenders.Where((_, index) => chances[index] > 0 || index == all.Best).Select(option => option.NetBenefits(value.Value))]);
        var figures = new List<(string Id, string Name, IReadOnlyList<double> Draws)>();
        foreach (var parameter in model.Work.Draws.Ranged)
        {
            var (id, name, _) = ParameterWords.Of(parameter);
            var drawn = model.Work.Draws.Drawn(parameter);
            figures.Add((id, name, [.. Enumerable.Range(0, model.Work.Draws.Count).Select(draw => drawn(draw)!.Value)]));
        }

        foreach (var price in model.Prices.Ranged) figures.Add((PriceWords.Of(price).Id, PriceWords.Of(price).Name, model.Prices.Drawn(price)));
        var rows = AllAtOnce.Of(figures, figure =>
        {
            var worth = PerfectInformation.OfParameter(table, figure.Draws);
            return new WorthInformation(figure.Id, figure.Name, worth.Value, worth.StandardError, worth.Method);
        });
        var sample = NegativeSample.Of(model, table, tally);
        return [new WorthInformation("everything", "everything that is uncertain", everything.Value, everything.StandardError, everything.Method), .. rows.OrderByDescending(row => row.Value).ThenBy(row => row.Parameter, StringComparer.Ordinal), .. sample is null ? (WorthInformation[])[] : [sample]];
    }

    /// <summary>The share of draws in which the option judged gains more than it costs.</summary>
    /// <param name="model">The model.</param>
    /// <param name="options">The options.</param>
    /// <param name="value">What an effect is worth: it is a decision, and held in all draws; null where not known.</param>
    public static double? PaysShare(CostModel model, OptionTable options, double? value)
    {
        if (model.Value is null || value is not { } worth || options.Judged is not { IsKnown: true } judged) return null;
        var net = judged.NetBenefits(worth);
        return net.Count(one => one > 0) / (double)net.Length;
    }
}
