using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Regression.Intercepts;

/// <summary>One group's part of the marginal likelihood: the integral over its effect, its slopes and its information.</summary>
/// <param name="kinds">The combinations of terms of its rows, by their place in the model.</param>
/// <param name="events">Events of each.</param>
/// <param name="trials">Trials of each.</param>
internal sealed class InterceptGroup(int[] kinds, double[] events, double[] trials)
{
    private double start;

    /// <summary>The mode of the standardised effect, and 1 + σ² Σ n p q there.</summary>
    /// <param name="eta">The part of the terms in the logit, for each combination of the model.</param>
    /// <param name="sigma">The standard deviation between groups.</param>
    public (double Mode, double Curvature) Mode(double[] eta, double sigma)
    {
        var u = start;
        var (value, slope, curvature) = At(eta, u, sigma);
        for (var step = 0; step < 100; step++)
        {
            var change = slope / curvature;
            if (Math.Abs(change) < 1e-13 * (1 + Math.Abs(u))) break;
            var size = 1.0;
            var next = At(eta, u + change, sigma);
            while (!(next.Value >= value - (1e-14 * Math.Abs(value))) && size > 1e-8)
            {
                size /= 2;
                next = At(eta, u + (size * change), sigma);
            }

            u += size * change;
            (value, slope, curvature) = next;
        }

        start = u;
        return (u, curvature);
    }

    /// <summary>Adds the logarithm of the group's likelihood without binomial coefficients, its slopes and its information.</summary>
    public void Add(InterceptSums sums, double[] eta, double sigma, HermiteRule rule)
    {
        var (mode, curvature) = Mode(eta, sigma);
        if (rule.Nodes.Length == 1) AddLaplace(sums, eta, sigma, mode, curvature);
        else AddQuadrature(sums, eta, sigma, Posterior(eta, mode, curvature, sigma, rule));
    }

    /// <summary>Mean and variance of the standardised effect given the counts.</summary>
    public (double Mean, double Variance) Moments(double[] eta, double sigma, HermiteRule rule)
    {
        var (mode, curvature) = Mode(eta, sigma);
        if (rule.Nodes.Length == 1) return (mode, 1 / curvature);
        return Moments(Posterior(eta, mode, curvature, sigma, rule));
    }

    private static (double Mean, double Variance) Moments((double[] Points, double[] Weights, double Log) posterior)
    {
        var (points, weights, _) = posterior;
        double mean = 0, square = 0;
        for (var k = 0; k < points.Length; k++) mean += weights[k] * points[k];
        for (var k = 0; k < points.Length; k++) square += weights[k] * (points[k] - mean) * (points[k] - mean);
        return (mean, square);
    }

    /// <summary>How the mode of the effect itself, σ u, moves with the coefficients and with ln σ.</summary>
    public double[] ModeSlopes(InterceptModel model, double[] eta, double sigma)
    {
        var (mode, curvature) = Mode(eta, sigma);
        var slopes = new double[model.Terms + 1];
        double residuals = 0, weights = 0;
        for (var i = 0; i < kinds.Length; i++)
        {
            var (residual, weight, _, _) = Slopes(i, eta[kinds[i]] + (sigma * mode));
            residuals += residual;
            weights += weight;
            foreach (var j in model.Filled[kinds[i]]) slopes[j] -= sigma * sigma * weight * model.X[kinds[i]][j] / curvature;
        }

        slopes[^1] = sigma * (mode + (sigma * (residuals - (sigma * mode * weights)) / curvature));
        return slopes;
    }

    /// <summary>
    /// Nodes around the mode; where mean and variance turn out to lie elsewhere, as of a group without events among very unlike ones, anew around these.
    /// </summary>
    private (double[] Points, double[] Weights, double Log) Posterior(double[] eta, double mode, double curvature, double sigma, HermiteRule rule)
    {
        var (centre, width) = (mode, 1 / Math.Sqrt(curvature));
        for (var again = 0; ; again++)
        {
            var posterior = Nodes(eta, centre, width, sigma, rule);
            var (mean, variance) = Moments(posterior);
            var moved = Math.Abs(mean - centre) > 0.5 * width || variance > 1.6 * width * width || variance < 0.6 * width * width;
            if (!moved || again == 4 || !(variance > 0)) return posterior;
            (centre, width) = (mean, Math.Sqrt(variance));
        }
    }

