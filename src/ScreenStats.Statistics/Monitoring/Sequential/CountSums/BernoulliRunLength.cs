using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Sequential.CountSums;

/// <summary>
/// Exact average run length of a sum that falls by 1 without an event and rises by m - 1 with one. Falling by one only, it can be taken apart into
/// descents from s to s - 1: with u(s) the chance of getting there before a signal and t(s) the mean number of observations until either,
/// u(s) = q + p u(s + m - 1) … u(s), and t likewise. From the limit down each follows from the m - 1 states above it, so the work is
/// proportional to the number of states; chances of a signal are kept as -ln u, so that a run length of 1e12 keeps its digits.
/// </summary>
internal static class BernoulliRunLength
{
    /// <summary>The average run length from a state.</summary>
    /// <param name="rate">The chance of an event, in (0, 1].</param>
    /// <param name="denominator">m, 2 or more.</param>
    /// <param name="limit">The first state that signals, 1 or more.</param>
    /// <param name="start">The state at the start, below the limit.</param>
    public static double From(double rate, long denominator, long limit, long start)
    {
        var rise = denominator - 1;
        var odds = rate / (1 - rate);
        var window = new Window((int)Math.Min(rise, limit));

        // Descents from above the limit do not happen: an event that leads there has signalled.
        Descent fromStart = default;
        var hasStart = false;
        for (var state = limit - 1; state >= 1; state--)
        {
            Descent descent;
            if (state + rise >= limit)
            {
                descent = new Descent(Precise.LogOnePlus(odds), 1);
            }
            else
            {
                var above = window.Whole();
                var signals = -Precise.ExponentialMinusOne(-above.Log);
                var log = Precise.LogOnePlus(odds * signals);
                descent = new Descent(log, (1 + (rate * above.Time)) / (1 - rate + (rate * signals)));
            }

            window.Push(descent);
            if (state > start) continue;
            fromStart = hasStart ? fromStart.Then(descent) : descent;
            hasStart = true;
        }

        double fromZero;
        if (rise >= limit)
        {
            fromZero = 1 / rate;
        }
        else
        {
            var above = window.Whole();
            fromZero = (1 + (rate * above.Time)) / (rate * -Precise.ExponentialMinusOne(-above.Log));
        }

        return hasStart ? fromStart.Time + (Math.Exp(-fromStart.Log) * fromZero) : fromZero;
    }

    /// <summary>A descent: minus the logarithm of the chance of getting down, and the mean number of observations until down or signalled.</summary>
    private readonly record struct Descent(double Log, double Time)
    {
        public Descent Then(Descent lower) => new(Log + lower.Log, Time + (Math.Exp(-Log) * lower.Time));
    }

    /// <summary>
    /// The composition of the last w descents, by two stacks: those since a block began, composed as they come, and those of the block before,
    /// composed from its end. Nothing is ever subtracted.
    /// </summary>
    private sealed class Window(int length)
    {
        private readonly Descent[] fresh = new Descent[length];
        private readonly Descent[] older = new Descent[length];
        private Descent composed;
        private int count;
        private int left;

        public void Push(Descent descent)
        {
            if (count == length)
            {
                // The block is full: composed from its last descent back, so that older[i] holds descents i to the end.
                older[length - 1] = fresh[length - 1];
                for (var i = length - 2; i >= 0; i--) older[i] = fresh[i].Then(older[i + 1]);
                (left, count) = (length, 0);
            }

            fresh[count] = descent;
            composed = count == 0 ? descent : composed.Then(descent);
            count++;
            if (left > 0 && left + count > length) left--;
        }

        public Descent Whole() => left == 0 ? composed : older[length - left].Then(composed);
    }
}
