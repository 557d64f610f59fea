using System.Collections.Immutable;

namespace ScreenStats.Statistics.Trends.Smooths.Grids;

/// <summary>The likelihood over the standard deviation of a step: its top, and averages over it.</summary>
internal sealed class SigmaProfile
{
    private const double Most = 10;
    private const int Nodes = 16;

    // Points of the likelihood, sigma doubling from one to the next.
    private readonly List<(double Sigma, double Log)> lattice = [];
    private readonly LevelData data;

    public SigmaProfile(LevelData data)
    {
        this.data = data;
        Constant = ConstantLevel.All(data).LogLikelihood;

        // Below this the whole span moves by a tenth of what is known of its mean: the likelihood is linear in the variance.
        var sigma = Math.Min(0.1, 0.1 / Math.Sqrt(data.AllInformation * Math.Max(1, data.Span)));
        var top = double.NegativeInfinity;
        for (; sigma < Most; sigma *= 2)
        {
            var log = LogLikelihood(sigma);
            lattice.Add((sigma, log));
            top = Math.Max(top, log);
            if (log < top - 30) break;
        }

        if (sigma >= Most) lattice.Add((Most, LogLikelihood(Most)));
        Search();
    }

    /// <summary>The logarithm of the likelihood of a constant rate.</summary>
    public double Constant { get; }

    /// <summary>The most likely sigma.</summary>
    public double MostLikely { get; private set; }

    /// <summary>Whether the likelihood still rises where sigma is larger than can be meant.</summary>
    public bool IsUnbounded { get; private set; }

    /// <summary>Lattices at the nodes of a rule over sigma, with weights that sum to 1; the mean of sigma and the average likelihood.</summary>
    /// <param name="scale">The standard deviation of the half-normal density of sigma.</param>
    public (ImmutableArray<(LevelGrid Grid, double Weight)> Parts, double Sigma, double LogLikelihood) Average(double scale)
    {
        static double Finite(double log) => double.IsFinite(log) ? log : -1e300;
        double Log(double sigma, double log) => Finite(log) - (0.5 * (sigma / scale) * (sigma / scale));
        List<(double Sigma, double Log)> points = [(0, Constant), .. lattice.Select(point => (point.Sigma, Log(point.Sigma, point.Log)))];
        var best = points.Index().MaxBy(point => point.Item.Log).Index;
        var least = points[best].Log - 16;
        double End(int inside, int outside)
        {
            var (near, far) = (points[inside].Sigma, points[outside].Sigma);
            for (var step = 0; step < 4; step++)
            {
                var middle = (near + far) / 2;
                if (Log(middle, LogLikelihood(middle)) < least) far = middle;
                else near = middle;
            }

            return far;
        }

        var left = best;
        while (left > 0 && points[left].Log >= least) left--;
        var right = best;
        while (right < points.Count - 1 && points[right].Log >= least) right++;
        var low = points[left].Log >= least ? 0 : End(left + 1, left);
        var high = points[right].Log >= least ? points[right].Sigma : End(right - 1, right);
        var rule = new MathNet.Numerics.Integration.GaussLegendreRule(low, high, Nodes);
        List<(LevelGrid Grid, double Log, double Sigma)> parts = [];
        for (var k = 0; k < Nodes; k++)
        {
            var sigma = rule.Abscissas[k];
            if (LevelGrid.Of(data, sigma) is not { } grid) continue;
            parts.Add((grid, Log(sigma, grid.LogLikelihood) + Math.Log(rule.Weights[k] * Math.Sqrt(2 / Math.PI) / scale), sigma));
        }

        var top = parts.Max(part => part.Log);
        var sum = parts.Sum(part => Math.Exp(part.Log - top));
        var kept = parts.Where(part => part.Log > top - 16).ToList();
        var keptSum = kept.Sum(part => Math.Exp(part.Log - top));
        return ([.. kept.Select(part => (part.Grid, Math.Exp(part.Log - top) / keptSum))], kept.Sum(part => part.Sigma * Math.Exp(part.Log - top)) / keptSum, top + Math.Log(sum));
    }

    private double LogLikelihood(double sigma) => LevelGrid.Of(data, sigma)?.LogLikelihood ?? double.NegativeInfinity;

    private void Search()
    {
        var best = 0;
        for (var k = 1; k < lattice.Count; k++)
        {
            if (lattice[k].Log > lattice[best].Log) best = k;
        }

        if (lattice[best].Log <= Constant)
        {
            // A likelihood that rises from 0 and yet is lower at the first point has its top between: where a parabola through both has it.
            var slope = ConstantLevel.Slope(data);
            if (slope <= 0) return;
            var variance = lattice[0].Sigma * lattice[0].Sigma;
            var curve = (lattice[0].Log - Constant - (slope * variance)) / (variance * variance);
            MostLikely = curve < 0 ? Math.Sqrt(-slope / (2 * curve)) : 0;
            return;
        }

        if (best == lattice.Count - 1 && lattice[best].Sigma >= Most)
        {
            IsUnbounded = true;
            return;
        }

        MostLikely = Math.Exp(Top(Math.Log(lattice[best].Sigma)));
    }

    /// <summary>The top near a point of the lattice: golden sections, then the root of the slope of the polynomial through five points around.</summary>
    private double Top(double near)
    {
        const double Golden = 0.3819660112501051;
        double At(double logSigma) => LogLikelihood(Math.Exp(logSigma));
        var (a, b, c) = (near - Math.Log(2), near, Math.Min(Math.Log(Most), near + Math.Log(2)));
        var atB = At(b);
        while (c - a > 0.08)
        {
            var right = c - b > b - a;
            var next = right ? b + (Golden * (c - b)) : b - (Golden * (b - a));
            var at = At(next);
            if (at > atB)
            {
                if (right) a = b;
                else c = b;
                (b, atB) = (next, at);
            }
            else if (right)
            {
                c = next;
            }
            else
            {
                a = next;
            }
        }

        const double Width = 0.05;
        for (var again = 0; again < 3; again++)
        {
            var (f, g, h, i) = (At(b - (2 * Width)), At(b - Width), At(b + Width), At(b + (2 * Width)));
            var first = (f - (8 * g) + (8 * h) - i) / 12;
            var second = (-f + (16 * g) - (30 * atB) + (16 * h) - i) / 12;
            var third = (-f + (2 * g) - (2 * h) + i) / 2;
            var fourth = f - (4 * g) + (6 * atB) - (4 * h) + i;
            double u = 0;
            for (var step = 0; step < 20; step++)
            {
                var slope = first + (u * (second + (u * ((third / 2) + (u * fourth / 6)))));
                var curve = second + (u * (third + (u * fourth / 2)));
                if (!(curve < 0)) break;
                u = Math.Clamp(u - (slope / curve), -2, 2);
            }

            b += Width * u;
            if (Math.Abs(u) < 0.5) break;
            atB = At(b);
        }

        return b;
    }
}
