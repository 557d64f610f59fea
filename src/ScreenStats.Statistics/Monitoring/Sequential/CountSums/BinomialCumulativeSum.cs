using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Sequential.CountSums;

/// <summary>The binomial cumulative sum: group by group, has the rate risen?</summary>
/// <remarks>
/// C = max(0, C + x - k) over the counts of events x of groups of n observations, signal at C ≥ h (or &gt; h). Average run lengths count groups, from
/// the initial state, and are exact for a reference value on the lattice. Source: Gan FF, J Stat Comput Simul 1993;45:177-194 (from memory).
/// </remarks>
public static class BinomialCumulativeSum
{
    /// <summary>The most states of which a chain is solved.</summary>
    public const int MostStates = 800;

    /// <summary>The reference value that is best between two rates.</summary>
    /// <param name="groupSize">Observations in a group, 1 or more.</param>
    /// <param name="rateInOrder">The rate p0 that is in order, in (0, 1).</param>
    /// <param name="rateToFind">The rate p1 to be found, above p0 and below 1.</param>
    /// <returns>k = n ln((1 - p0) / (1 - p1)) / ln(p1 (1 - p0) / (p0 (1 - p1))), between n p0 and n p1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    public static double Reference(long groupSize, double rateInOrder, double rateToFind)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(groupSize, 1);
        BernoulliCumulativeSum.Check(rateInOrder, rateToFind);
        return groupSize * BernoulliDesign.ReferenceOf(rateInOrder, rateToFind);
    }

    /// <summary>The design, on the coarsest lattice that holds the reference value.</summary>
    /// <param name="groupSize">Observations in a group, 1 to 1,000,000.</param>
    /// <param name="reference">The reference value k, above 0 and below the group size.</param>
    /// <param name="limit">The limit h, above 0 and at most 1,000.</param>
    /// <returns>
    /// The design. Where no lattice of at most <see cref="MostStates"/> states holds the reference value, that value is moved to the nearest point of the
    /// finest such lattice: see <see cref="BinomialDesign.ReferenceOnLattice"/>.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    public static BinomialDesign Design(long groupSize, double reference, double limit)
    {
        if (groupSize is < 1 or > 1_000_000) throw new ArgumentOutOfRangeException(nameof(groupSize), groupSize, "A group has 1 to 1,000,000 observations.");
        if (!(reference > 0 && reference < groupSize))
            throw new ArgumentOutOfRangeException(nameof(reference), reference, "The reference value lies between 0 and the group size, both excluded.");
        if (!(limit > 0 && limit <= 1_000)) throw new ArgumentOutOfRangeException(nameof(limit), limit, "The limit lies above 0 and is at most 1,000.");
        var most = Math.Max(1, (long)(MostStates / limit));
        for (long units = 1; units <= most; units++)
        {
            if (Math.Abs((reference * units) - Math.Round(reference * units)) <= 1e-9 * units) return new BinomialDesign(groupSize, reference, limit, units);
        }

        return new BinomialDesign(groupSize, reference, limit, most);
    }

    /// <summary>The exact average number of groups to a signal.</summary>
    /// <param name="design">The design.</param>
    /// <param name="rate">The true rate, in [0, 1].</param>
    /// <param name="options">The conventions; the usual ones where null. A head start that no such lattice holds is moved to its nearest point.</param>
    /// <returns>The average; undefined where it never signals or is too large for a number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    public static Estimate AverageRunLength(BinomialDesign design, double rate, CumulativeSumOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        Guard.Probability(rate);
        options ??= new CumulativeSumOptions();
        options.Check(design.Limit);

        // A head start off the lattice: a finer one that holds both, where there is one.
        for (long finer = 2; finer * design.Units * design.Limit <= MostStates + 1 && Off(options.HeadStart * design.Units); finer++)
        {
            if (!Off(options.HeadStart * design.Units * finer)) design = new BinomialDesign(design.GroupSize, design.ReferenceOnLattice, design.Limit, design.Units * finer);
        }

        var states = LatticeRunLength.FirstSignal(design.Limit * design.Units, options.Signal);
        if (rate == 0) return Estimate.Undefined(UndefinedReason.NeverSignals);
        var start = (int)Math.Min(states - 1, Math.Round(options.HeadStart * design.Units));
        return Figure(Moves(design, rate, states), states, start);
    }

    /// <summary>The smallest limit on the lattice for a wanted rate of false alarms.</summary>
    /// <param name="groupSize">Observations in a group, 1 to 1,000,000.</param>
    /// <param name="reference">The reference value k, above 0 and below the group size.</param>
    /// <param name="rateInOrder">The rate that is in order, in (0, 1).</param>
    /// <param name="target">One false alarm in how many observations; a group counts as its number of them.</param>
    /// <param name="signal">When it signals.</param>
    /// <returns>
    /// The design with that limit and the average number of groups to a false alarm; undefined where no lattice of at most <see cref="MostStates"/>
    /// states reaches it.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    public static (BinomialDesign? Design, Estimate Reached) LimitFor(
        long groupSize, double reference, double rateInOrder, FalseAlarmTarget target, SignalRule signal = SignalRule.AtOrAbove)
    {
        ArgumentNullException.ThrowIfNull(target);
        if (!(rateInOrder > 0 && rateInOrder < 1)) throw new ArgumentOutOfRangeException(nameof(rateInOrder), rateInOrder, "The rate in order lies strictly between 0 and 1.");

        // Coarse enough that the limits in question fit: the lattice is that of a limit of a few standard deviations of a group.
        var spread = Math.Sqrt(groupSize * rateInOrder * (1 - rateInOrder));
        var units = Design(groupSize, reference, Math.Min(1_000, Math.Max(1, 12 * Math.Max(1, spread)))).Units;
        var wanted = target.Runs / groupSize;
        BinomialDesign At(long states) => new(groupSize, reference, (double)(signal == SignalRule.AtOrAbove ? states : states - 1) / units, units);
        Estimate Of(long states) => Figure(Moves(At(states), rateInOrder, states), states, 0);
        bool Enough(long states) => Of(states) is var figure && (figure.Value ?? double.MaxValue) >= wanted;

        long below = 0, above = 1;
        while (!Enough(above))
        {
            if (above >= MostStates) return (null, Estimate.Undefined(UndefinedReason.NoLimitFound));
            below = above;
            above = Math.Min(MostStates, 2 * above);
        }

        while (above - below > 1)
        {
            var middle = (above + below) / 2;
            if (Enough(middle)) above = middle;
            else below = middle;
        }

        return (At(above), Of(above));
    }

    /// <summary>The path over the counts of groups.</summary>
    /// <param name="design">The design.</param>
    /// <param name="events">Events of each group, in order, from 0 to the group size.</param>
    /// <param name="options">The conventions; the usual ones where null.</param>
    /// <returns>The path, with the reference value as asked.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    public static CumulativeSumPath Path(BinomialDesign design, IReadOnlyList<long> events, CumulativeSumOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(events);
        foreach (var count in events) Guard.Counts(count, design.GroupSize);
        return CumulativeSum.Path([.. events.Select(count => count - design.Reference)], design.Limit, options);
    }

    private static bool Off(double steps) => Math.Abs(steps - Math.Round(steps)) > 1e-9 * Math.Max(1, steps);

    private static Estimate Figure(IReadOnlyList<(long Move, double Chance)> moves, long states, int start)
    {
        var value = LatticeRunLength.From(moves, states)[start];
        if (double.IsPositiveInfinity(value) && moves.Max(one => one.Move) <= 0) return Estimate.Undefined(UndefinedReason.NeverSignals);
        return double.IsFinite(value) ? Estimate.Point(value, "Markov chain on the lattice") : Estimate.Undefined(UndefinedReason.TooLarge);
    }

    /// <summary>The moves in steps of the lattice; all that signal from anywhere are one move, and all that lead to 0 from anywhere another.</summary>
    private static List<(long Move, double Chance)> Moves(BinomialDesign design, double rate, long states)
    {
        var moves = new List<(long, double)>();
        var reference = (long)Math.Round(design.Reference * design.Units);
        double signals = 0, falls = 0;
        for (long x = 0; x <= design.GroupSize; x++)
        {
            var chance = rate == 1 ? (x == design.GroupSize ? 1 : 0) : Binomial.Probability(x, design.GroupSize, rate, 1 - rate);
            if (chance == 0) continue;
            var move = (x * design.Units) - reference;
            if (move >= states) signals += chance;
            else if (move <= -states) falls += chance;
            else moves.Add((move, chance));
        }

        if (signals > 0) moves.Add((states, signals));
        if (falls > 0) moves.Add((-states, falls));
        return moves;
    }
}
