using System.Collections.Immutable;

namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>What schedules of screens achieve among people whose infections differ, by simulation of their viral loads.</summary>
public static class ViralLoadYield
{
    private const int BlockSize = 512;

    /// <summary>The figures of several schedules among the same simulated people.</summary>
    /// <param name="courses">How infections run.</param>
    /// <param name="schedules">The schedules, one result each.</param>
    /// <param name="rules">Delays, what isolates, and how misses repeat.</param>
    /// <param name="settings">How many people, how exactly, and from which seed.</param>
    /// <returns>One outcome for each schedule, in their order.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static ImmutableArray<SimulatedOutcome> Simulate(
        ViralLoadCourses courses, IReadOnlyList<ScreeningSchedule> schedules, ScreeningRules rules, ViralLoadSettings settings)
    {
        ArgumentNullException.ThrowIfNull(courses);
        ArgumentNullException.ThrowIfNull(schedules);
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(settings);
        courses.Check();
        rules.Check();
        settings.Check();
        foreach (var schedule in schedules) schedule.Check();
        var wholes = settings.Phases is null ? schedules.Select(Whole).ToArray() : [];
        var phases = settings.Phases is { } number ? schedules.Select((schedule, place) => new SomePhases(schedule, rules, courses, number, settings.Seed, place)).ToArray() : [];

        var blocks = new ViralLoadSums[(settings.People + BlockSize - 1) / BlockSize][];
        Parallel.For(0, blocks.Length, new ParallelOptions { MaxDegreeOfParallelism = settings.Threads ?? -1 }, block =>
        {
            var sums = new ViralLoadSums[schedules.Count];
            for (var person = block * BlockSize; person < Math.Min((block + 1) * BlockSize, settings.People); person++)
            {
                var draw = IllnessDraw.Of(courses, settings.Seed, person);
                var illness = new Illness(courses, draw);
                for (var i = 0; i < wholes.Length; i++) sums[i].Add(illness, wholes[i].Of(illness), rules.IsolationDays ?? 0);
                for (var i = 0; i < phases.Length; i++) sums[i].Add(illness, phases[i].Of(illness, draw.Phase, person), rules.IsolationDays ?? 0);
            }

            blocks[block] = sums;
        });

        // Added block by block in their order, so that no digit depends on who computed what.
        var totals = new ViralLoadSums[schedules.Count];
        foreach (var block in blocks)
        {
            for (var i = 0; i < totals.Length; i++) totals[i].Add(block[i]);
        }

        return [.. totals.Select(sum => sum.Outcome(settings.People, rules.IsolationDays is not null))];

        WholePhase Whole(ScreeningSchedule schedule) =>
            new(FirstPositiveDensity.Of(schedule, rules, courses.SensitivityAboveLimit, courses.LongestDetectable), rules.DaysToIsolation, rules.IsolationDays);
    }
}
