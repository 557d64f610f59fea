using System.Collections.Immutable;

namespace ScreenStats.Statistics.Trends.Smooths.Grids;

/// <summary>The likelihood over the standard deviation of a step: its top, and averages over it.</summary>
internal sealed class SigmaProfile
{
    private const double Most = 10;
    private const double Fall = 12.5;

    // Points of the likelihood, sigma doubling from one to the next.
    private readonly List<(double Sigma, double Log)> lattice = [];
    private readonly LevelData data;

    public SigmaProfile(LevelData data)
    {
        this.data = data;
        Constant = ConstantLevel.All(data).LogLikelihood;

        // Below the least the whole span moves by a tenth of what is known of its mean: the likelihood is linear in the variance. The search goes down
        // from wide steps, since narrow ones that the counts refute take the most points; and up from them only where it must.
        var least = Math.Min(0.1, 0.1 / Math.Sqrt(data.AllInformation * Math.Max(1, data.Span)));
        var top = double.NegativeInfinity;
        for (var sigma = Most / 4; sigma > least; sigma /= 2)
        {
            var log = LogLikelihood(sigma);
            lattice.Add((sigma, log));
            top = Math.Max(top, log);
            if (log < top - 30) break;
        }

        lattice.Reverse();
        for (var sigma = Most / 2; sigma <= Most && lattice[^1].Log > top - 20; sigma *= 2)
        {
            lattice.Add((sigma, LogLikelihood(sigma)));
            top = Math.Max(top, lattice[^1].Log);
        }

        Search();
    }

    /// <summary>The logarithm of the likelihood of a constant rate.</summary>
    public double Constant { get; }

    /// <summary>The most likely sigma.</summary>
    public double MostLikely { get; private set; }

    /// <summary>Whether the likelihood still rises where sigma is larger than can be meant.</summary>
    public bool IsUnbounded { get; private set; }

    /// <summary>Whether no lattice within the limits of this library holds the counts: hundreds of millions of trials a period.</summary>
    public bool IsBeyond => lattice.All(point => !double.IsFinite(point.Log));

    /// <summary>Points of sigma with weights that sum to 1; the mean of sigma and the average likelihood.</summary>
    /// <param name="scale">The standard deviation of the half-normal density of sigma.</param>
    /// <remarks>
    /// Likelihood and density depend on the square of sigma, so that they go on below 0 as in a mirror: the trapezoidal rule over all multiples
    /// of a step of about one standard deviation of sigma errs by a part in a million. Those that weigh less than a part in 10,000 are left out.
    /// </remarks>
    public (ImmutableArray<(double Sigma, double Weight)> Parts, double Sigma, double LogLikelihood) Average(double scale)
    {
        double Log(double sigma, double log) => (double.IsFinite(log) ? log : -1e300) - (0.5 * (sigma / scale) * (sigma / scale));
        List<(double Sigma, double Log)> points = [(0, Log(0, Constant)), .. lattice.Select(point => (point.Sigma, Log(point.Sigma, point.Log)))];
        var best = points.Index().MaxBy(point => point.Item.Log).Index;
        var least = points[best].Log - Fall;
        double End(int inside, int outside)
        {
            var (near, far) = (points[inside].Sigma, points[outside].Sigma);
            for (var step = 0; step < 3; step++)
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

        // Over x with sigma = unit sinh x the peak is near to a bell: halve the step until the sum stays. Steps as wide as the most telling period is
        // sure of its logit change the smooth most, so that smaller ones stand closer.
        var unit = Math.Min(Math.Max(points[best].Sigma, high / 20) / 2, 1 / Math.Sqrt(data.MostInformation));
        var (from, to) = (Math.Asinh(low / unit), Math.Asinh(high / unit));
        var width = (to - from) / 5;
        List<(double Sigma, double Log)> parts = [];
        void Add(long k)
        {
            var sigma = unit * Math.Sinh(k * width);
            var log = k == 0 ? Constant : LogLikelihood(sigma);
            if (double.IsFinite(log)) parts.Add((sigma, Log(sigma, log) + Math.Log((k == 0 ? 0.5 : 1) * unit * Math.Cosh(k * width) * Math.Sqrt(2 / Math.PI) / scale)));
        }

        for (var k = (long)Math.Ceiling(from / width); k * width <= to; k++) Add(k);
        for (var halving = 0; halving < 3; halving++)
        {
            var coarse = LogSum(parts);
            width /= 2;
            for (var k = (long)Math.Ceiling(from / width); k * width <= to; k++)
            {
                if (k % 2 != 0) Add(k);
            }

            if (Math.Abs(LogSum(parts) - Math.Log(2) - coarse) < 0.03) break;
        }

        parts.Sort((a, b) => a.Sigma.CompareTo(b.Sigma));
        var top = parts.Max(part => part.Log);
        var all = parts.Sum(part => Math.Exp(part.Log - top));
        parts.RemoveAll(part => Math.Exp(part.Log - top) < 1e-4 * all);
        var sum = parts.Sum(part => Math.Exp(part.Log - top));
        return ([.. parts.Select(part => (part.Sigma, Math.Exp(part.Log - top) / sum))], parts.Sum(part => part.Sigma * Math.Exp(part.Log - top)) / sum, top + Math.Log(all * width));
    }

    private static double LogSum(List<(double Sigma, double Log)> parts)
    {
        var top = parts.Max(part => part.Log);
        return top + Math.Log(parts.Sum(part => Math.Exp(part.Log - top)));
    }

    private double LogLikelihood(double sigma) => LevelGrid.Of(data, sigma, LevelGrid.Sparse)?.LogLikelihood ?? double.NegativeInfinity;

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

    /// <summary>The top of the polynomial through five points around, drawn together until it lies among them.</summary>
    private double Top(double near)
    {
        double At(double logSigma) => LogLikelihood(Math.Exp(Math.Min(logSigma, Math.Log(Most))));
        var (b, width) = (near, 0.3);
        var atB = At(b);
        for (var again = 0; again < 12; again++)
        {
            var (f, g, h, i) = (At(b - (2 * width)), At(b - width), At(b + width), At(b + (2 * width)));
            var first = (f - (8 * g) + (8 * h) - i) / 12;
            var second = (-f + (16 * g) - (30 * atB) + (16 * h) - i) / 12;
            var third = (-f + (2 * g) - (2 * h) + i) / 2;
            var fourth = f - (4 * g) + (6 * atB) - (4 * h) + i;
            var u = first > 0 ? 1.0 : -1.0;
            if (second < 0)
            {
                u = 0;
                for (var step = 0; step < 20; step++)
                {
                    var slope = first + (u * (second + (u * ((third / 2) + (u * fourth / 6)))));
                    var curve = second + (u * (third + (u * fourth / 2)));
                    if (!(curve < 0)) break;
                    u = Math.Clamp(u - (slope / curve), -2, 2);
                }
            }

            b += width * u;
            if (width < 0.05 && Math.Abs(u) < 1) break;
            if (Math.Abs(u) < 1) width = 0.02;
            atB = At(b);
        }

        return b;
    }
}
