using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression.Fitting;

namespace ScreenStats.Statistics.Regression.Intercepts;

/// <summary>The marginal likelihood of all groups over the coefficients and, last, ln σ, and its highest point.</summary>
internal sealed class InterceptLikelihood(InterceptModel model, InterceptGroup[] groups, HermiteRule rule)
{
    /// <summary>The logarithm of the likelihood with its slopes and its information.</summary>
    public InterceptSums At(double[] theta)
    {
        var sums = new InterceptSums(model);
        var (eta, sigma) = (model.Predictor(theta), Math.Exp(theta[^1]));
        foreach (var group in groups) group.Add(sums, eta, sigma, rule);
        return sums;
    }

    /// <summary>Newton's steps with a ridge where the hill is not one yet; ln σ is kept between -12 and 5.</summary>
    public (double[] Theta, double Log, bool Settled) Climb(double[] start)
    {
        var theta = (double[])start.Clone();
        var sums = At(theta);
        for (var step = 0; step < 60; step++)
        {
            var information = sums.Matrix();
            var ridge = 0.0;
            double[,]? factor;
            while (true)
            {
                var damped = (double[,])information.Clone();
                for (var j = 0; j < theta.Length; j++) damped[j, j] += ridge * Math.Max(1e-3, Math.Abs(information[j, j]));
                factor = SymmetricMatrix.Factor(damped, 1e-12, out _);
                if (factor is not null) break;
                if (ridge > 1e8) return (theta, sums.Log, false);
                ridge = ridge == 0 ? 1e-3 : 4 * ridge;
            }

            var change = SymmetricMatrix.Solve(factor, sums.Slopes);
            var promise = Design.Dot(change, sums.Slopes);
            if (ridge == 0 && promise < 1e-17 * (1 + Math.Abs(sums.Log))) return (theta, sums.Log, true);
            var size = Math.Min(1, 2 / Math.Max(1e-300, Math.Abs(change[^1])));
            var moved = false;
            for (var halving = 0; halving < 40 && !moved; halving++, size /= 2)
            {
                double[] next = [.. theta.Select((t, j) => t + (size * change[j]))];
                if (next[^1] is < -12 or > 5) return (next, sums.Log, false);
                var after = At(next);

                // With few nodes the slopes are not quite those of the sum: near the top a step is good that brings them towards 0.
                var flatter = ridge == 0 && promise < 1 && Design.Dot(SymmetricMatrix.Solve(factor, after.Slopes), after.Slopes) < promise / 4;
                if (!(after.Log >= sums.Log - (1e-14 * Math.Abs(sums.Log))) && !flatter) continue;
                (theta, sums, moved) = (next, after, true);
            }

            if (!moved) return (theta, sums.Log, ridge == 0 && promise < 1e-9 * (1 + Math.Abs(sums.Log)));
        }

        return (theta, sums.Log, false);
    }
}
