using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Alarms.Rules;

namespace ScreenStats.Evaluation.Alarms;

/// <summary>The alarms of a program day by day, as they would have come had they been run every day.</summary>
/// <remarks>
/// What is said of a day depends on nothing that was collected or reported later: exports that end with that day give the same. The pass over all days
/// and the question for one day are the same computation.
/// </remarks>
public static class AlarmReplay
{
    /// <summary>The alarms at the end of one day.</summary>
    /// <param name="tally">What was counted.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="day">The day; null for the one up to which the data are complete.</param>
    /// <returns>The alarms; null where nothing was counted and no day is given.</returns>
    public static AlarmsOfDay? At(Tally tally, ProgramSettings settings, DateOnly? day = null)
    {
        ArgumentNullException.ThrowIfNull(tally);
        ArgumentNullException.ThrowIfNull(settings);
        var engine = new AlarmEngine(tally, settings);
        if ((day ?? engine.Program.Last) is not { } asOf) return null;
        engine.AdvanceTo(asOf);
        return engine.At(asOf);
    }

    /// <summary>The alarms of every day, from the first counted run to the day up to which the data are complete.</summary>
    /// <param name="tally">What was counted.</param>
    /// <param name="settings">What the program file says.</param>
    /// <returns>One entry for each day, in order; none where nothing was counted.</returns>
    public static IEnumerable<AlarmsOfDay> Over(Tally tally, ProgramSettings settings)
    {
        ArgumentNullException.ThrowIfNull(tally);
        ArgumentNullException.ThrowIfNull(settings);
        return Days(new AlarmEngine(tally, settings));
    }

    /// <summary>Tells an engine every day and answers each.</summary>
    internal static IEnumerable<AlarmsOfDay> Days(AlarmEngine engine)
    {
        if (engine.Program is not { First: { } first, Last: { } last }) yield break;
        for (var day = first; day <= last; day = day.AddDays(1))
        {
            engine.AdvanceTo(day);
            yield return engine.At(day);
            if (day == DateOnly.MaxValue) yield break;
        }
    }
}
