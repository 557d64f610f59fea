using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Planning;

/// <summary>How many results of a screen to verify.</summary>
public static class AuditPlanning
{
    /// <summary>The smallest samples of positives and negatives that make the sensitivity known to a given width.</summary>
    /// <param name="question">What is expected, and what is asked.</param>
    /// <returns>Two answers, each with the width recomputed at it; undefined where the program makes too few screens.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, named.</exception>
    /// <remarks>
    /// <para>Begg and Greenes' sensitivity with logit limits: with t the share of positive screens of N, n1 positives verified of which a share a is
    /// confirmed, n0 negatives audited of which a share b is missed, the variance of the logit is 1/(N t (1 - t)) + (1 - a)/(n1 a) + (1 - b)/(n0 b),
    /// taken at the expected shares. The width falls with n1 and with n0, so one audited negative fewer is too wide, and so is every way to share out one
    /// confirmatory test fewer. Where verifying is free of other aims, n1 : n0 is as sqrt((1 - a)/a) : sqrt((1 - b)/b).</para>
    /// <para>The audit's own luck makes the interval wider or narrower than planned. Runs of one person count as independent: multiply by the design
    /// effect where they are not. Source: Begg CB, Greenes RA, Biometrics 1983;39:207-215 (from memory); the sharing out is Neyman's (from memory).</para>
    /// </remarks>
    public static AuditPlan ForSensitivity(AuditQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        question.Check();
        var found = question.Prevalence * question.Sensitivity;
        var missed = question.Prevalence * (1 - question.Sensitivity);
        var refuted = (1 - question.Prevalence) * (1 - question.Specificity);
        var agreed = (1 - question.Prevalence) * question.Specificity;
        var positives = Math.Clamp((long)Math.Round(question.Screens * (found + refuted)), 0, question.Screens);
        var negatives = question.Screens - positives;
        if (positives == 0 || negatives == 0) return new AuditPlan(question, positives, negatives, null, null, null);

        var weights = 1 / (question.Screens * (found + refuted) * (missed + agreed));
        var perPositive = refuted / found;
        var perNegative = agreed / missed;
        var shareMissed = missed / (missed + agreed);
        var z = Quantile.Normal(question.Confidence);
        var logit = LogitScale.Logit(question.Sensitivity);

        Interval At(double variance)
        {
            var half = z * Math.Sqrt(variance);
            return new Interval(LogitScale.Fraction(logit - half), LogitScale.Fraction(logit + half)).Including(question.Sensitivity);
        }

        double Variance(long verified, long audited) => weights + (perPositive / verified) + (perNegative / audited);
        AuditSample Sample(long verified, long audited) => new(verified, audited, audited * shareMissed, At(Variance(verified, audited)));
        bool Enough(long verified, long audited) => At(Variance(verified, audited)).Width <= question.Width;

        var most = At(Variance(positives, negatives)).Width;
        if (!(most <= question.Width)) return new AuditPlan(question, positives, negatives, null, null, most);

        // The width rises with the variance: the largest variance allowed, by halving.
        var (allowed, tooMuch) = (0.0, 1.0);
        while (At(tooMuch).Width <= question.Width) tooMuch *= 2;
        for (var step = 0; step < 200; step++)
        {
            var middle = (allowed + tooMuch) / 2;
            if (At(middle).Width <= question.Width) allowed = middle;
            else tooMuch = middle;
        }

        // The fewest negatives beside a number of verified positives; null where not even all would do.
        long? Negatives(long verified)
        {
            var left = allowed - weights - (perPositive / verified);
            if (!(left > 0) || perNegative / left > negatives + 1.0) return null;
            var audited = Math.Clamp((long)Math.Ceiling(perNegative / left), 1, negatives);
            while (audited > 1 && Enough(verified, audited - 1)) audited--;
            while (audited <= negatives && !Enough(verified, audited)) audited++;
            return audited <= negatives ? audited : null;
        }

        var allPositives = Negatives(positives) is { } besideAll ? Sample(positives, besideAll) : null;
        var fewest = Fewest(allowed - weights, perPositive, perNegative, positives, Negatives) is { } best ? Sample(best.Verified, best.Audited) : allPositives;
        return new AuditPlan(question, positives, negatives, allPositives, fewest, most);
    }

    /// <summary>
    /// n + b/(left - a/n) is convex in n and the whole-number total lies less than 1 above it, so every total as small as the best found lies
    /// where the curve is at most that total: walk from its lowest point outwards until the curve exceeds it.
    /// </summary>
    private static (long Verified, long Audited)? Fewest(double left, double a, double b, long positives, Func<long, long?> negativesBeside)
    {
        var lowest = Math.Clamp((long)Math.Round((a + Math.Sqrt(a * b)) / left), 1, positives);
        (long Verified, long Audited)? best = null;
        foreach (var direction in (ReadOnlySpan<int>)[-1, 1])
        {
            for (var verified = direction < 0 ? lowest : lowest + 1; verified >= 1 && verified <= positives; verified += direction)
            {
                var room = left - (a / verified);
                var curve = room > 0 ? verified + (b / room) : double.PositiveInfinity;
                if (best is { } known && curve > known.Verified + known.Audited + 1e-6) break;
                if (negativesBeside(verified) is { } audited && (best is not { } before || verified + audited < before.Verified + before.Audited))
                    best = (verified, audited);
                else if (double.IsInfinity(curve) && direction < 0) break;
            }
        }

        return best;
    }
}
