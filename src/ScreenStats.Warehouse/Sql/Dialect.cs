using System.Globalization;
using System.Text;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Warehouse.Sql;

/// <summary>
/// Where the engines differ in how something is written. What is written for PostgreSQL can be left to shards: only immutable functions and
/// operators of its own, no IS TRUE, COALESCE or NULLIF, which postgres_fdw of version 15 does not send, and no EXTRACT, whose word counts as a
/// text of another collation.
/// </summary>
internal abstract class Dialect
{
    /// <summary>Whole seconds since 2000-01-01T00:00:00 UTC of an instant, cut off towards the past.</summary>
    public abstract string Seconds(string time);

    /// <summary>True where fewer whole seconds lie between two instants than so many; negative where the first comes later.</summary>
    public abstract string IsLess(string from, string to, long seconds);

    /// <summary>True where an instant lies behind so many whole seconds since 2000-01-01T00:00:00 UTC.</summary>
    public abstract string IsAfter(string time, long instant);

    /// <summary>What tells the minute of the hour of an instant, in UTC.</summary>
    public abstract string MinuteOfHour(string time);

    /// <summary>The seconds behind the hour in that.</summary>
    public abstract string SecondsOf(string minute);

    /// <summary>Bytes of a text.</summary>
    public abstract string Bytes(string text);

    /// <summary>True where a value is one of a long list.</summary>
    public abstract string In(string value, int parameter, string type);

    /// <summary>True where a value is one of a short list.</summary>
    public abstract string Among(string value, int parameter);

    /// <summary>Whole days since 2000-01-01 of a date.</summary>
    public static string Day(string date) => $"({date} - DATE '2000-01-01')";

    /// <summary>The same of the Monday of its week; 1900-01-01 was one.</summary>
    public static string Week(string date) => $"({date} - DATE '2000-01-01' - (({date} - DATE '1900-01-01') % 7))";

    /// <summary>The same of the first of its month, told by the months that there are.</summary>
    public static string Month(string date, int firstDay, int lastDay)
    {
        var text = new StringBuilder("CASE");
        for (var month = ReportPeriod.Month.Start(Moment.DayOf(firstDay)); month <= Moment.DayOf(lastDay); month = month.AddMonths(1))
        {
            text.Append(CultureInfo.InvariantCulture, $" WHEN {date} < DATE '{month.AddMonths(1):yyyy-MM-dd}' THEN {Moment.On(month).DayNumber}");
        }

        return text.Append(" END").ToString();
    }
}
