using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Sequential.SequentialTest;

/// <summary>Wald's sequential probability ratio test of a new lot against its claimed rate.</summary>
public static class SequentialRatioTest
{
    /// <summary>Applies a plan to observations until it decides.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="events">Whether each observation was an event, in order.</param>
    /// <returns>The first decision, or where it stands.</returns>
    public static SequentialOutcome Of(SequentialPlan plan, IReadOnlyList<bool> events)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(events);
        long found = 0;
        for (var n = 0; n < events.Count; n++)
        {
            if (events[n]) found++;
            if (plan.Decide(found, n + 1) is var decision and not SequentialDecision.Continue) return new SequentialOutcome(plan, decision, n + 1, found);
        }

        return new SequentialOutcome(plan, SequentialDecision.Continue, events.Count, found);
    }

    /// <summary>The chances of both decisions and the average number of observations, exactly.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="rate">The true rate, in [0, 1].</param>
    /// <param name="largest">The observation with which the sum ends at the latest, 1 to 50,000,000.</param>
    /// <returns>The performance. At the claimed rate its rejection is the true α, at the unacceptable rate its acceptance the true β.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    /// <remarks>
    /// The chance of each number of events between the lines is carried from one observation to the next, until less than 1e-15 is undecided. The true
    /// α and β lie mostly below those asked for, since the lines are overshot.
    /// </remarks>
    public static SequentialPerformance Performance(SequentialPlan plan, double rate, long largest = 10_000_000)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Guard.Probability(rate);
        if (largest is < 1 or > 50_000_000) throw new ArgumentOutOfRangeException(nameof(largest), largest, "The sum ends after 1 to 50,000,000 observations.");

        // between[i] is the chance of first + i events so far, none of them decided.
        var width = plan.RejectionNumber(0) + (long)Math.Ceiling(plan.AcceptanceIntercept) + 3;
        var between = new double[width + 1];
        between[0] = 1;
        long first = 0;
        double acceptance = 0, rejection = 0, average = 0, undecided = 1;
        long n = 0;
        while (undecided >= 1e-15 && n < largest)
        {
            average += undecided;
            n++;
            var rejects = plan.RejectionNumber(n);
            var accepts = plan.AcceptanceNumber(n) ?? -1;
            for (var i = between.Length - 1; i >= 1; i--) between[i] = (between[i] * (1 - rate)) + (between[i - 1] * rate);
            between[0] *= 1 - rate;
            for (var i = between.Length - 1; i >= 0 && first + i >= rejects; i--)
            {
                rejection += between[i];
                between[i] = 0;
            }

            while (first <= accepts)
            {
                acceptance += between[0];
                Array.Copy(between, 1, between, 0, between.Length - 1);
                between[^1] = 0;
                first++;
            }

            undecided = 0;
            foreach (var chance in between) undecided += chance;
        }

        return new SequentialPerformance(rate, acceptance, rejection, undecided, average, n);
    }

    /// <summary>Wald's approximation to the chance of acceptance, which neglects the overshoot.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="rate">The true rate, in [0, 1].</param>
    /// <returns>The chance: 1 - α at the claimed rate, β at the unacceptable one.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rate is outside [0, 1].</exception>
    /// <remarks>
    /// (A^w - 1) / (A^w - B^w) with A = (1 - β) / α, B = β / (1 - α) and the w other than 0 for which the mean of the likelihood ratio to the w is 1;
    /// ln A / (ln A - ln B) at the rate s, where w is 0.
    /// </remarks>
    public static double WaldAcceptance(SequentialPlan plan, double rate)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Guard.Probability(rate);
        if (rate == 0) return 1;
        if (rate == 1) return 0;
        var (a, b) = (Math.Log((1 - plan.FalseAcceptance) / plan.FalseRejection), Math.Log(plan.FalseAcceptance / (1 - plan.FalseRejection)));
        var w = Exponent(plan, rate);
        if (Math.Abs(w) < 1e-9) return a / (a - b);

        // Both forms are the same; each is used where its powers stay small.
        return w > 0
            ? -Precise.ExponentialMinusOne(-w * a) / (1 - Math.Exp(w * (b - a)))
            : Math.Exp(-w * b) * Precise.ExponentialMinusOne(w * a) / Precise.ExponentialMinusOne(w * (a - b));
    }

    /// <summary>Wald's approximation to the average number of observations, which neglects the overshoot.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="rate">The true rate, in [0, 1].</param>
    /// <returns>The average: ((1 - L) h2 - L h1) / (p - s) with the chance L of acceptance; h1 h2 / (s (1 - s)) at the rate s.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rate is outside [0, 1].</exception>
    public static double WaldAverageSampleNumber(SequentialPlan plan, double rate)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Guard.Probability(rate);
        var (h1, h2, s) = (plan.AcceptanceIntercept, plan.RejectionIntercept, plan.Slope);
        if (Math.Abs(rate - s) < 1e-7 * s * (1 - s)) return h1 * h2 / (s * (1 - s));
        var acceptance = WaldAcceptance(plan, rate);
        return (((1 - acceptance) * h2) - (acceptance * h1)) / (rate - s);
    }

    /// <summary>w, from 1 at the claimed rate over 0 at s to -1 at the unacceptable one: p (p2/p1)^w + (1 - p) ((1 - p2)/(1 - p1))^w = 1.</summary>
    private static double Exponent(SequentialPlan plan, double rate)
    {
        var up = Math.Log(plan.UnacceptableRate / plan.ClaimedRate);
        var down = Precise.LogOnePlus((plan.ClaimedRate - plan.UnacceptableRate) / (1 - plan.ClaimedRate));

        // The mean of (e^(w x) - 1) / w is the drift at 0 and rises with w, so that its only root is the w wanted.
        double Tilted(double w) => Math.Abs(w) < 1e-12
            ? (rate * up) + ((1 - rate) * down)
            : ((rate * Precise.ExponentialMinusOne(w * up)) + ((1 - rate) * Precise.ExponentialMinusOne(w * down))) / w;
        double low = -1, high = 1;
        while (Tilted(high) < 0 && high < 1e6) high *= 2;
        while (Tilted(low) > 0 && low > -1e6) low *= 2;
        if (!double.IsFinite(Tilted(high))) high = 700 / up;
        if (!double.IsFinite(Tilted(low))) low = 700 / down;
        return Root.Between(Tilted, low, high);
    }
}
