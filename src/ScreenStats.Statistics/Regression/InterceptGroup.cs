using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Regression;

/// <summary>One group's part of the marginal likelihood: the integral over its effect, and its slopes.</summary>
internal sealed class InterceptGroup(BinomialRow[] rows)
{
    private readonly double[][] x = Array.ConvertAll(rows, row => LogisticRegression.Design(row, constant: true));
    private readonly double[] linear = new double[rows.Length];
    private double start;

    /// <summary>The mode of the standardised effect, and 1 + σ² Σ n p q there.</summary>
    public (double Mode, double Curvature) Mode(double[] theta)
    {
        var sigma = Math.Exp(theta[^1]);
        for (var i = 0; i < rows.Length; i++)
        {
            linear[i] = 0;
            for (var j = 0; j < x[i].Length; j++) linear[i] += x[i][j] * theta[j];
        }

        var u = start;
        var (value, slope, curvature) = At(u, sigma);
        for (var step = 0; step < 100; step++)
        {
            var change = slope / curvature;
            if (Math.Abs(change) < 1e-13 * (1 + Math.Abs(u))) break;
            var size = 1.0;
            var next = At(u + change, sigma);
            while (!(next.Value >= value - (1e-14 * Math.Abs(value))) && size > 1e-8)
            {
                size /= 2;
                next = At(u + (size * change), sigma);
            }

            u += size * change;
            (value, slope, curvature) = next;
        }

        start = u;
        return (u, curvature);
    }

    /// <summary>The logarithm of the group's likelihood without binomial coefficients; its slopes are added.</summary>
    public double LogLikelihood(double[] theta, HermiteRule rule, double[]? slopes)
    {
        var sigma = Math.Exp(theta[^1]);
        var (mode, curvature) = Mode(theta);
        if (rule.Nodes.Length == 1)
        {
            if (slopes is not null) AddLaplace(slopes, mode, curvature, sigma);
            return At(mode, sigma).Value - (0.5 * Math.Log(curvature));
        }

        var (points, weights, log) = Posterior(mode, curvature, sigma, rule);
        if (slopes is not null)
        {
            for (var k = 0; k < points.Length; k++)
            {
                for (var i = 0; i < rows.Length; i++)
                {
                    var residual = weights[k] * Residual(i, linear[i] + (sigma * points[k]));
                    for (var j = 0; j < x[i].Length; j++) slopes[j] += residual * x[i][j];
                    slopes[^1] += residual * sigma * points[k];
                }
            }
        }

        return log;
    }

    /// <summary>Mean and variance of the standardised effect given the counts.</summary>
    public (double Mean, double Variance) Moments(double[] theta, HermiteRule rule)
    {
        var (mode, curvature) = Mode(theta);
        if (rule.Nodes.Length == 1) return (mode, 1 / curvature);
        var (points, weights, _) = Posterior(mode, curvature, Math.Exp(theta[^1]), rule);
        double mean = 0, square = 0;
        for (var k = 0; k < points.Length; k++) mean += weights[k] * points[k];
        for (var k = 0; k < points.Length; k++) square += weights[k] * (points[k] - mean) * (points[k] - mean);
        return (mean, square);
    }

    /// <summary>How the mode of the effect itself, σ u, moves with the coefficients and with ln σ.</summary>
    public double[] ModeSlopes(double[] theta)
    {
        var sigma = Math.Exp(theta[^1]);
        var (mode, curvature) = Mode(theta);
        var slopes = new double[theta.Length];
        double residuals = 0, weights = 0;
        for (var i = 0; i < rows.Length; i++)
        {
            var eta = linear[i] + (sigma * mode);
            var weight = Weight(i, eta);
            residuals += Residual(i, eta);
            weights += weight;
            for (var j = 0; j < x[i].Length; j++) slopes[j] -= sigma * sigma * weight * x[i][j] / curvature;
        }

        slopes[^1] = sigma * (mode + (sigma * (residuals - (sigma * mode * weights)) / curvature));
        return slopes;
    }

    private (double[] Points, double[] Weights, double Log) Posterior(double mode, double curvature, double sigma, HermiteRule rule)
    {
        var scale = Math.Sqrt(2 / curvature);
        var count = rule.Nodes.Length;
        var (points, logs) = (new double[count], new double[count]);
        var highest = double.NegativeInfinity;
        for (var k = 0; k < count; k++)
        {
            points[k] = mode + (scale * rule.Nodes[k]);
            logs[k] = At(points[k], sigma).Value + Math.Log(rule.Weights[k]);
            highest = Math.Max(highest, logs[k]);
        }

        double sum = 0;
        var weights = Array.ConvertAll(logs, log => Math.Exp(log - highest));
        foreach (var weight in weights) sum += weight;
        for (var k = 0; k < count; k++) weights[k] /= sum;
        return (points, weights, highest + Math.Log(sum / Math.Sqrt(Math.PI)) - (0.5 * Math.Log(curvature)));
    }

    private (double Value, double Slope, double Curvature) At(double u, double sigma)
    {
        double value = -0.5 * u * u, slope = -u, curvature = 1;
        for (var i = 0; i < rows.Length; i++)
        {
            var eta = linear[i] + (sigma * u);
            var (p, q) = (LogitScale.Fraction(eta), LogitScale.Fraction(-eta));
            double events = rows[i].Events, others = rows[i].Trials - rows[i].Events;
            value -= (events * LogisticRegression.SoftPlus(-eta)) + (others * LogisticRegression.SoftPlus(eta));
            slope += sigma * ((events * q) - (others * p));
            curvature += sigma * sigma * rows[i].Trials * p * q;
        }

        return (value, slope, curvature);
    }

    private void AddLaplace(double[] slopes, double mode, double curvature, double sigma)
    {
        var terms = slopes.Length - 1;
        double residuals = 0, weights = 0, thirds = 0;
        var (weighted, third) = (new double[terms], new double[terms]);
        for (var i = 0; i < rows.Length; i++)
        {
            var eta = linear[i] + (sigma * mode);
            var weight = Weight(i, eta);
            var (residual, change) = (Residual(i, eta), weight * (LogitScale.Fraction(-eta) - LogitScale.Fraction(eta)));
            residuals += residual;
            weights += weight;
            thirds += change;
            for (var j = 0; j < terms; j++)
            {
                slopes[j] += residual * x[i][j];
                weighted[j] += weight * x[i][j];
                third[j] += change * x[i][j];
            }
        }

        for (var j = 0; j < terms; j++)
        {
            var ofMode = -sigma * weighted[j] / curvature;
            slopes[j] -= 0.5 * sigma * sigma * (third[j] + (sigma * ofMode * thirds)) / curvature;
        }

        var modeBySigma = (residuals - (sigma * mode * weights)) / curvature;
        slopes[^1] += sigma * ((mode * residuals) - (0.5 * ((2 * sigma * weights) + (sigma * sigma * thirds * (mode + (sigma * modeBySigma)))) / curvature));
    }

    private double Residual(int i, double eta) => (rows[i].Events * LogitScale.Fraction(-eta)) - ((rows[i].Trials - rows[i].Events) * LogitScale.Fraction(eta));

    private double Weight(int i, double eta) => rows[i].Trials * LogitScale.Fraction(eta) * LogitScale.Fraction(-eta);
}
