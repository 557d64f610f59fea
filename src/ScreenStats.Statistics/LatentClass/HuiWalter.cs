using System.Collections.Immutable;
using MathNet.Numerics;

namespace ScreenStats.Statistics.LatentClass;

/// <summary>Two tests without any reference, read on the same people of two or more populations with different prevalence.</summary>
/// <remarks>
/// It assumes that both tests have the same sensitivity and specificity in every population, that the two err independently of each other
/// within infected and within uninfected people, and that the prevalences differ. Two antigen tests that miss the same low amounts of virus break
/// the second assumption, and the figures then are too good. Source: Hui SL, Walter SD, Biometrics 1980;36:167-171.
/// </remarks>
public static class HuiWalter
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "hui-walter";

    /// <summary>Estimates prevalences, sensitivities and specificities by maximum likelihood.</summary>
    /// <param name="populations">The counts of two or more populations.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>
    /// The figures with standard errors; undefined where a population is empty, where the populations do not differ, where no solution has both tests better
    /// than chance, or where the search does not settle.
    /// </returns>
    /// <exception cref="ArgumentNullException">No populations.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two populations, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// <para>Every solution has a mirror of the same likelihood (infected and uninfected exchanged); the one with sensitivity + specificity above 1 for
    /// both tests is given, the other refused. Two populations: six figures for six free counts. With u, v the shares positive by either test, c the
    /// covariance of the two within a population and Δ the difference between the populations: r = c/(Δu Δv), q = 1 + r2 - r1,
    /// D = 1/sqrt(4 r1 + q²) with the sign of Δu, prevalence 1 = (1 - D q)/2, prevalence 2 = that + D, Se - (1 - Sp) = Δu/D and Δv/D.
    /// Where that leaves [0, 1], or with more populations: the EM algorithm from several starts, then Fisher scoring.</para>
    /// <para>Standard errors from the expected information at the solution; none where a figure lies at 0 or 1. Six figures on six free counts
    /// fit exactly, so that no test of fit is possible; with K populations there are 2K - 4 degrees of freedom.</para>
    /// </remarks>
    public static TwoTestFit Fit(IEnumerable<TwoTestCounts> populations, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(populations);
        Guard.Confidence(confidence);
        ImmutableArray<TwoTestCounts> all = [.. populations];
        if (all.Length < 2) throw new ArgumentOutOfRangeException(nameof(populations), all.Length, "Two tests without a reference need at least two populations.");
        if (all.Any(one => one.Total == 0)) return new TwoTestFit(all, confidence, UndefinedReason.NoTrials);
        var likelihood = new TwoTestLikelihood(all);
        if (likelihood.PopulationsAlike) return new TwoTestFit(all, confidence, UndefinedReason.PopulationsAlike);
        if (LatentSearch.Solve(likelihood, out var reason) is not { } found) return new TwoTestFit(all, confidence, reason);

        var solution = AtTheBoundary(likelihood, found);
        var onBoundary = solution.Any(value => value is <= 0 or >= 1);
        var covariance = onBoundary ? null : likelihood.Covariance(solution);
        UndefinedReason? noErrors = onBoundary ? UndefinedReason.BoundarySolution : covariance is null ? UndefinedReason.PopulationsAlike : null;
        var figures = solution.Select((value, i) => new LatentFigure(value, covariance?[i, i], confidence, noErrors)).ToImmutableArray();
        var size = solution.Length;
        return new TwoTestFit(
            all, confidence, figures,
            covariance is null ? [] : [.. Enumerable.Range(0, size * size).Select(k => covariance[k / size, k % size])],
            likelihood.Log(solution), onBoundary, FitOf(likelihood, solution));
    }

    // The search comes ever nearer to a solution at 0 or 1 without reaching it. It is there where going all the way costs no likelihood;
    // a rate that is only small has counts that speak against 0.
    private static double[] AtTheBoundary(TwoTestLikelihood likelihood, double[] found)
    {
        const double near = 1e-6;
        double[] moved = [.. found.Select(value => value < near ? 0 : value > 1 - near ? 1 : value)];
        var best = likelihood.Log(found);
        return likelihood.Log(moved) >= best - 1e-9 - (1e-13 * Math.Abs(best)) ? moved : found;
    }

    private static GoodnessOfFit FitOf(TwoTestLikelihood likelihood, double[] solution)
    {
        var freedom = (2 * likelihood.Populations) - 4;
        if (freedom == 0) return new GoodnessOfFit(0, null, null, UndefinedReason.SaturatedModel);
        var deviance = likelihood.Deviance(solution);
        return new GoodnessOfFit(freedom, deviance, deviance > 0 ? SpecialFunctions.GammaUpperRegularized(freedom / 2.0, deviance / 2) : 1, null);
    }
}
