using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

namespace ScreenStats.Statistics.Monitoring.Sequential.CountSums;

/// <summary>Limits of one design for several wanted rates of false alarms. Average run lengths that were needed for one serve the next.</summary>
/// <remarks>The first limit is found as by <see cref="BernoulliCumulativeSum.LimitFor"/>; each further one starts between the nearest lengths known.</remarks>
public sealed class BernoulliLimitSearch
{
    private readonly BernoulliDesign design;
    private readonly CumulativeSumOptions options;
    private readonly double headStartShare;
    private readonly SortedDictionary<long, double?> known = [];

    /// <summary>Starts with nothing known.</summary>
    /// <param name="design">The design.</param>
    /// <param name="options">The conventions; the usual ones where null. Its head start is not used here, but a share of the limit.</param>
    /// <param name="headStartShare">The head start as a share of the limit, in [0, 1), for instance 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    public BernoulliLimitSearch(BernoulliDesign design, CumulativeSumOptions? options = null, double headStartShare = 0)
    {
        ArgumentNullException.ThrowIfNull(design);
        this.options = options ?? new CumulativeSumOptions();
        this.options.Check(double.MaxValue);
        if (!(headStartShare >= 0 && headStartShare < 1))
            throw new ArgumentOutOfRangeException(nameof(headStartShare), headStartShare, "The head start is a share of the limit, 0 or more and below 1.");
        (this.design, this.headStartShare) = (design, headStartShare);
    }

    /// <summary>The smallest limit on the lattice, in its steps, whose exact average run length reaches what is wanted.</summary>
    /// <param name="target">One false alarm in how many observations or days.</param>
    /// <returns>The limit times the design's denominator; null where it would be too large to be found.</returns>
    public long? StepsFor(FalseAlarmTarget target)
    {
        ArgumentNullException.ThrowIfNull(target);
        return StatesFor(target) is { } states ? Steps(states) : null;
    }

    internal long Steps(long states) => options.Signal == SignalRule.AtOrAbove ? states : states - 1;

    internal double? At(long states, double rate) =>
        BernoulliCumulativeSum.Figure(design, states, rate, (long)Math.Min(states - 1, Math.Round(headStartShare * states))).Value;

    internal double? InOrder(long states)
    {
        if (!known.TryGetValue(states, out var value)) known.Add(states, value = At(states, design.RateInOrder));
        return value;
    }

    internal long? StatesFor(FalseAlarmTarget target)
    {
        bool Enough(long states) => InOrder(states) is not { } value || value >= target.Runs;
        long below = 0;
        long? enough = null;
        foreach (var states in known.Keys.ToArray())
        {
            if (!Enough(states))
            {
                below = states;
                continue;
            }

            enough = states;
            break;
        }

        var above = enough ?? Math.Max(1, below == 0 ? design.Denominator / 2 : 2 * below);
        while (enough is null)
        {
            if (above > BernoulliCumulativeSum.MostStates) return null;
            if (Enough(above))
            {
                enough = above;
                continue;
            }

            below = above;
            above *= 2;
        }

        while (above - below > 1)
        {
            var middle = below + ((above - below) / 2);
            if (Enough(middle)) above = middle;
            else below = middle;
        }

        return above;
    }
}
