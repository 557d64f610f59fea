using ScreenStats.Counting.Cubes;

namespace ScreenStats.Records.PersonLog;

/// <summary>The counts of one person in one scope.</summary>
internal struct PersonCounts
{
    public int Runs;
    public int Unusable;
    public int Positives;
    public int Confirmed;
    public int Refuted;

    public void Add(Outcome outcome, FollowUp followUp)
    {
        Runs++;
        if (outcome == Outcome.Negative) return;
        if (outcome != Outcome.Positive)
        {
            Unusable++;
            return;
        }

        Positives++;
        if (followUp == FollowUp.Confirmed) Confirmed++;
        if (followUp == FollowUp.Refuted) Refuted++;
    }
}

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

/// <summary>The sums of the four measures in one scope.</summary>
internal struct ScopeSums
{
    // People whose runs are all negative: the same trials and no events in three of the measures.
    private long negativePersons;
    private long negativeTrials;
    private long negativeSquared;
    private MeasureSums positivity;
    private MeasureSums invalidRuns;
    private MeasureSums predictiveValue;
    private MeasureSums refuted;

    public void Add(in PersonCounts person)
    {
        long runs = person.Runs;
        if ((person.Positives | person.Unusable) == 0)
        {
            negativePersons++;
            negativeTrials += runs;
            negativeSquared += runs * runs;
            return;
        }

        var valid = runs - person.Unusable;
        positivity.Add(valid, person.Positives);
        invalidRuns.Add(runs, person.Unusable);
        predictiveValue.Add(person.Confirmed + person.Refuted, person.Confirmed);
        refuted.Add(valid, person.Refuted);
    }

    public void Add(in ScopeSums other)
    {
        negativePersons += other.negativePersons;
        negativeTrials += other.negativeTrials;
        negativeSquared += other.negativeSquared;
        positivity.Add(other.positivity);
        invalidRuns.Add(other.invalidRuns);
        predictiveValue.Add(other.predictiveValue);
        refuted.Add(other.refuted);
    }

    public readonly MeasureSums Of(PersonMeasure measure)
    {
        if (measure == PersonMeasure.PredictiveValue) return predictiveValue;
        var sums = measure switch
        {
            PersonMeasure.Positivity => positivity,
            PersonMeasure.InvalidRuns => invalidRuns,
            _ => refuted,
        };
        sums.Persons += negativePersons;
        sums.Trials += negativeTrials;
        sums.TrialsSquared += negativeSquared;
        return sums;
    }
}
