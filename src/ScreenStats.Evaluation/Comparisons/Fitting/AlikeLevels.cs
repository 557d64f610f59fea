using ScreenStats.Evaluation.Comparisons.Strata;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Evaluation.Comparisons.Fitting;

/// <summary>Rates of levels that differ no more than chance makes them: most likely they are one, but that is not known for sure.</summary>
/// <remarks>
/// The likelihood of the standard deviation σ between levels is largest at 0, which would give every level the program's rate with the program's limits, as if it were known
/// that they do not differ. The logarithm of σ is added to it (a gamma distribution of shape 2 and a rate near 0), which puts σ about one standard error above 0. The terms are those of
/// the plain model; each level's effect is integrated by Laplace's approximation. Source: Chung Y, Rabe-Hesketh S, Dorie V, Gelman A, Liu J, Psychometrika 2013;78:685-709 (from memory).
/// </remarks>
internal sealed class AlikeLevels
{
    private readonly (double Events, double Trials, double Eta)[][] levels;

    /// <summary>Prepares the levels.</summary>
    /// <param name="strata">What is compared.</param>
    /// <param name="eta">The logit of the plain model's rate in each stratum.</param>
    /// <param name="designEffect">What counts are divided by.</param>
    public AlikeLevels(ComparedStrata strata, IReadOnlyList<double> eta, double designEffect) =>
        levels = [.. strata.Levels.Select(level => level.Strata.Select(at => (at.Events / designEffect, at.Trials / designEffect, eta[at.Stratum])).ToArray())];

    /// <summary>The standard deviation between levels, and mean and standard deviation of each level's effect.</summary>
    public (double Deviation, (double Mean, double Deviation)[] Effects) Fit()
    {
        // A lattice, then the golden section around its best: one maximum is known to lie between.
        const int Steps = 40;
        double Height(double logSigma) => logSigma + levels.Sum(level => LogMarginal(level, Math.Exp(logSigma)));
        var (low, high) = (Math.Log(0.001), Math.Log(3.0));
        var best = Enumerable.Range(0, Steps + 1).Select(step => low + ((high - low) * step / Steps)).MaxBy(Height);
        var (from, to) = (Math.Max(low, best - ((high - low) / Steps)), Math.Min(high, best + ((high - low) / Steps)));
        for (var round = 0; round < 30; round++)
        {
            var (a, b) = (to - ((to - from) * 0.6180339887498949), from + ((to - from) * 0.6180339887498949));
            if (Height(a) >= Height(b)) to = b;
            else from = a;
        }

        var sigma = Math.Exp((from + to) / 2);
        return (sigma, [.. levels.Select(level =>
        {
            var (mode, curvature) = Mode(level, sigma);
            return (mode, 1 / Math.Sqrt(curvature));
        })]);
    }

    /// <summary>The rate of a level at the program's mix, with limits on its logit that include how well the program's own rate is known.</summary>
    public static EstimateFinding Rate(ComparedStrata strata, IReadOnlyList<double> eta, (double Mean, double Deviation) effect, double designEffect, double confidence)
    {
        double rate = 0;
        for (var s = 0; s < eta.Count; s++) rate += (double)strata.Strata[s].Trials / strata.Trials / (1 + Math.Exp(-eta[s] - effect.Mean));
        var program = designEffect * ((1.0 / strata.Events) + (1.0 / (strata.Trials - strata.Events)));
        var half = Quantile.Normal(confidence) * Math.Sqrt((effect.Deviation * effect.Deviation) + program);
        var logit = Math.Log(rate / (1 - rate));
        return new EstimateFinding(rate, null, 1 / (1 + Math.Exp(half - logit)), 1 / (1 + Math.Exp(-half - logit)), MethodNames.AlikeRates, confidence);
    }

    private static double LogMarginal((double Events, double Trials, double Eta)[] level, double sigma)
    {
        var (mode, curvature) = Mode(level, sigma);
        return Log(level, mode) - (mode * mode / (2 * sigma * sigma)) - Math.Log(sigma) - (0.5 * Math.Log(curvature));
    }

    private static double Log((double Events, double Trials, double Eta)[] level, double effect)
    {
        double log = 0;
        foreach (var (events, trials, eta) in level)
        {
            var at = eta + effect;
            log += (events * at) - (trials * (at > 0 ? at + Math.Log(1 + Math.Exp(-at)) : Math.Log(1 + Math.Exp(at))));
        }

        return log;
    }

    /// <summary>The mode of the effect, and the curvature there: the function is concave, so that Newton's steps, never longer than 1, find it.</summary>
    private static (double Mode, double Curvature) Mode((double Events, double Trials, double Eta)[] level, double sigma)
    {
        var u = 0.0;
        for (var step = 0; ; step++)
        {
            var (slope, curvature) = (-u / (sigma * sigma), 1 / (sigma * sigma));
            foreach (var (events, trials, eta) in level)
            {
                var p = 1 / (1 + Math.Exp(-eta - u));
                slope += events - (trials * p);
                curvature += trials * p * (1 - p);
            }

            var change = Math.Clamp(slope / curvature, -1, 1);
            if (step == 50 || Math.Abs(change) < 1e-12) return (u, curvature);
            u += change;
        }
    }
}
