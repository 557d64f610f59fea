using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Records.Formats;

namespace ScreenStats.Records.Courses;

/// <summary>Turns the lines of a course by day into figures; what is wrong is told without the text of a cell.</summary>
internal sealed class CourseLines
{
    private const int MostDays = 10_000;
    private const int MostProblems = 20;
    private const double LastDay = 3660;
    private const double MostInfectiousness = 1e12;
    private static readonly string[] Headings = ["day", "detection", "infectiousness"];
    private static readonly byte[] Delimiters = [(byte)',', (byte)';', (byte)'\t', (byte)'|'];

    private readonly string file;
    private readonly byte delimiter;
    private readonly List<Diagnostic> problems = [];

    private CourseLines(string file, byte delimiter)
    {
        this.file = file;
        this.delimiter = delimiter;
    }

    public static ImmutableArray<StatedCourseDay> Read(byte[] text, string file)
    {
        // Of all delimiters the one by which most headings are found; a comma where none are.
        var delimiter = Delimiters.MaxBy(one => Headings.Count(heading => First(text, one).Contains(heading, StringComparer.OrdinalIgnoreCase)));
        return new CourseLines(file, delimiter).Read(text);
    }

    private ImmutableArray<StatedCourseDay> Read(byte[] text)
    {
        using var records = new RecordSplitter(delimiter);
        records.Load(text, 0, text.Length);
        records.Next();
        var columns = Columns(records);
        var days = ImmutableArray.CreateBuilder<StatedCourseDay>();
        var lines = 0;
        var last = -1.0;
        var jumped = false;
        while (records.Next())
        {
            if (records.Fault.Malformed)
            {
                Problem(ReadingDiagnostics.UnclosedQuote, records.LineBreaksBefore + 1, "A quote is not closed, or text follows behind it. The figures need no quotes.");
                if (records.Fault.Spans) break;
                continue;
            }

            if (++lines > MostDays)
            {
                Problem(records, "The file has more than 10,000 lines; a course by day has one for each day.");
                break;
            }

            if (Day(records, columns, ref last, ref jumped) is { } day) days.Add(day);
        }

        if (problems.Count == 0 && days.Count < 2) Problem(ReadingDiagnostics.CourseUnusable, null, "A course by day needs at least two lines below the headings.");
        if (problems.Count == 0) return days.ToImmutable();
        if (problems.Count > MostProblems)
        {
            var more = problems.Count - MostProblems;
            problems.RemoveRange(MostProblems, more);
            Problem(ReadingDiagnostics.CourseUnusable, null, string.Create(CultureInfo.InvariantCulture, $"{more:N0} more problems like these are in the file."));
        }

        throw new UnusableDataException([.. problems]);
    }

    private int[] Columns(RecordSplitter records)
    {
        var found = Fields(records);
        var columns = new int[Headings.Length];
        for (var heading = 0; heading < Headings.Length; heading++)
        {
            var places = Enumerable.Range(0, found.Count).Where(at => string.Equals(found[at], Headings[heading], StringComparison.OrdinalIgnoreCase)).ToList();
            if (places.Count != 1)
            {
                Problem(records, places.Count == 0
                    ? $"There is no column \"{Headings[heading]}\". The first line must hold the headings day,detection,infectiousness."
                    : $"The column \"{Headings[heading]}\" is there twice. Remove one.");
            }

            columns[heading] = places.Count == 0 ? -1 : places[0];
        }

        if (problems.Count > 0) throw new UnusableDataException([.. problems]);
        return columns;
    }

    private StatedCourseDay? Day(RecordSplitter records, int[] columns, ref double last, ref bool jumped)
    {
        var day = Number(records.Field(columns[0]));
        var detection = Number(records.Field(columns[1]));
        var infectiousness = Number(records.Field(columns[2]));
        var good = Check(records, day is >= 0 and <= LastDay, "The day must be a number of days since infection from 0 to 3660.");
        if (good) good = Check(records, day >= last, "The day must not be before that of the line above.");
        if (good) good = Check(records, day > last || !jumped, "A day may stand on two lines, where the course jumps, and not on three.");
        if (day is >= 0 and <= LastDay)
        {
            jumped = day == last;
            last = Math.Max(last, day.Value);
        }

        good &= Check(records, detection is >= 0 and <= 1, detection is > 1 and <= 100
            ? "The detection must be a fraction from 0 to 1: for 80 percent write 0.8."
            : "The detection must be a fraction from 0 to 1, such as 0.8.");
        good &= Check(records, infectiousness is >= 0 and <= MostInfectiousness, "The infectiousness must be a number from 0 to 1e12; its unit does not matter.");
        return good ? new StatedCourseDay(day!.Value, detection!.Value, infectiousness!.Value) : null;
    }

    private bool Check(RecordSplitter records, bool good, string message)
    {
        if (!good) Problem(records, message);
        return good;
    }

    private double? Number(ReadOnlySpan<byte> field)
    {
        var text = Encoding.UTF8.GetString(field).Trim();
        if (delimiter != (byte)',' && text.Count(sign => sign == ',') == 1 && !text.Contains('.', StringComparison.Ordinal)) text = text.Replace(',', '.');
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
    }

    private static List<string> First(byte[] text, byte delimiter)
    {
        using var records = new RecordSplitter(delimiter);
        records.Load(text, 0, text.Length);
        return records.Next() ? Fields(records) : [];
    }

    private static List<string> Fields(RecordSplitter records)
    {
        var fields = new List<string>();
        for (var at = 0; at < records.FieldCount; at++) fields.Add(Encoding.UTF8.GetString(records.Field(at)).Trim());
        return fields;
    }

    private void Problem(RecordSplitter records, string message) => Problem(ReadingDiagnostics.CourseUnusable, records.LineBreaksBefore + 1, message);

    private void Problem(string code, long? line, string message) =>
        problems.Add(new Diagnostic(code, Severity.Error, file, line, "", message));
}
