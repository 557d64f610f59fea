using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Sequential.CountSums;

/// <summary>The Bernoulli cumulative sum: run by run, has the rate risen?</summary>
/// <remarks>
/// B = max(0, B + X - γ) with X = 1 for an event, signal at B ≥ h (or &gt; h, see <see cref="CumulativeSumOptions"/>). γ is moved to a fraction,
/// 1/m where rates are low, by adjusting the rate to be found; then B takes whole numbers of m-ths and average run lengths are exact. They count
/// observations to the signal, from the initial state. Source: Reynolds MR, Stoumbos ZG, J Qual Technol 1999;31:87-108 (from memory).
/// </remarks>
public static class BernoulliCumulativeSum
{
    /// <summary>The most states a lattice may have.</summary>
    public const long MostStates = 20_000_000;

    /// <summary>The design for two rates, with the lattice that is nearest.</summary>
    /// <param name="rateInOrder">The rate p0 that is in order, in (0, 1).</param>
    /// <param name="rateToFind">The rate p1 to be found, above p0 and below 1.</param>
    /// <returns>
    /// The design. γ becomes 1/m, m the whole number nearest to 1/γ, where that moves it by at most 5 %, which it does for rates below a tenth;
    /// else the fraction with the smallest denominator that lies above p0 and moves neither γ nor 1 - γ by more than 1 %.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A rate outside its domain, or rates so small or so near that the lattice would have too many steps.</exception>
    public static BernoulliDesign Design(double rateInOrder, double rateToFind)
    {
        Check(rateInOrder, rateToFind);
        var exact = BernoulliDesign.ReferenceOf(rateInOrder, rateToFind);
        if (!(exact > 1.0 / MostStates)) throw new ArgumentOutOfRangeException(nameof(rateInOrder), rateInOrder, "The rate is too small for this method.");
        var whole = Math.Round(1 / exact);
        if (Math.Abs((whole * exact) - 1) <= 0.05 && whole >= 2 && 1 / whole > rateInOrder) return new BernoulliDesign(rateInOrder, rateToFind, 1, (long)whole);
        for (long denominator = 2; denominator <= 100_000; denominator++)
        {
            var numerator = Math.Round(exact * denominator);
            var fraction = numerator / denominator;
            if (fraction > rateInOrder && fraction < 1 && Math.Abs(fraction - exact) <= 0.01 * Math.Min(Math.Min(exact, 1 - exact), 20 * (exact - rateInOrder)))
                return new BernoulliDesign(rateInOrder, rateToFind, (long)numerator, denominator);
        }

        throw new ArgumentOutOfRangeException(nameof(rateToFind), rateToFind, "The two rates are too near to each other, or to 1, for this method.");
    }

    /// <summary>The design on a lattice of one's choice, as published tables state it.</summary>
    /// <param name="rateInOrder">The rate p0 that is in order, in (0, 1).</param>
    /// <param name="rateToFind">The rate p1 to be found, above p0 and below 1; kept for the record, the lattice decides.</param>
    /// <param name="denominator">m, 2 or more, with 1/m above p0.</param>
    /// <returns>The design with γ = 1/m.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A rate or the denominator outside its domain.</exception>
    public static BernoulliDesign DesignOnLattice(double rateInOrder, double rateToFind, long denominator)
    {
        Check(rateInOrder, rateToFind);
        if (denominator is < 2 or > MostStates || 1.0 / denominator <= rateInOrder)
            throw new ArgumentOutOfRangeException(nameof(denominator), denominator, "The denominator must be 2 or more and 1 over it above the rate in order.");
        return new BernoulliDesign(rateInOrder, rateToFind, 1, denominator);
    }

