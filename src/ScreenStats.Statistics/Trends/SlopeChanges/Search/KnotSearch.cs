using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.SlopeChanges.Search;

/// <summary>A line with its changes at some places, and its likelihood without binomial coefficients.</summary>
internal sealed record LineSolution(double[] Knots, double[] Beta, double Log);

/// <summary>The places of the changes that make the counts most likely.</summary>
internal sealed class KnotSearch(LineData data, int least)
{
    private const int Screened = 24;
    private const int Polished = 5;
    private readonly LineNewton newton = new(data);

    /// <summary>The straight line; null where it has no maximum.</summary>
    public LineSolution? Straight() => At([], []);

    /// <summary>The line with one more change than a solution has; null where no place is allowed or the likelihood has no maximum.</summary>
    public LineSolution? WithOneMore(LineSolution fewer)
    {
        var number = fewer.Knots.Length + 1;
        LineSolution? best = null;
        var from = fewer;
        for (var round = 0; round < 3; round++)
        {
            var found = Around(from, fewer, number);
            if (found is null || (best is not null && found.Log <= best.Log + 1e-9)) break;
            from = best = found;
        }

        return best;
    }

    /// <summary>A solution moved to the nearest maximum of the likelihood, one change held if asked.</summary>
    /// <param name="from">Where to begin.</param>
    /// <param name="held">The change that stays where it is; -1 for none.</param>
    /// <param name="reach">How many periods to either side each change is tried at.</param>
    public LineSolution Refine(LineSolution from, int held = -1, int reach = 2)
    {
        int[] free = [.. Enumerable.Range(0, from.Knots.Length).Where(k => k != held)];
        if (free.Length == 0) return from;
        var now = from;
        for (var round = 0; round < 40; round++)
        {
            var before = now.Log;
            for (var step = 0; step < 10 && Moved(now, free) is { } moved; step++) now = moved;
            foreach (var k in free) now = Tried(now, k, reach);
            if (now.Log <= before + 1e-10) break;
        }

        return Settled(now, free);
    }

    /// <summary>The coefficients at given places.</summary>
    public LineSolution? At(double[] knots, double[] start)
    {
        var beta = start;
        var log = newton.Fit(knots, [], ref beta);
        return double.IsFinite(log) ? new LineSolution(knots, beta, log) : null;
    }

    /// <summary>Screens all places by least squares around a solution, then computes the likelihood of the best and moves the best of these.</summary>
    private LineSolution? Around(LineSolution from, LineSolution fewer, int number)
    {
        LineSolution? best = null;
        var sets = Screen(from, fewer, number).Where(knots => data.Admits(knots, least)).Select(knots => At(knots, from.Knots.Length == knots.Length ? from.Beta : [fewer.Beta[0], fewer.Beta[1]]))
            .Where(solution => solution is not null).OrderByDescending(solution => solution!.Log);
        List<LineSolution> polished = [];
        foreach (var solution in sets)
        {
            // One start for each neighbourhood: the best few of all are often the same place, a period further.
            if (polished.Exists(other => Beside(other, solution!))) continue;
            if (polished.Count == Polished) break;
            polished.Add(solution!);
            var refined = Refine(solution!);
            if (best is null || refined.Log > best.Log) best = refined;
        }

        return best;
    }

    private bool Beside(LineSolution one, LineSolution other) => Enumerable.Range(0, one.Knots.Length).All(k => Math.Abs(data.Cell(one.Knots[k]) - data.Cell(other.Knots[k])) <= 1);

    private IEnumerable<double[]> Screen(LineSolution from, LineSolution fewer, int number)
    {
        if (number == 1)
        {
            // Every period, and every gap between two: nothing is left out.
            var straight = new LineSolution([0], [fewer.Beta[0], fewer.Beta[1], 0], fewer.Log);
            return [.. data.Places.Select(place => new[] { place }), .. Enumerable.Range(0, data.Places.Length - 1).Select(cell => Between(straight, 0, cell)).OfType<double[]>()];
        }

        var (weights, response) = Working(from);

        // The fewer changes with one more, so that one more is never worse.
        IEnumerable<double[]> more = data.Places.Select(place => (double[])[.. fewer.Knots.Append(place).Order()]);
        if (number > 2)
        {
            var grid = new HingeGrid(data, weights, least);
            return [.. grid.Count == 0 ? [] : grid.Best(grid.Parts(response).Parts, number, Screened).ConvertAll(found => grid.Knots(found.Set)), .. more];
        }

        return [.. new CrossingGrid(data, weights, response, least).Pairs(Screened), .. more];
    }