    private (double[] Points, double[] Weights, double Log) Nodes(double[] eta, double centre, double width, double sigma, HermiteRule rule)
    {
        var count = rule.Nodes.Length;
        var (points, weights) = (new double[count], new double[count]);
        var highest = double.NegativeInfinity;
        for (var k = 0; k < count; k++)
        {
            points[k] = centre + (Math.Sqrt(2) * width * rule.Nodes[k]);
            weights[k] = Value(eta, points[k], sigma) + rule.LogWeights[k];
            highest = Math.Max(highest, weights[k]);
        }

        double sum = 0;
        for (var k = 0; k < count; k++) sum += weights[k] = Math.Exp(weights[k] - highest);
        for (var k = 0; k < count; k++) weights[k] /= sum;
        return (points, weights, highest + Math.Log(sum * width / Math.Sqrt(Math.PI)));
    }

    /// <summary>Louis's identity: the slopes are the mean of those given the effect, the information that given the effect less their covariance.</summary>
    private void AddQuadrature(InterceptSums sums, double[] eta, double sigma, (double[] Points, double[] Weights, double Log) posterior)
    {
        var (points, weights, log) = posterior;
        var model = sums.Model;
        sums.Log += log;
        var terms = model.Terms;
        var mean = new double[terms + 1];
        var (residuals, curves, leaning) = (new double[kinds.Length], new double[kinds.Length], new double[kinds.Length]);
        var scores = new double[points.Length][];
        double both = 0;
        for (var k = 0; k < points.Length; k++)
        {
            var score = scores[k] = new double[terms + 1];
            var effect = sigma * points[k];
            for (var i = 0; i < kinds.Length; i++)
            {
                var (residual, weight, _, _) = Slopes(i, eta[kinds[i]] + effect);
                score[terms] += effect * residual;
                both += weights[k] * effect * ((effect * weight) - residual);
                residuals[i] = residual;
                curves[i] += weights[k] * weight;
                leaning[i] += weights[k] * effect * weight;
            }

            for (var i = 0; i < kinds.Length; i++)
            {
                var x = model.X[kinds[i]];
                foreach (var j in model.Filled[kinds[i]]) score[j] += residuals[i] * x[j];
            }

            for (var j = 0; j <= terms; j++) mean[j] += weights[k] * score[j];
        }

        for (var j = 0; j <= terms; j++) sums.Slopes[j] += mean[j];
        var information = sums.Information;
        for (var i = 0; i < kinds.Length; i++) sums.AddRow(kinds[i], curves[i], leaning[i]);
        information[terms][terms] += both;
        for (var k = 0; k < points.Length; k++)
        {
            // Nodes without weight say nothing.
            if (weights[k] < 1e-18) continue;
            var score = scores[k];
            for (var j = 0; j <= terms; j++) score[j] -= mean[j];
            sums.AddProduct(-weights[k], score);
        }
    }

    private double Value(double[] eta, double u, double sigma)
    {
        var value = -0.5 * u * u;
        for (var i = 0; i < kinds.Length; i++)
        {
            var at = eta[kinds[i]] + (sigma * u);
            value -= (trials[i] * LogisticRegression.SoftPlus(-Math.Abs(at))) + (at > 0 ? (trials[i] - events[i]) * at : -events[i] * at);
        }

        return value;
    }

    private (double Value, double Slope, double Curvature) At(double[] eta, double u, double sigma)
    {
        double value = -0.5 * u * u, slope = -u, curvature = 1;
        for (var i = 0; i < kinds.Length; i++)
        {
            var at = eta[kinds[i]] + (sigma * u);
            var small = Math.Exp(-Math.Abs(at));
            value -= (trials[i] * Precise.LogOnePlus(small)) + (at > 0 ? (trials[i] - events[i]) * at : -events[i] * at);
            var (q, p) = at > 0 ? (small / (1 + small), 1 / (1 + small)) : (1 / (1 + small), small / (1 + small));
            slope += sigma * ((events[i] * q) - ((trials[i] - events[i]) * p));
            curvature += sigma * sigma * trials[i] * p * q;
        }

        return (value, slope, curvature);
    }

    /// <summary>The first derivative of a row's logarithm over its logit, and less the second, third and fourth.</summary>
    private (double Residual, double Weight, double Third, double Fourth) Slopes(int i, double at)
    {
        var small = Math.Exp(-Math.Abs(at));
        var (q, p) = at > 0 ? (small / (1 + small), 1 / (1 + small)) : (1 / (1 + small), small / (1 + small));
        var weight = trials[i] * p * q;
        return ((events[i] * q) - ((trials[i] - events[i]) * p), weight, weight * (q - p), weight * (1 - (6 * p * q)));
    }