    /// <summary>The exact average number of observations to a signal.</summary>
    /// <param name="design">The design.</param>
    /// <param name="limit">The limit h, above 0; what lies between two steps of the lattice is moved to the next that signals.</param>
    /// <param name="rate">The true rate, in [0, 1].</param>
    /// <param name="options">The conventions; the usual ones where null.</param>
    /// <returns>The average; undefined at a rate of 0, at which it never signals, and where it is too large for a number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain, or a limit with too many steps of the lattice.</exception>
    /// <remarks>
    /// A Markov chain on the lattice, solved without subtraction of like figures; relative error below 1e-11. It is mean and near standard deviation
    /// at once: run lengths are about exponential, so that one in three false alarms comes before 40 % of it.
    /// </remarks>
    public static Estimate AverageRunLength(BernoulliDesign design, double limit, double rate, CumulativeSumOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        Guard.Probability(rate);
        options ??= new CumulativeSumOptions();
        options.Check(limit);
        var states = States(design, limit, options.Signal);
        return Figure(design, states, rate, StartOf(design, options.HeadStart, states));
    }

    /// <summary>Reynolds and Stoumbos's corrected diffusion approximation, to compare with the exact average.</summary>
    /// <param name="design">The design.</param>
    /// <param name="limit">The limit h, above 0.</param>
    /// <param name="toFind">Whether at <see cref="BernoulliDesign.AdjustedRateToFind"/>; else at the rate in order.</param>
    /// <returns>The average without head start; undefined where it is too large for a number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not above 0.</exception>
    /// <remarks>
    /// h* = h + ε(p0) √(p0 q0); (e^(h* r2) - h* r2 - 1) / |r2 p0 - r1| in order and (e^(-h* r2) + h* r2 - 1) / |r2 p1 - r1| to be found; ε(p) =
    /// .410 - .0842 ln p - .0391 (ln p)³ - .00376 (ln p)⁴ - .000008 (ln p)⁷ from .01 to .5, else (√(q/p) - √(p/q)) / 3. From h = 3 up within about
    /// 2 % of the exact average.
    /// </remarks>
    public static Estimate CorrectedDiffusion(BernoulliDesign design, double limit, bool toFind)
    {
        ArgumentNullException.ThrowIfNull(design);
        new CumulativeSumOptions().Check(limit);
        var (p, q) = (design.RateInOrder, 1 - design.RateInOrder);
        var log = Math.Log(p);
        var excess = p is >= 0.01 and <= 0.5
            ? 0.410 - (0.0842 * log) - (0.0391 * Math.Pow(log, 3)) - (0.00376 * Math.Pow(log, 4)) - (0.000008 * Math.Pow(log, 7))
            : (Math.Sqrt(q / p) - Math.Sqrt(p / q)) / 3;
        var height = (limit + (excess * Math.Sqrt(p * q))) * design.WeightOfOne;
        var rate = toFind ? design.AdjustedRateToFind : p;
        var drift = Math.Abs((design.WeightOfOne * rate) + design.NonEventWeight);
        var value = (toFind ? Math.Exp(-height) + height - 1 : Math.Exp(height) - height - 1) / drift;
        return double.IsFinite(value) ? Estimate.Point(value, "corrected diffusion approximation") : Estimate.Undefined(UndefinedReason.TooLarge);
    }

    /// <summary>The limit for a wanted rate of false alarms.</summary>
    /// <param name="design">The design.</param>
    /// <param name="target">One false alarm in how many observations or days.</param>
    /// <param name="options">The conventions; the usual ones where null. Its head start is not used here, but a share of the limit.</param>
    /// <param name="headStartShare">The head start as a share of the limit, in [0, 1), for instance 0.5.</param>
    /// <returns>The smallest limit on the lattice whose exact average run length reaches what was wanted, and what it reaches.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    public static BernoulliLimit LimitFor(BernoulliDesign design, FalseAlarmTarget target, CumulativeSumOptions? options = null, double headStartShare = 0)
    {
        ArgumentNullException.ThrowIfNull(target);
        var search = new BernoulliLimitSearch(design, options, headStartShare);
        if (search.StatesFor(target) is not { } states) return new BernoulliLimit(design, target, null, null, null, null, null);

        // The head start is rounded to the lattice, which can make the average dip by a trifle; the limit stated reaches the target in any case.
        return new BernoulliLimit(
            design, target, (double)search.Steps(states) / design.Denominator, search.InOrder(states), states > 1 ? search.InOrder(states - 1) : null,
            search.At(states, design.AdjustedRateToFind), search.At(states, design.RateToFind));
    }

