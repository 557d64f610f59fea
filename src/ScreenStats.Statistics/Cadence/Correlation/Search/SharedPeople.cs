using ScreenStats.Statistics.Cadence.Courses.Quadrature;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Correlation.Search;

/// <summary>What it does to the variance of the correlation that the same people are in several cells.</summary>
/// <remarks>
/// The composite likelihood takes cells as if of different people. With G the slopes of the cells' shares, H = Σ n g gᵀ/v and J = Σ Σ m g gᵀ c/(v v) over pairs of cells of a group,
/// c the covariance of "positive in one" and "positive in the other" for a person in both and m such people, the
/// variance of the correlation is that of H⁻¹ J H⁻¹ instead of that of H⁻¹; their ratio is the factor. Who took
/// three tests in a row is among those who took two; of two rows with different first days, nobody or as many as can be are the same. People who change group
/// between days are not followed. Source: Varin C, Reid N, Firth D, Stat Sin 2011;21:5-42 (from memory).
/// </remarks>
internal static class SharedPeople
{
    private const double Step = 1e-4;

    /// <summary>Below this the correlation is at an edge where slopes do not say how it varies: people are then taken as separate.</summary>
    private const double Least = 0.05;

    /// <summary>The factor: the larger of that with people shared between the cells of a row alone and that with as many as can be between rows too.</summary>
    public static double Factor(SerialModel model, SerialSearch search, double correlation, double[] parameters) => Math.Max(
        Factor(model, search, correlation, parameters, betweenRows: false), Factor(model, search, correlation, parameters, betweenRows: true));

    private static double Factor(SerialModel model, SerialSearch search, double correlation, double[] parameters, bool betweenRows)
    {
        var at = Math.Clamp(correlation, 2 * Step, SerialTestFit.HighestCorrelation);
        var people = new PersonChances(at);
        var cells = search.Shares(people, parameters);
        var (up, down) = (search.Shares(new PersonChances(at + Step), parameters), search.Shares(new PersonChances(at - Step), parameters));
        var free = search.Free(parameters);
        int[] used = [.. Enumerable.Range(0, parameters.Length).Where(i => free[i] && cells.Any(cell => Math.Abs(cell.Slopes[i]) > 1e-7))];
        var slopes = cells.Select((cell, c) => (double[])[.. used.Select(i => cell.Slopes[i]), (up[c].Share - down[c].Share) / (2 * Step)]).ToArray();
        var size = used.Length + 1;
        var (own, shared) = (new double[size, size], new double[size, size]);
        var chances = model.Chances(parameters, people);
        for (var a = 0; a < cells.Length; a++)
        {
            for (var b = 0; b < cells.Length; b++)
            {
                var (first, second) = (model.Cells[a], model.Cells[b]);
                if (first.Cell.Group != second.Cell.Group || (!betweenRows && first.Cell.Day != second.Cell.Day)) continue;
                var (va, vb) = (Variance(cells[a].Share), Variance(cells[b].Share));

                // Of a share next to 0 or 1 the covariance is lost in rounding, and so is what it would tell.
                if (a != b && Math.Min(va, vb) < 1e-6) continue;
                var weight = a == b ? first.Infected / va : Math.Min(first.Infected, second.Infected) * Covariance(first, second, chances, people.Weights) / (va * vb);
                for (var i = 0; i < size; i++)
                {
                    for (var j = 0; j <= i; j++)
                    {
                        shared[i, j] += weight * slopes[a][i] * slopes[b][j];
                        if (a == b) own[i, j] += weight * slopes[a][i] * slopes[b][j];
                    }
                }
            }
        }

        for (var i = 0; i < size; i++)
        {
            own[i, i] += 1e-9;
            for (var j = 0; j < i; j++) shared[j, i] = shared[i, j];
        }

        if (SymmetricMatrix.Factor(own, 1e-13, out _) is not { } factor) return 1;
        var unit = new double[size];
        unit[^1] = 1;
        var row = SymmetricMatrix.Solve(factor, unit);
        var ratio = row[^1] > 0 ? SymmetricMatrix.Form(shared, row) / row[^1] : 1;
        return ratio >= Least ? ratio : 1;
    }

    private static double Variance(double share) => Math.Max(share * (1 - share), 1e-9);

    /// <summary>For a person in both cells, infected still on the later day: the covariance of a positive in one and in the other.</summary>
    private static double Covariance(ModelCell first, ModelCell second, double[][] chances, double[] weights)
    {
        var (early, late) = first.Cell.Day <= second.Cell.Day ? (first, second) : (second, first);
        double none = 0, neither = 0, nor = 0;
        for (var level = 0; level < weights.Length; level++)
        {
            // Tests before the later day are met infected; from there on some recover, of both cells alike.
            var (a, b, both) = (1.0, 1.0, 1.0);
            var known = Array.FindIndex(early.Tests, test => test == late.Tests[0]);
            var before = known < 0 ? early.Tests.Length : known;
            for (var k = 0; k < before; k++) a *= 1 - chances[early.Tests[k]][level];
            both = a;
            var (infectedA, infectedB, infectedBoth) = (a, 1.0, both);
            (double overA, double overB, double overBoth) = (0, 0, 0);
            for (var k = 0; k < Math.Max(late.Tests.Length, early.Tests.Length - before); k++)
            {
                var inA = before + k < early.Tests.Length;
                var inB = k < late.Tests.Length;
                var test = inB ? late.Tests[k] : early.Tests[before + k];
                var missed = 1 - chances[test][level];
                if (k > 0)
                {
                    var still = inB ? late.Still[k - 1] : early.Still[before + k - 1];
                    (overA, overB, overBoth) = (overA + (infectedA * (1 - still)), overB + (infectedB * (1 - still)), overBoth + (infectedBoth * (1 - still)));
                    (infectedA, infectedB, infectedBoth) = (infectedA * still, infectedB * still, infectedBoth * still);
                }

                if (inA) infectedA *= missed;
                if (inB) infectedB *= missed;
                infectedBoth *= missed;
            }

            a = infectedA + overA;
            b = infectedB + overB;
            none += weights[level] * a;
            neither += weights[level] * b;
            nor += weights[level] * (infectedBoth + overBoth);
        }

        return nor - (none * neither);
    }
}
