using ScreenStats.Statistics.Monitoring.Sequential.Evidence;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>The evidence against one place: averaged over the weeks of its use as starting points, judged at the end of each day.</summary>
internal sealed class EvidenceTrack(DateOnly first, AlarmThreshold threshold, IReadOnlyList<double> multiples)
{
    private readonly RestartingEvidence evidence = new(multiples);
    private double lowest;
    private (long Events, long Observations, double Expected) atLowest;
    private bool touched;

    public long Events { get; private set; }

    public long Observations { get; private set; }

    /// <summary>Events expected: the sum of the null probabilities.</summary>
    public double Expected { get; private set; }

    public double LogEvidence { get; private set; }

    public double Evidence => Math.Min(double.MaxValue, Math.Exp(LogEvidence));

    public AlarmThreshold Threshold => threshold;

    /// <summary>The last day on which anything was added.</summary>
    public DateOnly? ChangedOn { get; private set; }

    /// <summary>The first day at whose end the evidence reached the threshold.</summary>
    public DateOnly? Alarm { get; private set; }

    /// <summary>The first day after the evidence was last at its lowest; null while it is.</summary>
    public DateOnly? RisingSince { get; private set; }

    public long EventsSince => Events - atLowest.Events;

    public long ObservationsSince => Observations - atLowest.Observations;

    public double ExpectedSince => Expected - atLowest.Expected;

    public void Add(DateOnly day, double nullProbability, long events, long observations)
    {
        evidence.StartAt(((day.DayNumber - first.DayNumber) / 7) + 1);
        evidence.Add(nullProbability, events, observations);
        Events += events;
        Observations += observations;
        Expected += nullProbability * observations;
        touched = true;
    }

    /// <summary>Judges the day, after all of it was added. Answers whether anything was added.</summary>
    public bool Close(DateOnly day)
    {
        if (!touched) return false;
        touched = false;
        ChangedOn = day;
        LogEvidence = evidence.LogEvidence;
        if (LogEvidence <= lowest)
        {
            (lowest, RisingSince) = (LogEvidence, null);
            atLowest = (Events, Observations, Expected);
        }
        else
        {
            RisingSince ??= day;
        }

        if (Alarm is null && LogEvidence >= threshold.LogEvidence) Alarm = day;
        return true;
    }
}
