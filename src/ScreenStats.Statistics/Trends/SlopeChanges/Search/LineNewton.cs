using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.SlopeChanges.Search;

/// <summary>The most likely coefficients of a line with its changes at given places, by Newton's steps.</summary>
internal sealed class LineNewton(LineData data)
{
    private const int MostSteps = 60;

    // A standard error of thirty thousand on a scale on which all periods span 2.
    private const double LeastInformation = 1e-9;
    private readonly double[] design = new double[data.Times.Length * 10];

    /// <summary>
    /// Fits constant, slope and differences of slope; with <paramref name="free"/> also a jump at each such change, which is the difference of slope times the
    /// move of its place (Muggeo's linearisation, exact while the move crosses no period).
    /// </summary>
    /// <param name="knots">The places.</param>
    /// <param name="free">The changes with a jump; empty for none.</param>
    /// <param name="beta">Where to start, then the coefficients.</param>
    /// <returns>The logarithm of the likelihood without binomial coefficients; minus infinity where it has no maximum.</returns>
    public double Fit(double[] knots, int[] free, ref double[] beta)
    {
        var terms = 2 + knots.Length + free.Length;
        Design(knots, free, terms);
        if (beta.Length != terms) beta = [.. beta.Take(terms), .. new double[Math.Max(0, terms - beta.Length)]];
        var (slope, information) = (new double[terms], new double[terms, terms]);
        var log = At(beta, terms, slope, information);
        if (!double.IsFinite(log))
        {
            beta = new double[terms];
            log = At(beta, terms, slope, information);
        }

        for (var step = 0; step < MostSteps; step++)
        {
            if (SymmetricMatrix.Factor(information, 1e-13, out _) is not { } factor) return double.NegativeInfinity;
            var change = SymmetricMatrix.Solve(factor, slope);
            double promise = 0;
            for (var j = 0; j < terms; j++) promise += change[j] * slope[j];
            if (promise < 1e-11)
            {
                // Events told apart without exception: what is left of the information lets a coefficient go anywhere. (Far from the events a rate may well be nearly 0.)
                for (var j = 0; j < terms; j++)
                {
                    if (factor[j, j] * factor[j, j] < LeastInformation) return double.NegativeInfinity;
                }

                for (var j = 0; j < terms; j++) beta[j] += change[j];
                return log + (promise / 2);
            }

            var size = 1.0;
            var next = new double[terms];
            double after;
            do
            {
                for (var j = 0; j < terms; j++) next[j] = beta[j] + (size * change[j]);
                after = At(next, terms, slope, information);
                size /= 2;
            }
            while (!(after >= log - (1e-13 * Math.Abs(log))) && size > 1e-10);
            (beta, log) = (next, after);
        }

        return double.NegativeInfinity;
    }

    /// <summary>The information on coefficients and moves at a fitted line; on a period the mean of both sides.</summary>
    public static double[,] Information(LineData data, LineState state)
    {
        var terms = 2 + (2 * state.Knots.Length);
        var information = new double[terms, terms];
        for (var i = 0; i < data.Times.Length; i++)
        {
            var gradient = new LineState(0, 1, state.Coefficients, state.Knots, state.Covariance, 1).Gradient(data.Times[i]);
            var logit = Logit(data.Times[i], state.Knots, state.Coefficients);
            var weight = data.Trials[i] * LogitScale.Fraction(logit) * LogitScale.Fraction(-logit);
            for (var j = 0; j < terms; j++)
            {
                for (var k = 0; k < terms; k++) information[j, k] += weight * gradient[j] * gradient[k];
            }
        }

        return information;
    }

    public static double Logit(double time, double[] knots, double[] beta)
    {
        var logit = beta[0] + (beta[1] * time);
        for (var k = 0; k < knots.Length; k++) logit += beta[2 + k] * Math.Max(0, time - knots[k]);
        return logit;
    }

    private void Design(double[] knots, int[] free, int terms)
    {
        for (var i = 0; i < data.Times.Length; i++)
        {
            var at = i * terms;
            var time = data.Times[i];
            (design[at], design[at + 1]) = (1, time);
            for (var k = 0; k < knots.Length; k++) design[at + 2 + k] = Math.Max(0, time - knots[k]);
            for (var f = 0; f < free.Length; f++) design[at + 2 + knots.Length + f] = time > knots[free[f]] ? -1 : 0;
        }
    }

    private double At(double[] beta, int terms, double[] slope, double[,] information)
    {
        Array.Clear(slope);
        Array.Clear(information);
        double log = 0;
        for (var i = 0; i < data.Times.Length; i++)
        {
            var row = design.AsSpan(i * terms, terms);
            double eta = 0;
            for (var j = 0; j < terms; j++) eta += row[j] * beta[j];
            var small = Math.Exp(-Math.Abs(eta));
            var (lesser, greater) = (small / (1 + small), 1 / (1 + small));
            var (p, q) = eta > 0 ? (greater, lesser) : (lesser, greater);
            var soft = Precise.LogOnePlus(small);
            double y = data.Events[i], n = data.Trials[i];
            log -= n * soft;
            log -= eta > 0 ? (n - y) * eta : -y * eta;
            var residual = (y * q) - ((n - y) * p);
            var weight = n * p * q;
            for (var j = 0; j < terms; j++)
            {
                slope[j] += row[j] * residual;
                var part = row[j] * weight;
                if (part == 0) continue;
                for (var k = 0; k <= j; k++) information[j, k] += part * row[k];
            }
        }

        return log;
    }
}