    /// <summary>The path over observations.</summary>
    /// <param name="design">The design.</param>
    /// <param name="limit">The limit h, above 0.</param>
    /// <param name="events">Whether each observation was an event, in order.</param>
    /// <param name="options">The conventions; the usual ones where null.</param>
    /// <returns>The path, in units in which an event adds 1 - γ. It is computed in whole numbers of lattice steps.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    public static CumulativeSumPath Path(BernoulliDesign design, double limit, IReadOnlyList<bool> events, CumulativeSumOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(events);
        return Run(design, limit, events.Count, i => events[i] ? design.Denominator - design.Numerator : -design.Numerator, options);
    }

    /// <summary>The path over groups of which only the totals are known, as the days of an export without times.</summary>
    /// <param name="design">The design.</param>
    /// <param name="limit">The limit h, above 0.</param>
    /// <param name="groups">Events and trials of each group, in order.</param>
    /// <param name="options">The conventions; the usual ones where null.</param>
    /// <returns>The path with one point for each group.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    /// <remarks>
    /// B = max(0, B + events - γ trials), so the order within a group does not matter. The sum run by run is at least as high at the end of each
    /// group in whatever order they came, because its rises may begin inside a group; so this one signals no more often, and its average number of
    /// observations to a false alarm is at least the exact one of the sum run by run.
    /// </remarks>
    public static CumulativeSumPath GroupedPath(
        BernoulliDesign design, double limit, IReadOnlyList<(long Events, long Trials)> groups, CumulativeSumOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(groups);
        foreach (var (events, trials) in groups) Guard.Counts(events, trials);
        return Run(design, limit, groups.Count, i => ((double)groups[i].Events * design.Denominator) - ((double)groups[i].Trials * design.Numerator), options);
    }

    private static CumulativeSumPath Run(BernoulliDesign design, double limit, int count, Func<int, double> increment, CumulativeSumOptions? options)
    {
        ArgumentNullException.ThrowIfNull(design);
        options ??= new CumulativeSumOptions();
        options.Check(limit);
        var states = States(design, limit, options.Signal);
        var start = StartOf(design, options.HeadStart, states);
        var path = CumulativeSum.Run(count, increment, states, start, design.Denominator, limit, options with { Signal = SignalRule.AtOrAbove });
        return new CumulativeSumPath(limit, options, path.Points, path.Signals);
    }

    private static long States(BernoulliDesign design, double limit, SignalRule rule)
    {
        var steps = limit * design.Denominator;
        if (steps > MostStates) throw new ArgumentOutOfRangeException(nameof(limit), limit, "The limit has too many steps on this lattice.");
        return LatticeRunLength.FirstSignal(steps, rule);
    }

    private static long StartOf(BernoulliDesign design, double headStart, long states) =>
        Math.Min(states - 1, (long)Math.Round(headStart * design.Denominator));

    internal static Estimate Figure(BernoulliDesign design, long states, double rate, long start)
    {
        if (rate == 0) return Estimate.Undefined(UndefinedReason.NeverSignals);
        double value;
        if (design.Numerator == 1)
        {
            value = rate == 1
                ? Math.Ceiling((double)(states - start) / (design.Denominator - 1))
                : BernoulliRunLength.From(rate, design.Denominator, states, start);
        }
        else
        {
            value = LatticeRunLength.From([(design.Denominator - design.Numerator, rate), (-design.Numerator, 1 - rate)], states)[start];
        }

        return double.IsFinite(value) ? Estimate.Point(value, "Markov chain on the lattice") : Estimate.Undefined(UndefinedReason.TooLarge);
    }

    internal static void Check(double rateInOrder, double rateToFind)
    {
        if (!(rateInOrder > 0 && rateInOrder < 1)) throw new ArgumentOutOfRangeException(nameof(rateInOrder), rateInOrder, "The rate in order lies strictly between 0 and 1.");
        if (!(rateToFind > rateInOrder && rateToFind < 1))
            throw new ArgumentOutOfRangeException(nameof(rateToFind), rateToFind, "The rate to be found lies above the rate in order and below 1.");
    }
}
