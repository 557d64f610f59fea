using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Cli.Parsing;

/// <summary>The one parser of every figure on the command line: invariant, finite, and strict about how a figure is written.</summary>
internal static class Figures
{
    private const NumberStyles Number = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    /// <summary>A probability: a fraction such as 0.93, counts such as 98/134, or a value with its 95 % interval such as 0.73[0.65,0.80].</summary>
    public static ProbabilityFigure Probability(string name, string text)
    {
        if (text.Contains('[', StringComparison.Ordinal) || text.Contains(']', StringComparison.Ordinal)) return WithInterval(name, text);
        if (text.Contains('/', StringComparison.Ordinal)) return new(Counts(name, text));
        return new(Fraction(name, text, "0.93 or counts such as 98/134"));
    }

    /// <summary>A confidence level: a fraction between 0 and 1, ends excluded.</summary>
    public static double Confidence(string name, string text)
    {
        var value = Fraction(name, text, "0.95");
        return value is > 0 and < 1 ? value : throw new UsageException($"{name} must lie between 0 and 1: write a fraction such as 0.95.");
    }

    /// <summary>A fraction between 0 and 1, ends excluded.</summary>
    public static double OpenFraction(string name, string text, string example)
    {
        var value = Fraction(name, text, example);
        return value is > 0 and < 1 ? value : throw new UsageException($"{name} must lie strictly between 0 and 1: write a fraction such as {example}.");
    }

    /// <summary>Counts: successes of trials, such as 81/263. 0/0 is legal and cannot answer.</summary>
    public static CountsFigure Counts(string name, string text)
    {
        var parts = text.Split('/');
        if (parts.Length != 2) throw new UsageException($"{name}: \"{text}\" is not counts; write successes and trials such as 81/263.");
        var successes = Whole(name, text, parts[0]);
        var trials = Whole(name, text, parts[1]);
        if (successes < 0 || trials < 0) throw new UsageException($"{name}: counts in {text} cannot be negative; write counts such as 81/263.");
        if (successes > trials)
            throw new UsageException($"{name}: {text} has more successes than trials; write the smaller count first, such as 81/263.");
        return new(successes, trials);
    }

    /// <summary>Counts of several clusters, such as 13/13,12/12,4/5.</summary>
    public static ImmutableArray<CountsFigure> Clusters(string name, string text) => [.. text.Split(',').Select(part => Counts(name, part))];

