using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Checks;

/// <summary>What the checks of conduct and sense find in a person's counted runs. One for each thread.</summary>
/// <param name="firstDay">First day of the program.</param>
/// <param name="lastDay">Its last day.</param>
/// <param name="lastSecond">Last second that is not in the future, as <see cref="LogEntry.Seconds"/>.</param>
/// <param name="nearestFrom">Fewest minutes to a specimen that are kept.</param>
/// <param name="nearestTo">Most minutes to a specimen that are kept.</param>
internal sealed class PersonChecks(int firstDay, int lastDay, uint lastSecond, int nearestFrom, int nearestTo)
{
    /// <summary>First day of the program.</summary>
    public int FirstDay => firstDay;

    /// <summary>Its last day.</summary>
    public int LastDay => lastDay;

    /// <summary>Last second that is not in the future.</summary>
    public uint LastSecond => lastSecond;

    public FirstRecords BeforeProgram { get; } = new();

    public FirstRecords InTheFuture { get; } = new();

    public FirstRecords TwoSites { get; } = new();

    public FirstRecords WithinMinutes { get; } = new();

    public FirstRecords Isolated { get; } = new();

    /// <summary>Rows of one person and second, the earlier first.</summary>
    public List<(uint First, uint Second)> AtOneTime { get; } = [];

    /// <summary>Minutes from runs due for follow-up to the nearest specimen of the person.</summary>
    public List<int> MinutesToNearest { get; } = [];

    /// <summary>Looks at a person's counted runs, in order of local days.</summary>
    public void Take(ReadOnlySpan<CountedRun> runs, ShapeInfo[] shapes)
    {
        for (var i = 0; i < runs.Length; i++)
        {
            ref readonly var run = ref runs[i];
            if (run.DayNumber < firstDay) BeforeProgram.Add(run.Record);
            else if (run.DayNumber > lastDay || run.Seconds > lastSecond) InTheFuture.Add(run.Record);
            if (i > 0) TakePair(runs[i - 1], run, shapes);
        }
    }

    /// <summary>Looks at some of a person's counted runs, whole days of them: only at how each follows the one before.</summary>
    public void TakePairs(ReadOnlySpan<CountedRun> runs, ShapeInfo[] shapes)
    {
        for (var i = 1; i < runs.Length; i++) TakePair(runs[i - 1], runs[i], shapes);
    }

    /// <summary>Keeps how far the nearest specimen is from a run that is due for follow-up.</summary>
    public void TakeDue(Moment run, ReadOnlySpan<SpecimenEvent> specimens)
    {
        if (run.DateOnly) return;
        int? nearest = null;
        foreach (ref readonly var specimen in specimens)
        {
            if (specimen.Time.DateOnly || specimen.Reason == SpecimenReason.Audit) continue;
            var minutes = (specimen.Time.Instant - run.Instant) / 60;
            if (minutes >= nearestFrom && minutes <= nearestTo && (nearest is not { } known || Math.Abs(minutes) < Math.Abs(known))) nearest = (int)minutes;
        }

        if (nearest is { } found) MinutesToNearest.Add(found);
    }

    public void AddAll(PersonChecks other)
    {
        BeforeProgram.AddAll(other.BeforeProgram);
        InTheFuture.AddAll(other.InTheFuture);
        TwoSites.AddAll(other.TwoSites);
        WithinMinutes.AddAll(other.WithinMinutes);
        Isolated.AddAll(other.Isolated);
        AtOneTime.AddRange(other.AtOneTime);
        MinutesToNearest.AddRange(other.MinutesToNearest);
    }

    private void TakePair(in CountedRun earlier, in CountedRun run, ShapeInfo[] shapes)
    {
        var sameDay = run.DayNumber == earlier.DayNumber;
        if (!sameDay && run.Seconds - earlier.Seconds >= ConductRule.FewestMinutesBetweenResults * 60) return;
        ref readonly var shape = ref shapes[run.Code];
        ref readonly var shapeBefore = ref shapes[earlier.Code];
        if (sameDay && shape.Site != shapeBefore.Site) TwoSites.Add(run.Record);
        if (run.Seconds == earlier.Seconds && !shape.DateOnly && !shapeBefore.DateOnly)
        {
            AtOneTime.Add((Math.Min(run.Record, earlier.Record), Math.Max(run.Record, earlier.Record)));
        }
        else if (ConductRule.IsWithinMinutes(Event(earlier, shapeBefore), Event(run, shape))) WithinMinutes.Add(run.Record);
    }

    private static RunEvent Event(in CountedRun run, in ShapeInfo shape) =>
        new(new(run.Seconds + RunCounter.EarliestInstant, shape.OffsetMinutes, shape.DateOnly), shape.Outcome);
}
