using System.Text.Json;
using ScreenStats.Counting.Programs.Cadence;

namespace ScreenStats.Counting.Programs.Reading.Cadence;

/// <summary>Reads figures that are a number, or a value with its 95 % range.</summary>
internal static class RangeReader
{
    private const string OrRange = ", or { \"value\": ..., \"lower\": ..., \"upper\": ... } with its 95 % range";

    /// <summary>A share in [0, 1].</summary>
    public static StatedRange? Share(ProgramSection section, string name, ProgramProblems problems) =>
        Read(section, name, "a fraction from 0 to 1, such as 0.4", (inside, key) => inside.Share(key), problems);

    /// <summary>A number between two bounds, both included; the expected text says them in words.</summary>
    public static StatedRange? Number(ProgramSection section, string name, double least, double most, string expected, ProgramProblems problems) =>
        Read(section, name, expected, (inside, key) => inside.Number(key, least, most, expected), problems);

    /// <summary>As <see cref="Number"/>, but above the lower bound.</summary>
    public static StatedRange? Above(ProgramSection section, string name, double bound, double most, string expected, ProgramProblems problems) =>
        Number(section, name, Math.BitIncrement(bound), most, expected, problems);

    /// <summary>Days since infection, or from one thing to another.</summary>
    public static StatedRange? Days(ProgramSection section, string name, double most, ProgramProblems problems) =>
        Number(section, name, 0, most, FormattableString.Invariant($"a number of days from 0 to {most}"), problems);

    private static StatedRange? Read(ProgramSection section, string name, string expected, Func<ProgramSection, string, double?> figure, ProgramProblems problems)
    {
        if (section.Find(name) is not { } item) return null;
        switch (item.Kind)
        {
            case JsonValueKind.Number:
                return figure(section, name) is { } value ? new StatedRange(value) : null;
            case JsonValueKind.Object:
                var inside = new ProgramSection(item, CadenceKeys.Range, "key", problems);
                var source = inside.Text("source") ?? "";
                return AccuracyReader.WithLimits(inside, limitsNeeded: false, problems, figure) is { } limits
                    ? new StatedRange(limits.Value, limits.Lower, limits.Upper, source)
                    : null;
            default:
                problems.WrongValue(item, expected + OrRange);
                return null;
        }
    }
}
