using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Regression;

/// <summary>The marginal likelihood of all groups over the coefficients and, last, ln σ, and its highest point.</summary>
internal sealed class InterceptLikelihood(InterceptGroup[] groups, HermiteRule rule)
{
    public double Value(double[] theta)
    {
        double sum = 0;
        foreach (var group in groups) sum += group.LogLikelihood(theta, rule, null);
        return sum;
    }

    public double[] Slopes(double[] theta)
    {
        var slopes = new double[theta.Length];
        foreach (var group in groups) group.LogLikelihood(theta, rule, slopes);
        return slopes;
    }

    /// <summary>The information: less the slopes' own slopes, by central differences.</summary>
    public double[,] Information(double[] theta)
    {
        var n = theta.Length;
        var information = new double[n, n];
        for (var j = 0; j < n; j++)
        {
            var step = 1e-4 * Math.Max(1, Math.Abs(theta[j]));
            var (up, down) = ((double[])theta.Clone(), (double[])theta.Clone());
            up[j] += step;
            down[j] -= step;
            var (above, below) = (Slopes(up), Slopes(down));
            for (var i = 0; i < n; i++) information[i, j] = (below[i] - above[i]) / (up[j] - down[j]);
        }

        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < i; j++) information[i, j] = information[j, i] = (information[i, j] + information[j, i]) / 2;
        }

        return information;
    }

    /// <summary>Newton's steps with a ridge where the hill is not one yet; ln σ is kept between -12 and 5.</summary>
    public (double[] Theta, double Log, bool Settled) Climb(double[] start)
    {
        var theta = (double[])start.Clone();
        var log = Value(theta);
        for (var step = 0; step < 60; step++)
        {
            var slopes = Slopes(theta);
            var information = Information(theta);
            var ridge = 0.0;
            double[,]? factor;
            while (true)
            {
                var damped = (double[,])information.Clone();
                for (var j = 0; j < theta.Length; j++) damped[j, j] += ridge * Math.Max(1e-3, Math.Abs(information[j, j]));
                factor = SymmetricMatrix.Factor(damped, 1e-12, out _);
                if (factor is not null) break;
                if (ridge > 1e8) return (theta, log, false);
                ridge = ridge == 0 ? 1e-3 : 4 * ridge;
            }

            var change = SymmetricMatrix.Solve(factor, slopes);
            var promise = LogisticRegression.Dot(change, slopes);
            if (ridge == 0 && promise < 1e-17 * (1 + Math.Abs(log))) return (theta, log, true);
            var size = Math.Min(1, 2 / Math.Max(1e-300, Math.Abs(change[^1])));
            var moved = false;
            for (var halving = 0; halving < 40 && !moved; halving++, size /= 2)
            {
                double[] next = [.. theta.Select((t, j) => t + (size * change[j]))];
                if (next[^1] is < -12 or > 5) return (next, log, false);
                var after = Value(next);
                if (!(after >= log - (1e-14 * Math.Abs(log)))) continue;
                (theta, log, moved) = (next, after, true);
            }

            if (!moved) return (theta, log, ridge == 0 && promise < 1e-9 * (1 + Math.Abs(log)));
        }

        return (theta, log, false);
    }
}