    /// <summary>A whole number within bounds.</summary>
    public static long Whole(string name, string text, long least, long most)
    {
        if (long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
            return value;
        throw new UsageException(string.Create(CultureInfo.InvariantCulture,
            $"{name}: \"{text}\" must be a whole number from {least} to {most}, without separators."));
    }

    /// <summary>A finite number.</summary>
    public static double Finite(string name, string text) =>
        TryNumber(text, out var value) ? value : throw new UsageException($"{name}: \"{text}\" is not a number; write it such as 3.5, with a point.");

    /// <summary>A list of finite numbers, separated by commas without spaces.</summary>
    public static ImmutableArray<double> List(string name, string text)
    {
        var numbers = ImmutableArray.CreateBuilder<double>();
        foreach (var part in text.Split(','))
        {
            if (!TryNumber(part, out var value))
                throw new UsageException($"{name}: \"{text}\" is not a list of numbers; write it such as 1,2,3.5.");
            numbers.Add(value);
        }

        return numbers.ToImmutable();
    }

    /// <summary>A list of p-values, separated by commas without spaces.</summary>
    public static ImmutableArray<double> PValues(string name, string text)
    {
        var values = List(name, text);
        foreach (var value in values)
        {
            if (value is not (>= 0 and <= 1))
                throw new UsageException(string.Create(CultureInfo.InvariantCulture, $"{name}: {value} is no p-value; each lies between 0 and 1, written such as 0.004,0.03."));
        }

        return values;
    }

    /// <summary>A list of counts, separated by commas without spaces.</summary>
    public static ImmutableArray<long> CountList(string name, string text, string example)
    {
        var counts = ImmutableArray.CreateBuilder<long>();
        Int128 sum = 0;
        foreach (var part in text.Split(','))
        {
            if (!long.TryParse(part, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var count))
                throw new UsageException($"{name}: \"{text}\" is not a list of counts; write whole numbers such as {example}.");
            if (count < 0) throw new UsageException($"{name}: counts in {text} cannot be negative; write counts such as {example}.");
            sum += count;
            counts.Add(count);
        }

        if (sum > long.MaxValue) throw new UsageException($"{name}: the counts in {text} add up to more than this program can hold.");
        return counts.ToImmutable();
    }

    /// <summary>A square table of counts by rows: rows apart by "/", or all counts in one list.</summary>
    public static ImmutableArray<ImmutableArray<long>> SquareTable(string name, string text)
    {
        const string Example = "40,9,6,45 or 22,2,2/5,7,14/0,2,36";
        var rows = text.Split('/').Select(row => CountList(name, row, Example)).ToImmutableArray();
        if (rows.Length == 1)
        {
            var size = (int)Math.Round(Math.Sqrt(rows[0].Length));
            if (size * size == rows[0].Length) rows = [.. rows[0].Chunk(Math.Max(1, size)).Select(row => row.ToImmutableArray())];
        }

        if (rows.Length < 2 || rows.Any(row => row.Length != rows.Length))
            throw new UsageException($"{name}: {text} is no square table; write as many rows as columns, at least 2, such as {Example}.");
        if (rows.Sum(row => row.Sum(count => (decimal)count)) > long.MaxValue)
            throw new UsageException($"{name}: the counts in {text} add up to more than this program can hold.");
        return rows;
    }

    /// <summary>A calendar day in ISO 8601.</summary>
    public static DateOnly Day(string name, string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? day
            : throw new UsageException($"{name}: \"{text}\" is not a date; write it as year, month and day, such as 2026-03-31.");

    private static ProbabilityFigure WithInterval(string name, string text)
    {
        const string Form = "write a value with its 95 % interval such as 0.73[0.65,0.80], with points and without spaces";
        var open = text.IndexOf('[', StringComparison.Ordinal);
        if (open <= 0 || !text.EndsWith(']')) throw new UsageException($"{name}: \"{text}\" is not a value with an interval; {Form}.");
        var ends = text[(open + 1)..^1].Split(',');
        if (ends.Length != 2) throw new UsageException($"{name}: \"{text}\" does not have two limits; {Form}.");
        var value = Fraction(name, text[..open], "0.73[0.65,0.80]");
        var lower = Fraction(name, ends[0], "0.73[0.65,0.80]");
        var upper = Fraction(name, ends[1], "0.73[0.65,0.80]");
        return lower <= value && value <= upper
            ? new(value, lower, upper)
            : throw new UsageException($"{name}: in {text} the value does not lie between its limits; write the lower limit first, such as 0.73[0.65,0.80].");
    }

    /// <summary>The two weights of a beta distribution, such as 1,1.</summary>
    public static BetaDistribution Beta(string name, string text)
    {
        var weights = text.Split(',');
        return weights.Length == 2 && TryNumber(weights[0], out var alpha) && TryNumber(weights[1], out var beta) && alpha is >= 0.1 and <= 1e9 && beta is >= 0.1 and <= 1e9
            ? new BetaDistribution(alpha, beta)
            : throw new UsageException($"{name}: \"{text}\" is not a beta distribution; write its two weights, each 0.1 or more, such as 1,1 or 2,50.");
    }

    private static double Fraction(string name, string text, string example)
    {
        if (TryNumber(text, out var value))
        {
            if (value is >= 0 and <= 1) return value;
            var advice = value is > 1 and <= 100 && PercentOf(text) is { } fraction ? $"; for {text} percent write {fraction}" : "";
            throw new UsageException($"{name}: {text} is no fraction from 0 to 1{advice}.");
        }

        var meant = MeantBy(text);
        throw new UsageException(meant is null
            ? $"{name}: \"{text}\" is not a fraction from 0 to 1; write it such as {example}."
            : $"{name}: \"{text}\" is not a fraction; write {meant}.");
    }

    // What "0,93", "93%" or "93 %" most likely means; said, never assumed.
    private static string? MeantBy(string text)
    {
        var plain = text.Trim().Replace(',', '.');
        if (plain.EndsWith('%')) return PercentOf(plain[..^1].Trim());
        return TryNumber(plain, out var value) && value is >= 0 and <= 1 ? plain : null;
    }

    private static string? PercentOf(string text) =>
        decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var percent) && percent <= 100
            ? (percent / 100).ToString("0.############################", CultureInfo.InvariantCulture)
            : null;

    private static bool TryNumber(string text, out double value) =>
        double.TryParse(text, Number, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    private static long Whole(string name, string text, string part)
    {
        if (long.TryParse(part, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var count)) return count;
        throw new UsageException(part.Length > 18 && part.All(char.IsAsciiDigit)
            ? $"{name}: a count in {text} is larger than this program can hold."
            : $"{name}: \"{text}\" is not counts; write whole numbers without separators or spaces, such as 81/263.");
    }
}
