using System.Collections.Immutable;

namespace ScreenStats.Statistics.Economics.Frontier;

/// <summary>Which options are worth looking at, and what each step between them costs per effect.</summary>
/// <remarks>
/// <para>An option is strictly dominated where another costs no more and does no less, and is better in one of the two; extendedly, where a mix of
/// two others does as much for less. What is left rises in cost and effect, and the incremental ratio, difference in cost over difference in
/// effect from one to the next, never falls. An option on the line between two others is no worse than their mix and stays (ratios that agree to a
/// part in 10^12 count as equal). Of options that are the same the first stands for all. Costs and effects may be negative.</para>
/// <para>The average ratio, cost over effect, hides what the last step costs: decide on the incremental one. Extended dominance supposes that a mix
/// can be had, as by screening some sites one way and the rest another. The figures are taken as exact: for their uncertainty see
/// <c>Economics.Uncertainty</c>.</para>
/// <para>Source: Johannesson M, Weinstein MC, J Health Econ 1993;12:459-467; Karlsson G, Johannesson M, Pharmacoeconomics 1996;9:113-120 (both from memory).</para>
/// </remarks>
public static class CostEffectivenessFrontier
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "incremental-cost-effectiveness";

    private const double Rounding = 1e-12;

    /// <summary>Sorts options into those on the frontier and those dominated.</summary>
    /// <param name="options">One or more options, with doing nothing among them where that is a choice.</param>
    /// <returns>A place for each option, in the order given.</returns>
    /// <exception cref="ArgumentException">No option.</exception>
    public static ImmutableArray<FrontierPlace> Of(IReadOnlyList<OptionOutcome> options)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (options.Count == 0) throw new ArgumentException("There must be at least one option.", nameof(options));
        var frontier = Hull(options);
        return [.. options.Select((_, index) => Place(options, frontier, index))];
    }

    /// <summary>What one more effect costs when one option takes the place of another.</summary>
    /// <param name="from">The option left.</param>
    /// <param name="to">The option taken.</param>
    /// <returns>
    /// Difference in cost over difference in effect, above 0 (where both fall: what is saved for each effect given up) or 0; undefined where the effects are the
    /// same, and where one of the two is cheaper and does more, so that a ratio would say nothing.
    /// </returns>
    public static Estimate Ratio(OptionOutcome from, OptionOutcome to)
    {
        var (cost, effect) = (to.Cost - from.Cost, to.Effect - from.Effect);
        if (effect == 0) return Estimate.Undefined(UndefinedReason.EffectsAlike);
        if (cost != 0 && cost > 0 != effect > 0) return Estimate.Undefined(UndefinedReason.OneOptionDominates);
        var ratio = Math.Abs(cost / effect);
        return double.IsFinite(ratio) ? Estimate.Point(ratio, Method) : Estimate.Undefined(UndefinedReason.TooLarge);
    }

    private static FrontierPlace Place(IReadOnlyList<OptionOutcome> options, List<int> frontier, int index)
    {
        var own = options[index];
        FrontierPlace Dominated(OptionStanding standing, ImmutableArray<int> by) =>
            new(index, own, standing, by) { IncrementalRatio = Estimate.Undefined(UndefinedReason.NotOnFrontier) };

        var place = frontier.IndexOf(index);
        if (place >= 0)
        {
            var ratio = place == 0 ? Estimate.Undefined(UndefinedReason.FirstOfFrontier) : Ratio(options[frontier[place - 1]], own);
            return new FrontierPlace(index, own, OptionStanding.OnFrontier, [])
            {
                Previous = place == 0 ? null : frontier[place - 1],
                IncrementalRatio = ratio,
                BestFrom = place == 0 ? 0 : ratio.Value,
                BestTo = place == frontier.Count - 1 ? null : NotBelow(ratio.Value, Ratio(own, options[frontier[place + 1]]).Value),
            };
        }

        ImmutableArray<int> by = [.. Enumerable.Range(0, options.Count).Where(other => options[other].Dominates(own))];
        if (by.Length > 0) return Dominated(OptionStanding.StrictlyDominated, by);
        for (var earlier = 0; earlier < index; earlier++)
        {
            if (options[earlier] == own) return Dominated(OptionStanding.SameAsEarlier, [earlier]);
        }

        var next = frontier.FindIndex(other => options[other].Effect > own.Effect);
        var (dearer, cheaper) = (options[frontier[next]], options[frontier[next - 1]]);
        var share = (own.Effect - cheaper.Effect) / (dearer.Effect - cheaper.Effect);
        int[] pair = [frontier[next - 1], frontier[next]];
        return Dominated(OptionStanding.ExtendedlyDominated, [.. pair.Order()]) with
        {
            ShareOfDearer = share, MixSaves = Math.Max(own.Cost - cheaper.Cost - (share * (dearer.Cost - cheaper.Cost)), 0),
        };
    }

    /// <summary>The next ratio, not below the last one by a rounding.</summary>
    private static double? NotBelow(double? last, double? next) => next < last ? last : next;

    /// <summary>The frontier from the cheapest option to the one that does most, by their places in the list.</summary>
    private static List<int> Hull(IReadOnlyList<OptionOutcome> options)
    {
        var hull = new List<int>();
        foreach (var index in Enumerable.Range(0, options.Count).OrderBy(i => options[i].Cost).ThenByDescending(i => options[i].Effect).ThenBy(i => i))
        {
            // Sorted so, an option is strictly dominated, or the same, exactly where it does no more than the last one kept.
            if (hull.Count > 0 && options[index].Effect <= options[hull[^1]].Effect) continue;
            while (hull.Count > 1 && Above(options[hull[^2]], options[hull[^1]], options[index])) hull.RemoveAt(hull.Count - 1);
            hull.Add(index);
        }

        return hull;
    }

    /// <summary>Whether the step to the middle option costs more per effect than the step from it.</summary>
    private static bool Above(OptionOutcome low, OptionOutcome middle, OptionOutcome high)
    {
        var first = (middle.Cost - low.Cost) * (high.Effect - middle.Effect);
        var second = (high.Cost - middle.Cost) * (middle.Effect - low.Effect);
        return first - second > Rounding * Math.Max(first, second);
    }
}