    /// <summary>Weights and response of the least squares that Newton's step at a solution is.</summary>
    public (double[] Weights, double[] Response) Working(LineSolution solution)
    {
        var (weights, response) = (new double[data.Times.Length], new double[data.Times.Length]);
        for (var i = 0; i < weights.Length; i++)
        {
            var logit = LineNewton.Logit(data.Times[i], solution.Knots, solution.Beta);
            var (p, q) = (LogitScale.Fraction(logit), LogitScale.Fraction(-logit));
            weights[i] = data.Trials[i] * p * q;
            response[i] = logit + (((data.Events[i] * q) - ((data.Trials[i] - data.Events[i]) * p)) / weights[i]);
        }

        return (weights, response);
    }

    /// <summary>All free changes moved at once by linearisation, the move halved until the likelihood rises; null where it does not.</summary>
    private LineSolution? Moved(LineSolution now, int[] free)
    {
        var beta = now.Beta;
        if (!double.IsFinite(newton.Fit(now.Knots, free, ref beta))) return null;
        var count = now.Knots.Length;
        var size = 1.0;
        for (var halving = 0; halving < 8; halving++, size /= 2)
        {
            var knots = (double[])now.Knots.Clone();
            for (var f = 0; f < free.Length; f++) knots[free[f]] += size * beta[2 + count + f] / beta[2 + free[f]];
            if (!Array.TrueForAll(knots, double.IsFinite) || !data.Admits(knots, least)) continue;
            if (At(knots, now.Beta) is { } next && next.Log > now.Log + 1e-10) return next;
        }

        return null;
    }

    /// <summary>One change tried at the periods near it and at the best place between each two of them.</summary>
    private LineSolution Tried(LineSolution now, int change, int reach)
    {
        var best = now;
        var cell = data.Cell(now.Knots[change]);
        for (var i = Math.Max(0, cell - reach); i <= Math.Min(data.Places.Length - 2, cell + reach); i++)
        {
            foreach (var knots in new[] { Placed(now.Knots, change, data.Places[i]), Between(now, change, i) })
            {
                if (knots is not null && data.Admits(knots, least) && At(knots, best.Beta) is { } next && next.Log > best.Log + 1e-10) best = next;
            }
        }

        return best;
    }

    private static double[] Placed(double[] knots, int change, double place)
    {
        var placed = (double[])knots.Clone();
        placed[change] = place;
        return placed;
    }

    /// <summary>The best place strictly between two neighbouring periods, the other changes held: where the lines of both sides cross (Hudson); null where they cross elsewhere.</summary>
    private double[]? Between(LineSolution now, int change, int cell)
    {
        var (low, high) = (data.Places[cell], data.Places[cell + 1]);
        var middle = (low + high) / 2;
        var knots = Placed(now.Knots, change, middle);
        if ((change > 0 && knots[change - 1] >= middle) || (change < knots.Length - 1 && knots[change + 1] <= middle)) return null;
        var beta = now.Beta;
        if (!double.IsFinite(newton.Fit(knots, [change], ref beta))) return null;
        var place = middle + (beta[^1] / beta[2 + change]);
        return place > low && place < high ? Placed(knots, change, place) : null;
    }

    /// <summary>The last digits: changes between periods move to the exact maximum, as long as none crosses a period.</summary>
    private LineSolution Settled(LineSolution now, int[] free)
    {
        int[] between = [.. free.Where(k => Array.BinarySearch(data.Places, now.Knots[k]) < 0)];
        for (var step = 0; step < 3 && between.Length > 0; step++)
        {
            var beta = now.Beta;
            if (!double.IsFinite(newton.Fit(now.Knots, between, ref beta))) return now;
            var knots = (double[])now.Knots.Clone();
            for (var f = 0; f < between.Length; f++)
            {
                var k = between[f];
                knots[k] += beta[2 + knots.Length + f] / beta[2 + k];
                if (!double.IsFinite(knots[k]) || data.Cell(knots[k]) != data.Cell(now.Knots[k])) return now;
            }

            if (!data.Admits(knots, least) || At(knots, now.Beta) is not { } next || next.Log < now.Log - 1e-8) return now;
            now = next;
        }

        return now;
    }
}
