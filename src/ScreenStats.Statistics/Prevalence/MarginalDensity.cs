using MathNet.Numerics.Integration;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Prevalence;

/// <summary>
/// A density of one share, known by its logarithm up to a constant at each logit. The logarithm is taken at equal steps after a change of
/// variable and interpolated; the density is then put into polynomials on panels: Legendre series through the Gauss points, panels split
/// until their last terms are negligible. Its integral is a polynomial too, so quantiles need no new values.
/// </summary>
internal sealed class MarginalDensity
{
    private const int Order = 10;
    private const double Negligible = -38;
    private const double Farthest = 20;
    private const int Deepest = 12;

    // Where the interpolation changes to other points it has steps of its own, which no splitting settles.
    private const int DeepestForeseen = 4;
    private static readonly GaussLegendreRule Rule = new(-1, 1, Order);

    private readonly List<Panel> panels = [];
    private readonly double centre;
    private readonly double scale;
    private readonly double total;

    public MarginalDensity(Func<double, double> logDensity, double near)
    {
        centre = near;
        scale = 1;
        LineIntegral.Climb(logDensity, ref centre, ref scale);
        var (start, logs, step, foreseen) = Sample(logDensity);
        var highest = logs.Max();
        double At(double t) => Math.Exp(Interpolate(logs, (t - start) / step) - highest) * scale * Math.Cosh(t);
        double Anew(double t) => Math.Exp(logDensity(centre + (scale * Math.Sinh(t))) - highest) * scale * Math.Cosh(t);

        const int Stride = 4;
        var peak = Enumerable.Range(0, logs.Count).Max(k => Math.Exp(logs[k] - highest) * scale * Math.Cosh(start + (k * step)));
        for (var from = 0; from < logs.Count - 1; from += Stride)
            Split(foreseen ? At : Anew, start + (from * step), start + (Math.Min(from + Stride, logs.Count - 1) * step), (foreseen ? 1e-9 : 1e-6) * peak, foreseen ? DeepestForeseen : Deepest);
        foreach (var panel in panels)
        {
            panel.Before = total;
            total += panel.Mass;
        }
    }

    public PosteriorSummary Summary(double confidence)
    {
        var tail = (1 - confidence) / 2;
        var mean = Moment(share => share);
        var deviation = Math.Sqrt(Math.Max(0, Moment(share => (share - mean) * (share - mean))));
        return new PosteriorSummary(
            mean, deviation, Share(Quantile(0.5)), new Interval(Share(Quantile(tail)), Share(Quantile(1 - tail))), Shortest(confidence), confidence);
    }

    private double Moment(Func<double, double> value)
    {
        double sum = 0;
        foreach (var panel in panels)
        {
            for (var index = 0; index < Order; index++)
                sum += panel.Half * Rule.Weights[index] * panel.Values[index] * value(Share(panel.Middle + (panel.Half * Rule.Abscissas[index])));
        }

        return sum / total;
    }

    private double Share(double t) => LogitScale.Fraction(centre + (scale * Math.Sinh(t)));

    /// <summary>The density over the share itself at a parameter.</summary>
    private double DensityOfShare(double t, Panel panel)
    {
        var logit = centre + (scale * Math.Sinh(t));
        return panel.Density((t - panel.Middle) / panel.Half) / (scale * Math.Cosh(t) * LogitScale.Fraction(logit) * LogitScale.Fraction(-logit));
    }

    private double Quantile(double probability) => Find(probability).Parameter;

    private (double Parameter, Panel Panel) Find(double probability)
    {
        var target = probability * total;
        var panel = panels[0];
        foreach (var candidate in panels)
        {
            if (candidate.Before > target) break;
            panel = candidate;
        }

        double low = -1, high = 1;
        for (var step = 0; step < 60 && high - low > 1e-15; step++)
        {
            var middle = (low + high) / 2;
            if (panel.Before + panel.MassBelow(middle) < target) low = middle;
            else high = middle;
        }

        return (panel.Middle + (panel.Half * ((low + high) / 2)), panel);
    }

    /// <summary>The shortest interval has the same density at both ends, or lies against an end of the scale.</summary>
    private Interval Shortest(double confidence)
    {
        const double Edge = 1e-9;
        var left = 1 - confidence;
        double Difference(double below)
        {
            var (lower, lowerPanel) = Find(below);
            var (upper, upperPanel) = Find(below + confidence);
            return DensityOfShare(lower, lowerPanel) - DensityOfShare(upper, upperPanel);
        }

        if (Difference(Edge * left) >= 0) return new Interval(0, Share(Quantile(confidence)));
        if (Difference((1 - Edge) * left) <= 0) return new Interval(Share(Quantile(left)), 1);
        double low = Edge * left, high = (1 - Edge) * left;
        for (var step = 0; step < 60; step++)
        {
            var middle = (low + high) / 2;
            if (Difference(middle) < 0) low = middle;
            else high = middle;
        }

        return new Interval(Share(Quantile((low + high) / 2)), Share(Quantile(((low + high) / 2) + confidence)));
    }

