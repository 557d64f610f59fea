using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Terminal;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Records.Courses;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Cli.Commands.Cadence;

/// <summary>Reads what stands on the line of <c>cadence</c>.</summary>
internal static class CadenceFigures
{
    public static ImmutableArray<CadenceWay> Every(string name, string text)
    {
        var intervals = Figures.List(name, text);
        foreach (var days in intervals)
        {
            if (days is not (>= ScreeningRoutine.ShortestInterval and <= 1e9))
                throw new UsageException($"{name}: an interval must be above 0 and at most a billion days; leave it out to see no screening.");
        }

        if (intervals.Length > 1000) throw new UsageException($"{name}: at most 1,000 intervals are compared at once.");
        return [.. intervals.Select(CadenceWay.Every)];
    }

    public static CadenceWay Weekdays(string name, string text)
    {
        var days = ImmutableArray.CreateBuilder<DayOfWeek>();
        foreach (var word in text.Split(','))
        {
            var found = Enum.GetValues<DayOfWeek>().Where(day => string.Equals(day.ToString(), word, StringComparison.OrdinalIgnoreCase)).ToList();
            if (found.Count == 0) throw new UsageException($"{name}: \"{word}\" is not a day of the week; write them such as Monday,Thursday.");
            if (days.Contains(found[0])) throw new UsageException($"{name}: {found[0]} stands there twice.");
            days.Add(found[0]);
        }

        return CadenceWay.On([.. days.OrderBy(day => ((int)day + 6) % 7)]);
    }

    public static Interval Span(string name, string text, string example)
    {
        var ends = Figures.List(name, text);
        if (ends.Length != 2) throw new UsageException($"{name}: \"{text}\" is not two days; write the first and the last day since infection such as {example}.");
        if (ends[1] < ends[0]) throw new UsageException($"{name}: {text} ends before it begins; write the earlier day first, such as {example}.");
        return new Interval(Days(name, ends[0]), Days(name, ends[1]));
    }

    public static double Days(string name, double value) =>
        value is >= 0 and <= 1e9 ? value : throw new UsageException($"{name} must be days from 0 to a billion.");

    public static double Within(string name, string text, double least, double most, bool open)
    {
        var value = Figures.Finite(name, text);
        return value <= most && (open ? value > least : value >= least)
            ? value
            : throw new UsageException(string.Create(CultureInfo.InvariantCulture, $"{name} must be a number {(open ? "above" : "from")} {least} to {most}."));
    }

    public static double BelowOne(string name, string text)
    {
        var value = Figures.Finite(name, text);
        return value is >= 0 and < 1 ? value : throw new UsageException($"{name} must be a correlation from 0 to below 1, such as 0.3.");
    }

    public static double Known(string name, ProbabilityFigure figure) =>
        figure.Value ?? throw new UsageException($"{name}: 0/0 is no share; write a fraction such as 0.85.");

    public static SymptomOnset Symptoms(string name, string text)
    {
        var figures = Figures.List(name, text);
        if (figures.Length is < 2 or > 4 || figures[0] is < 0 or > 1 || figures[1] is not (> 0 and <= InfectionCourse.LongestDays)
            || (figures.Length > 2 && figures[2] is < 0 or > 2) || (figures.Length > 3 && figures[3] is < 0 or > 1))
        {
            throw new UsageException($"{name}: \"{text}\" does not fit; write the share with symptoms and the median days to them, such as 0.4,5, and if wanted the standard deviation of the logarithm of these days (0 to 2) and the share who stay away then, such as 0.4,5,0.3,0.9.");
        }

        return new SymptomOnset(figures[0], figures[1], figures.Length > 2 ? figures[2] : 0, figures.Length > 3 ? figures[3] : 1);
    }

    public static CourseKind? Course(string[]? words, RunnerEnvironment environment, out string? file, out ImmutableArray<CourseDay> days)
    {
        file = null;
        days = [];
        if (words is null || words.Length == 0) return null;
        switch (words)
        {
            case ["windows"]:
                return CourseKind.Windows;
            case ["viral-load"]:
                return CourseKind.ViralLoad;
            case ["by-day", var path]:
                file = Path.GetFileName(path);
                days = Points(CourseFile.Read(environment.PathOf(path)));
                return CourseKind.ByDay;
            case ["by-day"]:
                throw new UsageException("--course by-day needs a file behind it, such as --course by-day course.csv (columns day, detection and infectiousness).");
            default:
                throw new UsageException($"--course: \"{string.Join(' ', words)}\" is not known; write windows, by-day FILE or viral-load.");
        }
    }

    public static ImmutableArray<CourseDay> Points(IEnumerable<StatedCourseDay> days) => [.. days.Select(day => new CourseDay(day.AgeDays, day.Detection, day.Infectiousness))];
}
