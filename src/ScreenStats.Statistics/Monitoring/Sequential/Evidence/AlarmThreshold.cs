namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>How much evidence raises the alarm on a lot, so that the chance of any false alarm, over all lots and all time, is held.</summary>
public sealed record AlarmThreshold
{
    private AlarmThreshold(double log, double falseAlarmProbability, long lots)
    {
        LogEvidence = log;
        FalseAlarmProbability = falseAlarmProbability;
        Lots = lots;
    }

    /// <summary>The natural logarithm of the evidence from which the alarm is raised.</summary>
    public double LogEvidence { get; }

    /// <summary>The evidence from which the alarm is raised.</summary>
    public double Evidence => Math.Min(double.MaxValue, Math.Exp(LogEvidence));

    /// <summary>The largest chance of any false alarm on any lot, ever.</summary>
    public double FalseAlarmProbability { get; }

    /// <summary>The number of lots that share it; for <see cref="OfArrival"/> and <see cref="OfEvenArrival"/> the place of the lot in the order of arrival.</summary>
    public long Lots { get; }

    /// <summary>The threshold of each of a number of lots that was fixed beforehand.</summary>
    /// <param name="lots">The number of lots watched, 1 or more.</param>
    /// <param name="falseAlarmProbability">The largest chance of any false alarm, in (0, 1), for instance 0.01.</param>
    /// <returns>The number of lots over the chance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No lot, or a chance outside (0, 1).</exception>
    /// <remarks>
    /// By Ville's inequality the evidence of a faultless lot ever reaches c with a chance of at most 1 / c; over K lots the chances add up to at
    /// most K / c, whatever ties the lots together. The number must not grow with the data: where lots arrive one after another, take the number
    /// that will be watched, or <see cref="OfArrival"/>.
    /// </remarks>
    public static AlarmThreshold OfLots(long lots, double falseAlarmProbability)
    {
        Check(lots, falseAlarmProbability);
        return new AlarmThreshold(Math.Log(lots) - Math.Log(falseAlarmProbability), falseAlarmProbability, lots);
    }

    /// <summary>The threshold of the j-th lot to arrive, where nobody knows how many will follow.</summary>
    /// <param name="place">The place j of the lot in the order of arrival, 1 or more.</param>
    /// <param name="falseAlarmProbability">The largest chance of any false alarm, in (0, 1).</param>
    /// <returns>j (j + 1) over the chance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A place below 1, or a chance outside (0, 1).</exception>
    /// <remarks>1 / (j (j + 1)) adds up to 1 over all j, so the chance holds however many lots arrive, and a lot's threshold never changes.</remarks>
    public static AlarmThreshold OfArrival(long place, double falseAlarmProbability)
    {
        Check(place, falseAlarmProbability);
        return new AlarmThreshold(Math.Log(place) + Math.Log(place + 1.0) - Math.Log(falseAlarmProbability), falseAlarmProbability, place);
    }

    /// <summary>The threshold of the j-th lot to arrive, where nobody knows how many will follow but ten to sixty are to be expected.</summary>
    /// <param name="place">The place j of the lot in the order of arrival, 1 or more.</param>
    /// <param name="falseAlarmProbability">The largest chance of any false alarm, in (0, 1).</param>
    /// <returns>(j + 9) (j + 10) / 10 over the chance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A place below 1, or a chance outside (0, 1).</exception>
    /// <remarks>
    /// 10 / ((j + 9) (j + 10)) adds up to 1 over all j, as the shares of <see cref="OfArrival"/> do, but more evenly. At a chance of 0.01 the first lot's
    /// threshold is 1,100 instead of 200, the tenth's 3,800 instead of 11,000, the sixtieth's 48,300 instead of 366,000; thresholds that grow as
    /// K / chance with the number K of lots so far would hold the chance times 1 + 1/2 + … + 1/K only.
    /// </remarks>
    public static AlarmThreshold OfEvenArrival(long place, double falseAlarmProbability)
    {
        Check(place, falseAlarmProbability);
        return new AlarmThreshold(Math.Log(place + 9.0) + Math.Log(place + 10.0) - Math.Log(10) - Math.Log(falseAlarmProbability), falseAlarmProbability, place);
    }

    private static void Check(long lots, double falseAlarmProbability)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lots, 1);
        if (!(falseAlarmProbability > 0 && falseAlarmProbability < 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(falseAlarmProbability), falseAlarmProbability, "The chance of a false alarm lies strictly between 0 and 1, for instance 0.01.");
        }
    }
}