    /// <summary>
    /// The logarithm at equal steps, as far as it is not negligible: each costs a double integral. The step is halved until the values between
    /// were foreseen by the interpolation to 1 in 100,000 of the highest density; a halving then takes the error down about a thousandfold.
    /// Where an edge is too sharp to be foreseen, the panels take the density anew.
    /// </summary>
    private (double Start, List<double> Logs, double Step, bool Foreseen) Sample(Func<double, double> logDensity)
    {
        const double FirstStep = 0.25;
        double At(double t) => logDensity(centre + (scale * Math.Sinh(t)));
        var highest = At(0);
        List<double> left = [], logs = [highest];
        foreach (var (sign, side) in new[] { (-1, left), (1, logs) })
        {
            for (var k = 1; k * FirstStep <= Farthest; k++)
            {
                var value = At(sign * k * FirstStep);
                if (double.IsNegativeInfinity(value)) break;
                side.Add(value);
                highest = Math.Max(highest, value);
                if (value < highest + Negligible) break;
            }
        }

        left.Reverse();
        logs = [.. left, .. logs];
        var start = -left.Count * FirstStep;
        var step = FirstStep;
        for (var halving = 0; halving < 3; halving++)
        {
            var finer = new List<double>((2 * logs.Count) - 1) { logs[0] };
            double worst = 0;
            for (var k = 1; k < logs.Count; k++)
            {
                var value = At(start + ((k - 0.5) * step));
                highest = Math.Max(highest, value);
                worst = Math.Max(worst, Math.Abs(Math.Exp(Interpolate(logs, k - 0.5) - highest) - Math.Exp(value - highest)));
                finer.Add(value);
                finer.Add(logs[k]);
            }

            logs = finer;
            step /= 2;
            if (worst < 1e-5) return (start, logs, step, true);
        }

        return (start, logs, step, false);
    }

    /// <summary>The polynomial through the ten points nearest to a place among them; the logarithm is far smoother than the density.</summary>
    private static double Interpolate(List<double> logs, double at)
    {
        var used = Math.Min(Order, logs.Count);
        var from = Math.Clamp((int)Math.Floor(at) - (used / 2) + 1, 0, logs.Count - used);
        var place = at - from;
        double above = 0, below = 0;
        double weight = 1;
        for (var k = 0; k < used; k++)
        {
            var distance = place - k;
            if (distance == 0) return logs[from + k];
            var part = weight / distance;
            above += part * logs[from + k];
            below += part;

            // The next binomial coefficient, with the other sign.
            weight *= -(used - 1.0 - k) / (k + 1.0);
        }

        return above / below;
    }

    private void Split(Func<double, double> density, double from, double to, double tolerance, int deepest)
    {
        var panel = new Panel(density, from, to);
        if (panel.Unsettled < tolerance || deepest == 0)
        {
            panels.Add(panel);
            return;
        }

        var middle = (from + to) / 2;
        Split(density, from, middle, tolerance, deepest - 1);
        Split(density, middle, to, tolerance, deepest - 1);
    }

    private sealed class Panel
    {
        private readonly double[] terms = new double[Order];

        public Panel(Func<double, double> density, double from, double to)
        {
            Middle = (from + to) / 2;
            Half = (to - from) / 2;
            for (var index = 0; index < Order; index++)
            {
                var at = Rule.Abscissas[index];
                var value = density(Middle + (Half * at));
                Values[index] = value;
                double before = 1, here = at;
                terms[0] += 0.5 * Rule.Weights[index] * value;
                for (var k = 1; k < Order; k++)
                {
                    terms[k] += (k + 0.5) * Rule.Weights[index] * value * here;
                    (before, here) = (here, ((((2 * k) + 1) * at * here) - (k * before)) / (k + 1));
                }
            }
        }

        public double Middle { get; }

        public double Half { get; }

        public double[] Values { get; } = new double[Order];

        public double Before { get; set; }

        public double Mass => 2 * Half * terms[0];

        public double Unsettled => Math.Abs(terms[Order - 1]) + Math.Abs(terms[Order - 2]);

        public double Density(double at) => Series(at, integral: false);

        public double MassBelow(double at) => Half * Series(at, integral: true);

        private double Series(double at, bool integral)
        {
            double before = 1, here = at;
            var sum = terms[0] * (integral ? at + 1 : 1);
            for (var k = 1; k < Order; k++)
            {
                var next = ((((2 * k) + 1) * at * here) - (k * before)) / (k + 1);
                sum += terms[k] * (integral ? (next - before) / ((2 * k) + 1) : here);
                (before, here) = (here, next);
            }

            return sum;
        }
    }
}
