using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Checks;

/// <summary>The days that belong to the program, as far as the program file or the data say so.</summary>
/// <param name="First">First day of runs.</param>
/// <param name="Last">Last day of runs.</param>
/// <param name="FirstStated">True where the program file states the first day.</param>
/// <param name="LastInstant">The stated moment up to which the data are complete; null where none is stated.</param>
internal readonly record struct SpanOfProgram(int First, int Last, bool FirstStated, long? LastInstant)
{
    public static SpanOfProgram Of(IReadOnlyList<RunSink> sinks, ProgramSettings settings, StatedMoment? asOf, AsOf? complete)
    {
        var runs = new Dictionary<int, long>();
        foreach (var sink in sinks)
        {
            var (keys, counts) = sink.Screens.ToArrays();
            for (var i = 0; i < keys.Length; i++)
            {
                var day = Keys.DayNumber(keys[i]);
                runs[day] = runs.GetValueOrDefault(day) + counts[i];
            }
        }

        return Of(runs, settings, (asOf ?? settings.DataAsOf) is null ? null : complete?.Instant);
    }

    /// <summary>The same for the days of another export.</summary>
    public SpanOfProgram For(Dictionary<int, long> rows, ProgramSettings settings) => Of(rows, settings, LastInstant);

    /// <summary>Last second of <see cref="LogEntry.Seconds"/> that is not in the future.</summary>
    public uint LastSecond => LastInstant is not { } last ? uint.MaxValue
        : (uint)Math.Clamp(last - RunCounter.EarliestInstant, 0, uint.MaxValue);

    private static SpanOfProgram Of(Dictionary<int, long> rows, ProgramSettings settings, long? lastInstant)
    {
        var (first, last) = rows.Count == 0 ? (int.MinValue, int.MaxValue) : ProgramSpanRule.Of(InOrder(rows));
        var stated = settings.StartsOn is { } starts ? Moment.On(starts).DayNumber : (int?)null;
        return new(stated ?? first, lastInstant is null ? last : int.MaxValue, stated is not null, lastInstant);
    }

    private static List<(int Day, long Rows)> InOrder(Dictionary<int, long> rows)
    {
        var days = new List<int>(rows.Count);
        foreach (var (day, count) in rows)
        {
            if (count > 0) days.Add(day);
        }

        days.Sort();
        var found = new List<(int Day, long Rows)>(days.Count);
        foreach (var day in days) found.Add((day, rows[day]));
        return found;
    }
}
