using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Regression.Fitting;

/// <summary>The largest likelihood of rows by Newton's steps, each halved while the likelihood falls or the step leaves what is possible.</summary>
internal static class NewtonSearch
{
    private const int MostSteps = 100;

    /// <summary>The coefficients, the factor of the curvature there (null where it is not positive definite), and whether the search came to an end.</summary>
    public static (double[] Coefficients, double[,]? Factor, bool Settled) Run(RowModel model, double[][] x, double[] start)
    {
        var terms = start.Length;
        var filled = Array.ConvertAll(x, Design.Filled);
        var beta = (double[])start.Clone();
        var log = model.LogSum(x, beta);
        double[,]? factor = null;
        var last = false;
        for (var step = 0; step < MostSteps; step++)
        {
            var slope = new double[terms];
            var curvature = new double[terms, terms];
            for (var i = 0; i < x.Length; i++)
            {
                var eta = model.Predictor(i, x[i], beta);
                var residual = model.Slope(i, eta);
                foreach (var j in filled[i]) slope[j] += x[i][j] * residual;
                Design.AddProduct(curvature, x[i], filled[i], model.Curvature(i, eta));
            }

            factor = SymmetricMatrix.Factor(curvature, 1e-14, out _);
            if (factor is null) return (beta, null, false);
            var change = SymmetricMatrix.Solve(factor, slope);
            var promise = Design.Dot(change, slope);
            if (last || promise < 1e-20 * (1 + Math.Abs(log))) return ([.. beta.Select((b, j) => b + change[j])], factor, true);
            var size = 1.0;
            double[] next;
            double after;
            do
            {
                next = [.. beta.Select((b, j) => b + (size * change[j]))];
                after = model.LogSum(x, next);
                size /= 2;
            }
            while (!(after >= log - (1e-13 * Math.Abs(log))) && size > 1e-10);
            if (!double.IsFinite(after)) return (beta, factor, false);

            // The step no longer shows in the likelihood; once more around, so that the curvature is that of the end.
            last = promise < 1e-15 * (1 + Math.Abs(log)) && !(after > log);
            (beta, log) = (next, after);
        }

        return (beta, factor, false);
    }
}
