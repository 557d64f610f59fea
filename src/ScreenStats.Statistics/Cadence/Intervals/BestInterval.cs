using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Intervals;

/// <summary>Which interval gains most after its costs, and below which incidence none gains anything.</summary>
/// <remarks>
/// <para>Per person-day, net = lambda v H(W) - C/T with regular screens (H as in <see cref="ScreeningYield"/>). In the number of screens a
/// day, 1/T, the gain is concave, so there is one best interval, or none: it is at most W, and worth having only where lambda exceeds
/// 2 C/(s v W²). With a perfect test T* = sqrt(2 C/(lambda v)) and net = lambda v W - sqrt(2 C lambda v): the square-root rule.</para>
/// <para>At intervals of W and longer, gain and costs both go with 1/T: the cost per case is flat there, so choose on the marginal cost, never
/// on the average.</para>
/// <para>Source: inspection theory, Barlow RE, Proschan F, Mathematical Theory of Reliability, 1965; Keller JB, Manag Sci 1974;21:256-260
/// (both from memory); derived anew and checked by search over enumerated screens.</para>
/// </remarks>
public static class BestInterval
{
    /// <summary>The name in tables of the square-root rule.</summary>
    public const string SquareRootMethod = "square-root-rule";

    /// <summary>The name in tables of the interval of an imperfect test.</summary>
    public const string StationaryMethod = "marginal-gain-equals-cost";

    /// <summary>The gain per person-day after costs.</summary>
    /// <param name="stakes">What is at stake.</param>
    /// <param name="everyDays">Days from one screen to the next, from a millionth to a billion.</param>
    /// <returns>lambda v H(W) - C/T; below 0 where screening costs more than it gains.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The interval is outside its domain.</exception>
    public static double NetPerPersonDay(ScreeningStakes stakes, double everyDays)
    {
        ArgumentNullException.ThrowIfNull(stakes);
        var routine = new ScreeningRoutine(everyDays, stakes.Sensitivity);
        return (stakes.Incidence * stakes.ValuePerInfectiousDay * DetectionCurve.Sum(routine, stakes.WindowDays)) - (stakes.CostOfScreen / everyDays);
    }

    /// <summary>The interval with the largest gain after costs.</summary>
    /// <param name="stakes">What is at stake.</param>
    /// <returns>
    /// Days between screens, solved to 1e-12 or better; undefined where no interval pays, where screens cost nothing (the shorter the better), and where the answer
    /// is shorter than <see cref="ScreeningRoutine.ShortestInterval"/>.
    /// </returns>
    public static Estimate Of(ScreeningStakes stakes)
    {
        ArgumentNullException.ThrowIfNull(stakes);
        if (stakes.CostOfScreen == 0 && Gain(stakes) > 0) return Estimate.Undefined(UndefinedReason.ScreensCostNothing);
        if (!Pays(stakes)) return Estimate.Undefined(UndefinedReason.NoIntervalPays);
        var ratio = stakes.CostOfScreen / (stakes.Incidence * stakes.ValuePerInfectiousDay);
        var (s, window) = (stakes.Sensitivity, stakes.WindowDays);
        var shortest = Short(stakes, ratio);
        var best = shortest;
        if (s < 1)
        {
            double Excess(double logInterval)
            {
                var days = Math.Exp(logInterval);
                return (days * days * DetectionCurve.Marginal(s, window / days) / ratio) - 1;
            }

            // A little below, so that rounding cannot put the root outside of the bracket.
            var (low, high) = (Math.Log(shortest) - 1e-9, Math.Log(window));
            best = Excess(low) >= 0 ? shortest : Excess(high) <= 0 ? window : Math.Exp(Root.Between(Excess, low, high));
        }

        return best < ScreeningRoutine.ShortestInterval
            ? Estimate.Undefined(UndefinedReason.TooLarge)
            : Estimate.Point(Math.Min(best, window), s == 1 ? SquareRootMethod : StationaryMethod);
    }

    /// <summary>The gain per person-day after costs at the best interval.</summary>
    /// <param name="stakes">What is at stake.</param>
    /// <returns>0 or more; undefined where the best interval is.</returns>
    public static Estimate NetAtBest(ScreeningStakes stakes)
    {
        var best = Of(stakes);
        return best.Value is { } days ? Estimate.Point(Math.Max(NetPerPersonDay(stakes, days), 0), best.Method!) : best;
    }

    /// <summary>The rule of thumb for an imperfect test and an interval much shorter than the window.</summary>
    /// <param name="stakes">What is at stake.</param>
    /// <returns>
    /// sqrt(C/(lambda v (1/s - 1/2))), days; bad near the incidence at which screening begins to pay. Undefined where <see cref="Of"/> is.
    /// </returns>
    public static Estimate ShortIntervalApproximation(ScreeningStakes stakes)
    {
        var best = Of(stakes);
        return best.IsDefined
            ? Estimate.Point(Short(stakes, stakes.CostOfScreen / (stakes.Incidence * stakes.ValuePerInfectiousDay)), "short-interval-approximation")
            : best;
    }

    /// <summary>The incidence up to which no interval gains anything.</summary>
    /// <param name="stakes">What is at stake; its incidence is not used.</param>
    /// <returns>Infections per person-day, 2 C/(s v W²); undefined where it exceeds 1, so that no interval pays at any incidence.</returns>
    public static Estimate BreakEvenIncidence(ScreeningStakes stakes)
    {
        ArgumentNullException.ThrowIfNull(stakes);
        if (stakes.CostOfScreen == 0 && Gain(stakes) == 0 && stakes.ValuePerInfectiousDay == 0) return Estimate.Undefined(UndefinedReason.NothingAtStake);
        var incidence = 2 * stakes.CostOfScreen / (stakes.Sensitivity * stakes.ValuePerInfectiousDay * stakes.WindowDays * stakes.WindowDays);
        return incidence <= 1 ? Estimate.Point(incidence, ScreeningYield.Method) : Estimate.Undefined(UndefinedReason.NoIntervalPays);
    }

    /// <summary>Where M(T) = T² (x G(x) - H(x)) is nearest its bound T² (1/s - 1/2), the marginal gain meets the cost there.</summary>
    private static double Short(ScreeningStakes stakes, double ratio) => Math.Sqrt(ratio / ((1 / stakes.Sensitivity) - 0.5));

    private static double Gain(ScreeningStakes stakes) => stakes.Incidence * stakes.ValuePerInfectiousDay * stakes.Sensitivity * stakes.WindowDays * stakes.WindowDays;

    private static bool Pays(ScreeningStakes stakes) => Gain(stakes) > 2 * stakes.CostOfScreen;
}
