using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.SlopeChanges.Search;

/// <summary>The limits of the place of a change by the profile likelihood.</summary>
internal sealed class KnotProfile(LineData data, KnotSearch search, int least)
{
    // A valley of the likelihood deeper than this beyond the limit is not crossed: what lies behind it is taken as another change's.
    private const double Deep = 6;
    private HingeGrid? grid;

    /// <summary>The outermost places at which the likelihood is still high enough; null where that is so up to the last place that is allowed.</summary>
    /// <param name="best">The most likely line.</param>
    /// <param name="change">The change.</param>
    /// <param name="drop">How far the logarithm of the likelihood may fall.</param>
    public (double? Lower, double? Upper) Limits(LineSolution best, int change, double drop) => (Limit(best, change, drop, -1), Limit(best, change, drop, 1));

    private double? Limit(LineSolution best, int change, double drop, int direction)
    {
        var target = best.Log - drop;
        var cell = data.Cell(best.Knots[change]);
        var (weights, response) = search.Working(best);
        grid ??= new HingeGrid(data, weights, least);
        var parts = grid.Parts(response).Parts;
        var from = best;
        var (inside, insideFrom, inner) = (best.Knots[change], best, true);
        (double Place, LineSolution From)? outside = null;
        for (var i = direction > 0 ? cell + 1 : data.Places[cell] < best.Knots[change] ? cell : cell - 1; i >= 0 && i < data.Places.Length; i += direction)
        {
            // From the last place, and from the best others at this one: what lies between them may be a valley.
            var next = At(from, change, data.Places[i]);
            if (best.Knots.Length > 1 && grid.Beside(parts, i, change, best.Knots.Length - 1 - change) is { } knots && data.Admits(knots, least) && search.At(knots, best.Beta) is { } start)
                next = Better(next, search.Refine(start, change, 1));
            if (next is null) break;
            if (next.Log >= target) (inside, insideFrom, inner, outside) = (data.Places[i], next, true, null);
            else if (inner) (outside, inner) = ((data.Places[i], next), false);
            if (next.Log < target - Deep && best.Knots.Length > 1) break;
            from = next;
        }

        if (outside is not { } beyond) return null;
        var (low, high) = direction > 0 ? (inside, beyond.Place) : (beyond.Place, inside);
        double Excess(double place) => place == inside ? insideFrom.Log - target
            : place == beyond.Place ? beyond.From.Log - target
            : (Better(At(insideFrom, change, place), best.Knots.Length > 1 ? At(beyond.From, change, place) : null)?.Log ?? beyond.From.Log) - target;
        return Root.Between(Excess, low, high);
    }

    private static LineSolution? Better(LineSolution? one, LineSolution? other) => one is null || (other is not null && other.Log > one.Log) ? other : one;

    /// <summary>The most likely line with one change at a place, from a line with it nearby; changes in the way are moved.</summary>
    private LineSolution? At(LineSolution from, int change, double place)
    {
        var knots = (double[])from.Knots.Clone();
        var move = place - knots[change];
        knots[change] = place;
        if (!data.Admits(knots, least))
        {
            for (var k = change + 1; k < knots.Length && move > 0; k++) knots[k] += move;
            for (var k = change - 1; k >= 0 && move < 0; k--) knots[k] += move;
        }

        var start = data.Admits(knots, least) ? search.At(knots, from.Beta) : Elsewhere(from, change, place);
        return start is null ? null : search.Refine(start, change, 1);
    }

    /// <summary>Where there is no room beside the place for the others as they lie: the best of all places for one of them.</summary>
    private LineSolution? Elsewhere(LineSolution from, int change, double place)
    {
        LineSolution? best = null;
        for (var other = 0; other < from.Knots.Length; other++)
        {
            if (other == change) continue;
            foreach (var to in data.Places)
            {
                var knots = (double[])from.Knots.Clone();
                (knots[change], knots[other]) = (place, to);
                if (data.Admits(knots, least) && search.At(knots, from.Beta) is { } found && found.Log > (best?.Log ?? double.NegativeInfinity)) best = found;
            }
        }

        return best;
    }
}
