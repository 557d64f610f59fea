namespace ScreenStats.Records.PersonLog.Sums;

/// <summary>Sums over people of trials n, events x and their products.</summary>
internal struct MeasureSums
{
    public long Persons;
    public long WithEvent;
    public long Trials;
    public long Events;
    public long TrialsSquared;
    public long TrialsTimesEvents;
    public long EventsSquared;

    public void Add(long n, long x)
    {
        if (n == 0) return;
        Persons++;
        if (x > 0) WithEvent++;
        Trials += n;
        Events += x;
        TrialsSquared += n * n;
        TrialsTimesEvents += n * x;
        EventsSquared += x * x;
    }

    /// <summary>Adds so many people of the same counts, or takes them off.</summary>
    public void Add(long n, long x, long people)
    {
        if (n == 0) return;
        Persons += people;
        if (x > 0) WithEvent += people;
        Trials += n * people;
        Events += x * people;
        TrialsSquared += n * n * people;
        TrialsTimesEvents += n * x * people;
        EventsSquared += x * x * people;
    }

    public void Add(in MeasureSums other)
    {
        Persons += other.Persons;
        WithEvent += other.WithEvent;
        Trials += other.Trials;
        Events += other.Events;
        TrialsSquared += other.TrialsSquared;
        TrialsTimesEvents += other.TrialsTimesEvents;
        EventsSquared += other.EventsSquared;
    }
}
