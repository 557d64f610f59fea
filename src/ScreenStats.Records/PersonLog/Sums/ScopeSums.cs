using ScreenStats.Counting.Cubes;

namespace ScreenStats.Records.PersonLog.Sums;

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

    /// <summary>Adds so many people of the same counts, or takes them off.</summary>
    public void Add(in PersonCounts person, long people)
    {
        var valid = person.Runs - person.Unusable;
        positivity.Add(valid, person.Positives, people);
        invalidRuns.Add(person.Runs, person.Unusable, people);
        predictiveValue.Add(person.Confirmed + person.Refuted, person.Confirmed, people);
        refuted.Add(valid, person.Refuted, people);
    }

    /// <summary>Adds people whose runs are all negative, by their number, their runs and the squares of each one's runs, or takes them off.</summary>
    public void AddNegative(long persons, long runs, long squares)
    {
        negativePersons += persons;
        negativeTrials += runs;
        negativeSquared += squares;
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
