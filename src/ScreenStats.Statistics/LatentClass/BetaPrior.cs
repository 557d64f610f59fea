using System.Globalization;

namespace ScreenStats.Statistics.LatentClass;

/// <summary>A beta distribution that says what was known of a share before the counts: as if first successes and second failures had been seen.</summary>
public readonly record struct BetaPrior
{
    /// <summary>Makes the prior.</summary>
    /// <param name="first">Its first parameter, above 0 and at most a million.</param>
    /// <param name="second">Its second parameter, above 0 and at most a million.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter outside its domain.</exception>
    public BetaPrior(double first, double second)
    {
        Check(first, nameof(first));
        Check(second, nameof(second));
        First = first;
        Second = second;
    }

    /// <summary>Every share equally likely: Beta(1, 1).</summary>
    public static BetaPrior Uniform { get; } = new(1, 1);

    /// <summary>Its first parameter; 0 only in a default value, which no function takes.</summary>
    public double First { get; }

    /// <summary>Its second parameter.</summary>
    public double Second { get; }

    /// <summary>Its mean.</summary>
    public double Mean => First / (First + Second);

    /// <summary>The prior in words, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"Beta({First}, {Second})");

    internal void Check(string name)
    {
        if (!(First > 0)) throw new ArgumentOutOfRangeException(name, First, "A prior needs two parameters above 0.");
    }

    private static void Check(double value, string name)
    {
        if (!(value > 0 && value <= 1e6)) throw new ArgumentOutOfRangeException(name, value, "A parameter of a beta prior lies above 0 and is at most a million.");
    }
}
