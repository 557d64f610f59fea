namespace ScreenStats.Statistics.LatentClass;

/// <summary>Finds the figures of greatest likelihood among those where both tests are better than chance.</summary>
internal static class LatentSearch
{
    private const int Steps = 200_000;
    private const double Edge = 1e-7;

    /// <summary>The figures, or null with the reason.</summary>
    public static double[]? Solve(TwoTestLikelihood likelihood, out UndefinedReason reason)
    {
        reason = UndefinedReason.TestNoBetterThanChance;
        if (likelihood.Populations == 2 && ClosedForm(likelihood) is { } exact && exact.All(value => value is > 0 and < 1)) return exact;

        double[]? best = null;
        var bestLog = double.NegativeInfinity;
        var settled = false;
        foreach (var start in Starts(likelihood))
        {
            var (found, done) = Climb(likelihood, start);
            if (!BetterThanChance(likelihood, found)) continue;
            var log = likelihood.Log(found);
            if (!(log > bestLog)) continue;
            (best, bestLog, settled) = (found, log, done);
        }

        if (best is null) return null;
        if (settled) return best;
        reason = UndefinedReason.NotConverged;
        return null;
    }

    private static bool BetterThanChance(TwoTestLikelihood likelihood, double[] figures)
    {
        var p = likelihood.Populations;
        return figures[p] + figures[p + 1] > 1 + 1e-9 && figures[p + 2] + figures[p + 3] > 1 + 1e-9;
    }

    /// <summary>The exact fit of two populations; null where none is real with both tests better than chance.</summary>
    private static double[]? ClosedForm(TwoTestLikelihood likelihood)
    {
        var firstStep = likelihood.FirstShare(1) - likelihood.FirstShare(0);
        var secondStep = likelihood.SecondShare(1) - likelihood.SecondShare(0);
        if (!(firstStep * secondStep > 0)) return null;
        var r1 = likelihood.Covariation(0) / (firstStep * secondStep);
        var r2 = likelihood.Covariation(1) / (firstStep * secondStep);
        var q = 1 + r2 - r1;
        var square = (4 * r1) + (q * q);
        if (!(square > 0)) return null;
        var step = Math.Sign(firstStep) / Math.Sqrt(square);
        var prevalence = (1 - (step * q)) / 2;
        var firstYouden = firstStep / step;
        var secondYouden = secondStep / step;
        var firstFalse = likelihood.FirstShare(0) - (prevalence * firstYouden);
        var secondFalse = likelihood.SecondShare(0) - (prevalence * secondYouden);
        return [prevalence, prevalence + step, firstFalse + firstYouden, 1 - firstFalse, secondFalse + secondYouden, 1 - secondFalse];
    }

    /// <summary>A grid of accuracies; each population starts at the prevalence that its first test then suggests.</summary>
    private static IEnumerable<double[]> Starts(TwoTestLikelihood likelihood)
    {
        foreach (var sensitivity in new[] { 0.95, 0.75, 0.5 })
        {
            foreach (var specificity in new[] { 0.98, 0.8 })
            {
                foreach (var second in new[] { 0.95, 0.6 })
                {
                    yield return
                    [
                        .. Enumerable.Range(0, likelihood.Populations)
                            .Select(k => Math.Clamp((likelihood.FirstShare(k) - 1 + specificity) / (sensitivity + specificity - 1), 0.02, 0.98)),
                        sensitivity, specificity, second, specificity,
                    ];
                }
            }
        }
    }

    /// <summary>EM until it stands still, scoring where that climbs further; a figure that creeps to an edge is put on it where nothing is lost.</summary>
    private static (double[] Figures, bool Settled) Climb(TwoTestLikelihood likelihood, double[] start)
    {
        var figures = start;
        var log = likelihood.Log(figures);
        for (var step = 1; step <= Steps; step++)
        {
            var next = likelihood.Expect(figures);
            if (step % 50 == 0)
            {
                next = Scored(likelihood, next);
                next = Snapped(likelihood, next);
            }

            var nextLog = likelihood.Log(next);
            var moved = 0.0;
            for (var i = 0; i < next.Length; i++) moved = Math.Max(moved, Math.Abs(next[i] - figures[i]));
            figures = next;
            var gained = nextLog - log;
            log = nextLog;
            if (step % 50 == 1 && step > 50 && moved < 1e-12 && gained < 1e-9) return (figures, true);
        }

        return (figures, false);
    }

    private static double[] Scored(TwoTestLikelihood likelihood, double[] figures)
    {
        if (figures.Any(value => value is <= Edge or >= 1 - Edge)) return figures;
        var best = figures;
        for (var round = 0; round < 30; round++)
        {
            if (likelihood.Score(best) is not { } step) return best;
            var next = best;
            var better = false;
            for (var length = 1.0; length > 0.01; length /= 2)
            {
                next = [.. best.Zip(step, (value, change) => value + (length * change))];
                if (next.Any(value => value is <= 0 or >= 1)) continue;
                better = likelihood.Log(next) >= likelihood.Log(best);
                if (better) break;
            }

            if (!better) return best;
            best = next;
            if (step.Max(Math.Abs) < 1e-14) return best;
        }

        return best;
    }

    private static double[] Snapped(TwoTestLikelihood likelihood, double[] figures)
    {
        var log = likelihood.Log(figures);
        for (var i = 0; i < figures.Length; i++)
        {
            if (figures[i] is > 1e-3 and < 1 - 1e-3 or 0 or 1) continue;
            var moved = (double[])figures.Clone();
            moved[i] = Math.Round(figures[i]);
            var movedLog = likelihood.Log(moved);
            if (!(movedLog >= log)) continue;
            (figures, log) = (moved, movedLog);
        }

        return figures;
    }
}
