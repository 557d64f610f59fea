using System.Globalization;
using System.Text.Json;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>Reads a sensitivity or specificity in its three ways of writing.</summary>
internal static class AccuracyReader
{
    private const string Ways = "counts such as \"61/97\", a fraction such as 0.93, or { \"value\": 0.93, \"lower\": 0.9, \"upper\": 0.95 }";

    public static StatedAccuracy? Read(ProgramSection section, string name, ProgramProblems problems)
    {
        if (section.Find(name) is not { } item) return null;
        switch (item.Kind)
        {
            case JsonValueKind.Number:
                return section.Share(name) is { } value ? new(value, null, null, null, null) : null;
            case JsonValueKind.String:
                return Counts(item, problems);
            case JsonValueKind.Object:
                var inside = new ProgramSection(item, ProgramKeys.Accuracy, "key", problems);
                return WithLimits(inside, limitsNeeded: true, problems) is { } limits
                    ? new(limits.Value, null, null, limits.Lower, limits.Upper)
                    : null;
            default:
                problems.WrongValue(item, Ways);
                return null;
        }
    }

    /// <summary>A value with its limits, in order; null, and a problem, where they do not fit.</summary>
    /// <remarks>Shares in [0, 1], unless another way of reading a figure is given.</remarks>
    public static (double Value, double? Lower, double? Upper)? WithLimits(
        ProgramSection section, bool limitsNeeded, ProgramProblems problems, Func<ProgramSection, string, double?>? figure = null)
    {
        var item = section.Item!;
        figure ??= static (inside, name) => inside.Share(name);
        var value = figure(section, "value");
        var lower = figure(section, "lower");
        var upper = figure(section, "upper");
        if (section.Find("value") is null)
        {
            problems.WrongValue(item, "given with a \"value\"");
            return null;
        }

        var limits = (section.Find("lower") is null ? 0 : 1) + (section.Find("upper") is null ? 0 : 1);
        if (limits == 1 || (limits == 0 && limitsNeeded))
        {
            problems.WrongValue(item, limitsNeeded
                ? "given with both \"lower\" and \"upper\", or as a plain fraction without braces"
                : "given with both \"lower\" and \"upper\" or with neither");
            return null;
        }

        if (value is null || (limits == 2 && (lower is null || upper is null))) return null;
        if (limits == 2 && !(lower <= value && value <= upper))
        {
            problems.WrongValue(item, "in order: lower, value, upper");
            return null;
        }

        return (value.Value, lower, upper);
    }

    private static StatedAccuracy? Counts(JsonItem item, ProgramProblems problems)
    {
        var parts = item.Text.Split('/');
        if (parts.Length != 2 || Count(parts[0]) is not { } successes || Count(parts[1]) is not { } trials)
        {
            problems.WrongValue(item, Ways);
            return null;
        }

        if (trials == 0 || successes > trials)
        {
            problems.WrongValue(item, "counts with at least one trial and no more successes than trials, such as \"61/97\"");
            return null;
        }

        return new((double)successes / trials, successes, trials, null, null);
    }

    private static long? Count(string text) =>
        long.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : null;
}
