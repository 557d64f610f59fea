using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Trends.MovingWindows;

/// <summary>Proportions of windows that move over the periods.</summary>
public static class MovingProportions
{
    /// <summary>Wilson's limits of each window of a given number of periods.</summary>
    /// <param name="counts">The periods in order of time, each once, those without trials included: a window counts periods, not trials.</param>
    /// <param name="width">Periods of a window, 1 or more.</param>
    /// <param name="confidence">The confidence of the limits, in (0, 1).</param>
    /// <returns>The windows in order, each full: none where there are fewer periods than a window has.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentException">Periods that are not in order of time, or one twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A width below 1, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// Neighbouring windows share periods, so their limits rise and fall together: each is right by itself, and together they are no test of a change. Sums
    /// are made anew for each window, so that no rounding is carried along. Source: Wilson EB, J Am Stat Assoc 1927;22:209-212.
    /// </remarks>
    public static IReadOnlyList<MovingWindow> Wilson(IReadOnlyList<TimedCount> counts, int width, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(counts);
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        Guard.Confidence(confidence);
        for (var i = 1; i < counts.Count; i++)
        {
            if (!(counts[i].Time > counts[i - 1].Time)) throw new ArgumentException("The periods must be in order of time, each once.", nameof(counts));
        }

        var windows = new List<MovingWindow>();
        for (var last = width - 1; last < counts.Count; last++)
        {
            double events = 0, trials = 0;
            for (var i = last - width + 1; i <= last; i++) (events, trials) = (events + counts[i].Events, trials + counts[i].Trials);
            windows.Add(new MovingWindow(last - width + 1, last, ProportionInterval.Wilson(Math.Min(events, trials), trials, confidence)));
        }

        return windows;
    }
}
