using System.Globalization;
using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Rules;
using ScreenStats.Statistics.Bounds;
using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>Limits widened for clusters, in steps so coarse that they tell which step, and no more.</summary>
/// <remarks>
/// A widened limit beside shown counts gives the design effect exactly, and with it the sum of squares of counts by site, which two
/// hidden sites of a known sum do not survive. So the limits of shares are computed anew from the shown counts and one factor, the least of
/// 1, 1.5, 2, 3, 4, 6, 8, 12, ... whose limits hold the true ones and those of every set of counts that the proof exhibits (by
/// site); other limits are moved outwards to a grid. They are never narrower than the true ones. Only the whole program and its devices
/// have them: limits of a site or lot would tell of its weeks.
/// </remarks>
internal sealed class CoarseLimits(CountModel model, SuppressionPlan plan)
{
    private static readonly double[] Grid =
        [.. new[] { 0.0, 1e-5, 2e-5, 5e-5, 1e-4, 2e-4, 5e-4, 0.001, 0.002, 0.003, 0.005, 0.007, 0.01, 0.015, 0.02, 0.03, 0.04, 0.05, 0.07 }.SelectMany(value => new[] { value, 1 - value }),
            .. Enumerable.Range(2, 17).Select(step => step / 20.0)];

    private static readonly double[] Sorted = [.. Grid.Order()];
    private readonly Dictionary<(CountUnit, string, string), double> factors = [];

    /// <summary>The limit that may stand; null where none may.</summary>
    /// <param name="column">The rule of the figure.</param>
    /// <param name="unit">The part of the program.</param>
    /// <param name="name">Name of the figure: a lower limit unless it ends in upper.</param>
    /// <param name="row">The row with the true figures.</param>
    public double? Of(ColumnRule column, CountUnit unit, string name, Row row)
    {
        if (unit != CountUnit.Program && unit != RunRules.Unflagged && unit != SpecimenRules.Strata && unit != DeviceRules.WithAccuracy && unit.By != "device") return null;
        if (Number(row[name]) is not { } value) return null;
        var upper = name.EndsWith("upper", StringComparison.Ordinal);
        if (column.Of == ColumnRule.Shape.Other) return upper ? Sorted.First(step => step >= value - 1e-12) : Sorted.Last(step => step <= value + 1e-12);
        var (trials, events) = (column.Measures[0].In(unit), column.Measures[1].In(unit));
        if (model.Find(trials.Unit, trials.Name) is not { } all || model.Find(events.Unit, events.Name) is not { } some || Number(row["confidence"]) is not { } confidence) return null;
        if (column.Of == ColumnRule.Shape.Proof)
        {
            return SpecificityProof.FromPositivity(some.Value, all.Value, confidence, Factor(unit, trials.Name, events.Name, factor =>
                SpecificityProof.FromPositivity(some.Value, all.Value, confidence, factor).SpecificityLower <= value + 1e-12)).SpecificityLower;
        }

        if (Number(row["widened_lower"]) is not { } from || Number(row["widened_upper"]) is not { } to) return null;
        var least = Factor(unit, trials.Name, events.Name, factor =>
        {
            var limits = Limits(factor);
            return column.Of == ColumnRule.Shape.Share ? limits.Lower <= from + 1e-12 && limits.Upper >= to - 1e-12 : 1 / limits.Upper <= from * (1 + 1e-12) && 1 / limits.Lower >= to * (1 - 1e-12);
        });
        var at = Limits(least);
        return column.Of == ColumnRule.Shape.Share ? upper ? at.Upper : at.Lower : upper ? 1 / at.Lower : 1 / at.Upper;

        (double Lower, double Upper) Limits(double factor)
        {
            var widened = WidenedInterval.Wilson(some.Value, all.Value, factor, 0, confidence);
            return (widened.Lower ?? 0, widened.Upper ?? 1);
        }
    }

    private static IEnumerable<double> Steps()
    {
        yield return 1;
        for (var step = 1.5; step < 1e9; step *= 2)
        {
            yield return step;
            yield return step * 4 / 3;
        }
    }

    private double Factor(CountUnit unit, string trials, string events, Func<double, bool> holds)
    {
        if (!factors.TryGetValue((unit, trials, events), out var witnessed)) factors.Add((unit, trials, events), witnessed = unit == CountUnit.Program ? Witnessed(trials, events) : 1);
        return Steps().First(step => step >= witnessed - 1e-9 && holds(step));
    }

    // The largest design effect over sites of all sets of counts that the proof exhibits; with few sites there is none, as in the figure itself.
    private double Witnessed(string trials, string events)
    {
        var sites = model.Variables.Where(variable => variable.Unit.By == "site" && variable.Measure == trials)
            .Select(variable => (Trials: variable, Events: model.Find(variable.Unit, events))).Where(site => site.Events is not null).ToList();
        if (sites.Count < WidenedInterval.FewestGroups) return 1;
        var largest = 1.0;
        foreach (var witness in plan.Witnesses.Values.Distinct())
        {
            if (!sites.Any(site => witness.ContainsKey(site.Trials) || witness.ContainsKey(site.Events!))) continue;
            var counts = sites.Select(site => (Moved(site.Trials), Moved(site.Events!))).ToList();
            if (counts.Any(site => site.Item2 > site.Item1)) continue;
            var effect = DesignEffect.Of(ClusterSums.From(counts));
            var few = WidenedInterval.Wilson(0, 1, 1, effect.Clusters).Quantile / WidenedInterval.Wilson(0, 1, 1, 0).Quantile;
            largest = Math.Max(largest, effect.Value * few * few);

            long Moved(CountVariable variable) => variable.Value + (long)Math.Round(witness.GetValueOrDefault(variable));
        }

        return largest;
    }

    private static double? Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : null;
}
