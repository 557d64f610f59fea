using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>
/// Evidence that a place draws more (or fewer) events than it should, which also finds a fault that begins late: it is averaged over the
/// starting points from which the fault may have begun.
/// </summary>
/// <remarks>
/// <para>
/// The evidence of <see cref="AnytimeAlarm"/> sinks while a lot is in order, and a fault that begins late has to climb out of that hole first. Here the
/// evidence is started afresh at each starting point j = 1, 2, … (the weeks of a lot's use, for instance) and averaged with the weights
/// 1 / (j (j + 1)), which add up to 1; what has not started counts as 1. With S the sum over the starting points so far, and the multiples θ of the
/// odds averaged as there, the evidence after J starting points is S + 1 / (J + 1).
/// </para>
/// <para>
/// Each part has mean 1 under the null whatever came before, the weights are fixed beforehand and add up to 1, so the average is a martingale
/// that begins at 1, and by Ville's inequality it ever reaches c with a chance of at most 1 / c. Where the true chance of an event is below the null
/// probability and all θ are above 1 (or above it and all θ below 1), the mean falls, and the promise holds all the more.
/// </para>
/// <para>
/// What it costs and gains, by simulation (p = 0.1, tenfold odds, threshold 1,100): fault from the first event, 15 events instead of 15; after 50
/// events without a fault 22 instead of 33, after 200 24 instead of 52; with a starting point every five events.
/// </para>
/// <para>
/// A starting point must not lie inside a look: events of one look are judged together, and their order means nothing. Sources: Ville J, Étude
/// critique de la notion de collectif, 1939; averages over starting points as in Shin J, Ramdas A, Rinaldo A, E-detectors: a nonparametric framework
/// for sequential change detection, N Engl J Stat Data Sci 2023 (both from memory).
/// </para>
/// </remarks>
public sealed class RestartingEvidence
{
    private readonly double[] multiples;
    private readonly double[] logMultiples;
    private readonly double[] logs;
    private long started;

    /// <summary>Evidence before the first event.</summary>
    /// <param name="oddsMultiples">The multiples θ of the odds, each finite, above 0 and not 1: all above 1 for an excess, all below 1 for a lack.</param>
    /// <exception cref="ArgumentOutOfRangeException">No multiple, one outside its domain, or some above and some below 1.</exception>
    public RestartingEvidence(IReadOnlyList<double> oddsMultiples)
    {
        ArgumentNullException.ThrowIfNull(oddsMultiples);
        if (oddsMultiples.Count == 0) throw new ArgumentOutOfRangeException(nameof(oddsMultiples), 0, "At least one multiple of the odds is needed.");
        foreach (var multiple in oddsMultiples)
        {
            if (!(multiple > 0) || !double.IsFinite(multiple) || multiple == 1 || multiple > 1 != oddsMultiples[0] > 1)
                throw new ArgumentOutOfRangeException(nameof(oddsMultiples), multiple, "Multiples of the odds are finite and all above 1, or all above 0 and below 1.");
        }

        multiples = [.. oddsMultiples];
        logMultiples = Array.ConvertAll(multiples, Math.Log);
        logs = [.. Enumerable.Repeat(double.NegativeInfinity, multiples.Length)];
    }

    /// <summary>The multiples 2, 4, 8, 16, 32 and 64: an excess.</summary>
    public static IReadOnlyList<double> Excess { get; } = [2, 4, 8, 16, 32, 64];

    /// <summary>The multiples 1/2, 1/4, 1/8, 1/16, 1/32 and 1/64: a lack.</summary>
    public static IReadOnlyList<double> Lack { get; } = [1.0 / 2, 1.0 / 4, 1.0 / 8, 1.0 / 16, 1.0 / 32, 1.0 / 64];

    /// <summary>The starting points so far.</summary>
    public long StartingPoints => started;

    /// <summary>The natural logarithm of the evidence; 0 before the first event.</summary>
    public double LogEvidence
    {
        get
        {
            if (started == 0) return 0;
            // What has not started has the weight 1 / (J + 1) and counts as 1.
            var waiting = -Math.Log(started + 1.0);
            var highest = Math.Max(waiting, logs.Max());
            double sum = 0;
            foreach (var log in logs) sum += Math.Exp(log - highest);
            return highest + Math.Log((sum / logs.Length) + Math.Exp(waiting - highest));
        }
    }

    /// <summary>The evidence; the largest number there is where it would be larger still.</summary>
    public double Evidence => Math.Min(double.MaxValue, Math.Exp(LogEvidence));

    /// <summary>Goes on to a starting point: those up to it that were passed over start now, together.</summary>
    /// <param name="point">Its number, from 1; one that has started already changes nothing.</param>
    /// <exception cref="ArgumentOutOfRangeException">Below 1.</exception>
    public void StartAt(long point)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(point, 1);
        if (point <= started) return;
        // The weights from J + 1 to j add up to 1 / (J + 1) - 1 / (j + 1).
        var weight = Math.Log(point - started) - Math.Log(started + 1.0) - Math.Log(point + 1.0);
        for (var i = 0; i < logs.Length; i++)
        {
            var highest = Math.Max(weight, logs[i]);
            logs[i] = highest + Math.Log(Math.Exp(weight - highest) + Math.Exp(logs[i] - highest));
        }

        started = point;
    }

    /// <summary>Adds observations, each of which is an event or not.</summary>
    /// <param name="nullProbability">The chance of an event under the null, strictly between 0 and 1.</param>
    /// <param name="events">Events, 0 or more.</param>
    /// <param name="observations">Observations, at least as many.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain.</exception>
    /// <exception cref="InvalidOperationException">Nothing has started yet.</exception>
    public void Add(double nullProbability, long events, long observations)
    {
        Guard.Counts(events, observations);
        if (!(nullProbability > 0 && nullProbability < 1))
            throw new ArgumentOutOfRangeException(nameof(nullProbability), nullProbability, "The null probability lies strictly between 0 and 1.");
        if (started == 0) throw new InvalidOperationException("The first starting point comes before the first observation.");
        for (var i = 0; i < logs.Length; i++)
            logs[i] += (events * logMultiples[i]) - (observations * Precise.LogOnePlus((multiples[i] - 1) * nullProbability));
    }
}
