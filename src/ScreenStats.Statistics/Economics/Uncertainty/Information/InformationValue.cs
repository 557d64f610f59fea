namespace ScreenStats.Statistics.Economics.Uncertainty.Information;

/// <summary>What knowing more is worth before a choice is made.</summary>
public sealed record InformationValue
{
    internal InformationValue(int best, double expectedNow, double value, double? standardError, int? draws, string method)
    {
        Best = best;
        ExpectedNow = expectedNow;
        Value = value;
        StandardError = standardError;
        Draws = draws;
        Method = method;
    }

    /// <summary>The option that is best as things are known now, by its place.</summary>
    public int Best { get; }

    /// <summary>Its expected net benefit.</summary>
    public double ExpectedNow { get; }

    /// <summary>The expected net benefit when the choice is made knowing.</summary>
    public double ExpectedKnowing => ExpectedNow + Value;

    /// <summary>What knowing is worth: never below 0, for one choice of this size.</summary>
    public double Value { get; }

    /// <summary>The standard error from the number of draws; null where nothing was drawn.</summary>
    public double? StandardError { get; }

    /// <summary>The draws; null where nothing was drawn.</summary>
    public int? Draws { get; }

    /// <summary>The name of the method in tables.</summary>
    public string Method { get; }
}
