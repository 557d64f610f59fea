using System.Globalization;

namespace ScreenStats.Cli.Parsing;

/// <summary>The one parser of sizes of memory: a number with MB or GB, of 1024 times 1024 and 1024 times 1024 times 1024 bytes.</summary>
internal static class Sizes
{
    private const decimal Megabyte = 1 << 20;
    private const decimal Gigabyte = 1 << 30;

    /// <summary>More of a unit than any machine has, and few enough to be multiplied.</summary>
    private const int Most = 1_000_000;

    /// <summary>A size in bytes, at least the least.</summary>
    public static long Memory(string name, string text, long least)
    {
        var unit = text.EndsWith("GB", StringComparison.OrdinalIgnoreCase) ? Gigabyte : text.EndsWith("MB", StringComparison.OrdinalIgnoreCase) ? Megabyte : 0;
        if (unit == 0 || !decimal.TryParse(text.AsSpan(0, text.Length - 2), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
            throw new UsageException($"{name}: \"{text}\" is not a size; write a number with MB or GB, such as 512MB or 1.5GB.");
        if (number > Most) throw new UsageException(string.Create(CultureInfo.InvariantCulture, $"{name}: {text} is too large; write at most {Most} with MB or GB."));
        var bytes = (long)(number * unit);
        return bytes >= least
            ? bytes
            : throw new UsageException(string.Create(CultureInfo.InvariantCulture, $"{name}: {text} is too small; the least is {least / (long)Megabyte}MB."));
    }
}
