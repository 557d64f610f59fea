using System.Globalization;
using System.Text;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>Days and minutes of the program as text. Minute 0 is midnight of the first day.</summary>
internal sealed class Calendar
{
    public const int MinutesPerDay = 1_440;
    private const int Margin = 400;
    private readonly byte[][] days;

    public Calendar(DateOnly firstDay, int dayCount)
    {
        days = new byte[dayCount + (2 * Margin)][];
        for (var index = 0; index < days.Length; index++)
        {
            days[index] = Encoding.ASCII.GetBytes(firstDay.AddDays(index - Margin).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        }
    }

    /// <summary>A date and time as a whole field.</summary>
    public void Moment(ExportWriter writer, int minute)
    {
        var day = Math.DivRem(minute + (Margin * MinutesPerDay), MinutesPerDay, out var ofDay);
        writer.Add(days[day]);
        writer.Append("T"u8);
        writer.TwoDigits(ofDay / 60);
        writer.Append(":"u8);
        writer.TwoDigits(ofDay % 60);
    }
}
