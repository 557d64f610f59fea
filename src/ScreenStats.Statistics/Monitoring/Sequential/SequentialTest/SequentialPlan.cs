using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Sequential.SequentialTest;

/// <summary>Wald's sequential test of a claimed rate: two parallel lines for the number of events d against the number of observations n.</summary>
/// <remarks>
/// Accept at d ≤ s n - h1, reject at d ≥ s n + h2. With g = ln(p2 (1 - p1) / (p1 (1 - p2))): h1 = ln((1 - α) / β) / g, h2 = ln((1 - β) / α) / g, s =
/// ln((1 - p1) / (1 - p2)) / g. Source: Wald A, Sequential Analysis, 1947, section 5.3 (from memory).
/// </remarks>
public sealed record SequentialPlan
{
    /// <summary>A plan.</summary>
    /// <param name="claimedRate">The claimed rate p1, in (0, 1).</param>
    /// <param name="unacceptableRate">The rate p2 that must not be accepted, above p1 and below 1.</param>
    /// <param name="falseRejection">The chance α of rejecting a lot that holds its claim, in (0, 1).</param>
    /// <param name="falseAcceptance">The chance β of accepting a lot at p2, in (0, 1); α + β is below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    public SequentialPlan(double claimedRate, double unacceptableRate, double falseRejection = 0.05, double falseAcceptance = 0.10)
    {
        if (!(claimedRate > 0 && claimedRate < 1)) throw new ArgumentOutOfRangeException(nameof(claimedRate), claimedRate, "The claimed rate lies strictly between 0 and 1.");
        if (!(unacceptableRate > claimedRate && unacceptableRate < 1))
            throw new ArgumentOutOfRangeException(nameof(unacceptableRate), unacceptableRate, "The unacceptable rate lies above the claimed rate and below 1.");
        if (!(falseRejection > 0 && falseRejection < 1))
            throw new ArgumentOutOfRangeException(nameof(falseRejection), falseRejection, "The chance of a false rejection lies strictly between 0 and 1.");
        if (!(falseAcceptance > 0 && falseRejection + falseAcceptance < 1))
            throw new ArgumentOutOfRangeException(nameof(falseAcceptance), falseAcceptance, "The chance of a false acceptance lies above 0, and below 1 together with that of a false rejection.");
        ClaimedRate = claimedRate;
        UnacceptableRate = unacceptableRate;
        FalseRejection = falseRejection;
        FalseAcceptance = falseAcceptance;
        var down = -Precise.LogOnePlus((claimedRate - unacceptableRate) / (1 - claimedRate));
        var odds = Math.Log(unacceptableRate / claimedRate) + down;
        AcceptanceIntercept = Math.Log((1 - falseRejection) / falseAcceptance) / odds;
        RejectionIntercept = Math.Log((1 - falseAcceptance) / falseRejection) / odds;
        Slope = down / odds;
    }

    /// <summary>The claimed rate p1.</summary>
    public double ClaimedRate { get; }

    /// <summary>The rate p2 that must not be accepted.</summary>
    public double UnacceptableRate { get; }

    /// <summary>The chance α of rejecting a lot that holds its claim, as asked.</summary>
    public double FalseRejection { get; }

    /// <summary>The chance β of accepting a lot at p2, as asked.</summary>
    public double FalseAcceptance { get; }

    /// <summary>h1.</summary>
    public double AcceptanceIntercept { get; }

    /// <summary>h2.</summary>
    public double RejectionIntercept { get; }

    /// <summary>s.</summary>
    public double Slope { get; }

    /// <summary>The fewest observations after which the lot can be accepted, without an event; null above 1e15.</summary>
    public long? FirstAcceptance => Math.Ceiling((AcceptanceIntercept / Slope) - 1e-9) is var first && first <= 1e15 ? (long)first : null;

    /// <summary>The most events with which the lot is accepted.</summary>
    /// <param name="observations">The number of observations, 0 or more.</param>
    /// <returns>The number; null where it cannot be accepted yet.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 0.</exception>
    public long? AcceptanceNumber(long observations)
    {
        Guard.NotNegative(observations);
        var number = Math.Floor((Slope * observations) - AcceptanceIntercept + 1e-9);
        return number < 0 ? null : (long)number;
    }

    /// <summary>The fewest events with which the lot is rejected; more than there are observations where it cannot be yet.</summary>
    /// <param name="observations">The number of observations, 0 or more.</param>
    /// <returns>The number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 0.</exception>
    public long RejectionNumber(long observations)
    {
        Guard.NotNegative(observations);
        return (long)Math.Ceiling((Slope * observations) + RejectionIntercept - 1e-9);
    }

    /// <summary>The decision after some observations, none having been made before.</summary>
    /// <param name="events">Events so far.</param>
    /// <param name="observations">Observations so far.</param>
    /// <returns>The decision.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Events below 0 or above the observations.</exception>
    public SequentialDecision Decide(long events, long observations)
    {
        Guard.Counts(events, observations);
        return events >= RejectionNumber(observations) ? SequentialDecision.Reject
            : events <= AcceptanceNumber(observations) ? SequentialDecision.Accept
            : SequentialDecision.Continue;
    }
}
