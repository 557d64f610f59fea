using System.Text.Json;
using ScreenStats.Counting.Programs.Cadence;

namespace ScreenStats.Counting.Programs.Reading.Cadence;

/// <summary>Reads the course of an infection.</summary>
internal static class CourseReader
{
    /// <summary>The most days since infection: ten years, for slow conditions.</summary>
    public const double MostDays = 3660;

    private static readonly (string Key, CourseKind Kind)[] Own =
    [
        ("detectable", CourseKind.Windows), ("infectious", CourseKind.Windows), ("file", CourseKind.ByDay),
        ("detectionLimit", CourseKind.ViralLoad), ("infectiousness", CourseKind.ViralLoad),
    ];

    public static CourseSettings? Read(JsonItem? item, ProgramProblems problems)
    {
        if (item is null) return null;
        var section = new ProgramSection(item, CadenceKeys.Course, "key", problems);
        if (item.Kind != JsonValueKind.Object) return null;
        if (section.Find("kind") is null)
        {
            problems.WrongValue(item, "given with its \"kind\": \"windows\", \"by-day\" or \"viral-load\"");
            return null;
        }

        if (section.Word("kind", CadenceKeys.CourseKinds) is not { } word) return null;
        var kind = (CourseKind)word;
        foreach (var (key, owner) in Own)
        {
            if (owner != kind && section.Find(key) is { } stray)
                problems.WrongValue(stray, $"left out: it belongs to a course of kind \"{CadenceKeys.CourseKinds[(int)owner]}\"");
        }

        var needed = Own.First(own => own.Kind == kind).Key;
        if (section.Find(needed) is null) problems.WrongValue(item, $"given with \"{needed}\", as its kind is \"{CadenceKeys.CourseKinds[word]}\"");
        var detectable = kind == CourseKind.Windows ? Window(section, "detectable", problems) : null;
        var infectious = kind == CourseKind.Windows ? Window(section, "infectious", problems) : null;
        return new CourseSettings
        {
            Kind = kind,
            DetectableFrom = detectable?.From,
            DetectableTo = detectable?.To,
            InfectiousFrom = infectious?.From,
            InfectiousTo = infectious?.To,
            File = kind == CourseKind.ByDay ? section.Text("file") : null,
            DetectionLimit = kind == CourseKind.ViralLoad
                ? RangeReader.Number(section, "detectionLimit", 0, 12, "the logarithm to base 10 of the least viral load that a screen finds, from 0 to 12, such as 5", problems)
                : null,
            Infectiousness = kind == CourseKind.ViralLoad ? (InfectiousnessKind?)section.Word("infectiousness", CadenceKeys.Infectiousness) : null,
            Source = section.Text("source") ?? "",
            Symptoms = Symptoms(section.Find("symptoms"), problems),
        };
    }

    private static (StatedRange From, StatedRange To)? Window(ProgramSection course, string name, ProgramProblems problems)
    {
        if (course.Find(name) is not { } item) return null;
        var section = new ProgramSection(item, CadenceKeys.Window, "key", problems);
        if (item.Kind != JsonValueKind.Object) return null;
        if (section.Find("from") is null || section.Find("to") is null)
        {
            problems.WrongValue(item, "given with \"from\" and \"to\", in days since infection, such as { \"from\": 3, \"to\": 10 }");
            return null;
        }

        var from = RangeReader.Days(section, "from", MostDays, problems);
        var to = RangeReader.Days(section, "to", MostDays, problems);
        if (from is null || to is null) return null;
        if (from.Value < to.Value) return (from, to);
        problems.WrongValue(section.Find("to")!, "later than \"from\"");
        return null;
    }

    private static SymptomSettings? Symptoms(JsonItem? item, ProgramProblems problems)
    {
        if (item is null) return null;
        var section = new ProgramSection(item, CadenceKeys.Symptoms, "key", problems);
        if (item.Kind != JsonValueKind.Object) return null;
        if (section.Find("share") is null || section.Find("onsetDays") is null)
        {
            problems.WrongValue(item, "given with \"share\", the share of infected people who get symptoms, and \"onsetDays\", the median days from infection to them");
        }

        var share = RangeReader.Share(section, "share", problems);
        var onset = RangeReader.Above(section, "onsetDays", 0, MostDays, "a number of days above 0, to 3660", problems);
        var spread = RangeReader.Number(section, "spread", 0, 2, "the standard deviation of the logarithm of the days to symptoms, from 0 to 2", problems);
        var isolate = RangeReader.Share(section, "isolate", problems);
        return share is null || onset is null ? null : new SymptomSettings { Share = share, OnsetDays = onset, Spread = spread, Isolate = isolate };
    }
}