    /// <summary>
    /// The integrand's height at its mode less half the logarithm of its curvature, with first and second derivatives; the mode moves with the parameters.
    /// Below, h is the logarithm of the integrand, C = -h_uu its curvature, s = ln σ; a letter for each derivative.
    /// </summary>
    private void AddLaplace(InterceptSums sums, double[] eta, double sigma, double u, double c)
    {
        var model = sums.Model;
        var terms = model.Terms;
        double r = 0, w = 0, t = 0, v = 0;
        var (first, second, third, fourth) = (new double[terms + 1], new double[terms + 1], new double[terms + 1], new double[terms + 1]);
        var all = new (double Residual, double Weight, double Third, double Fourth)[kinds.Length];
        for (var i = 0; i < kinds.Length; i++)
        {
            var row = all[i] = Slopes(i, eta[kinds[i]] + (sigma * u));
            (r, w, t, v) = (r + row.Residual, w + row.Weight, t + row.Third, v + row.Fourth);
            var x = model.X[kinds[i]];
            foreach (var j in model.Filled[kinds[i]])
            {
                first[j] += row.Residual * x[j];
                second[j] += row.Weight * x[j];
                third[j] += row.Third * x[j];
                fourth[j] += row.Fourth * x[j];
            }
        }

        var (s2, s3, s4, su) = (sigma * sigma, sigma * sigma * sigma, sigma * sigma * sigma * sigma, sigma * u);
        var (huuu, huuuu) = (-s3 * t, -s4 * v);

        // One entry for each coefficient and, last, ln σ: h_a, h_ua, h_uua, h_uuua; u_a = h_ua / C.
        double[] ha = first, hua = new double[terms + 1], huua = new double[terms + 1], huuua = new double[terms + 1], ua = new double[terms + 1], ca = new double[terms + 1];
        for (var j = 0; j < terms; j++) (hua[j], huua[j], huuua[j]) = (-sigma * second[j], -s2 * third[j], -s3 * fourth[j]);
        ha[terms] = su * r;
        hua[terms] = sigma * (r - (su * w));
        huua[terms] = (-2 * s2 * w) - (s3 * u * t);
        huuua[terms] = (-3 * s3 * t) - (s4 * u * v);
        for (var j = 0; j <= terms; j++)
        {
            ua[j] = hua[j] / c;
            ca[j] = -huua[j] - (huuu * ua[j]);
            sums.Slopes[j] += ha[j] - (0.5 * ca[j] / c);
        }

        sums.Log += Value(eta, u, sigma) - (0.5 * Math.Log(c));

        // Second derivatives of h, row by row: the parts with x xᵀ of h_ab, h_uab and h_uuab come together.
        var bend = -huuu / c;
        for (var i = 0; i < kinds.Length; i++)
        {
            var (residual, weight, cubic, quartic) = all[i];
            var direct = weight + (0.5 * (s2 * quartic) / c) - (0.5 * bend * sigma * cubic / c);
            var hbs = su * weight;
            var hubs = (-sigma * weight) - (sigma * su * cubic);
            var huubs = (-2 * s2 * cubic) - (s3 * u * quartic);
            sums.AddRow(kinds[i], direct, hbs - (0.5 * huubs / c) + (0.5 * bend * hubs / c));
        }

        var hss = (su * r) - (su * su * w);
        var huss = (sigma * r) - (3 * s2 * u * w) - (s3 * u * u * t);
        var huuss = (-4 * s2 * w) - (5 * s3 * u * t) - (s4 * u * u * v);
        sums.Information[terms][terms] -= hss + (0.5 * huuss / c) - (0.5 * bend * huss / c);

        // What is left are products of vectors: h_ua u_b, and the rest of the derivative of C along the mode.
        for (var j = 0; j <= terms; j++)
        {
            var information = sums.Information[j];
            for (var k = 0; k <= j; k++)
            {
                var mixed = (-huuua[j] * ua[k]) - (huuua[k] * ua[j]) - (huuuu * ua[j] * ua[k]) + (bend * ((huua[j] * ua[k]) + (huua[k] * ua[j]) + (huuu * ua[j] * ua[k])));
                information[k] -= (hua[j] * ua[k]) - (0.5 * ((mixed / c) - (ca[j] * ca[k] / (c * c))));
            }
        }
    }
}
