using ScreenStats.Statistics.Monitoring.Scans;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.SlopeChanges.Search;

/// <summary>The permutation test of fewer against more changes.</summary>
/// <remarks>
/// Pearson's residuals of the fewer are permuted and put back on its line, each times the error of its period; both numbers of changes are fitted by
/// weighted least squares over all places at periods, to the counts and to each permutation alike. Where it may stop, it goes on while it could still reject. Source: Kim HJ, Fay MP, Feuer EJ, Midthune DN, Stat Med 2000;19:335-351 (from memory).
/// </remarks>
internal static class ChangePermutation
{
    public static (double Statistic, double PValue) Test(LineData data, KnotSearch search, LineSolution fewer, int more, double level, SlopeChangeOptions options)
    {
        var (weights, response) = search.Working(fewer);
        var grid = new HingeGrid(data, weights, options.LeastPeriods);
        var count = weights.Length;
        var (line, roots, residuals) = (new double[count], new double[count], new double[count]);
        for (var i = 0; i < count; i++)
        {
            line[i] = LineNewton.Logit(data.Times[i], fewer.Knots, fewer.Beta);
            roots[i] = Math.Sqrt(weights[i]);
            residuals[i] = (response[i] - line[i]) * roots[i];
        }

        var observed = Statistic(grid, response, fewer.Knots.Length, more);
        var permutations = options.Permutations;
        var enough = options.EnoughAsLarge == 0 ? int.MaxValue : Math.Max(options.EnoughAsLarge, (int)(level * (1 + permutations)) + 1);
        var asLarge = 0;
        var (order, drawn) = (new int[count], new double[count]);
        for (var permutation = 0; permutation < permutations; permutation++)
        {
            var stream = new ReplicateStream(options.Seed, permutation);
            for (var i = 0; i < count; i++)
            {
                var j = (int)stream.Below(i + 1);
                (order[i], order[j]) = (order[j], i);
            }

            for (var i = 0; i < count; i++) drawn[i] = line[i] + (residuals[order[i]] / roots[i]);
            if (Statistic(grid, drawn, fewer.Knots.Length, more) >= observed * (1 - 1e-12)) asLarge++;
            if (asLarge >= enough) return (observed, (double)asLarge / (1 + permutation));
        }

        return (observed, (1.0 + asLarge) / (1.0 + permutations));
    }

    private static double Statistic(HingeGrid grid, double[] response, int fewer, int more)
    {
        var (parts, left) = grid.Parts(response);
        double Gain(int number) => number == 0 ? 0 : grid.Best(parts, number, 1) is [var best, ..] ? best.Gain : 0;
        var (few, many) = (Gain(fewer), Gain(more));
        return Math.Max(0, many - few) / Math.Max(left - many, 1e-12 * left);
    }
}
