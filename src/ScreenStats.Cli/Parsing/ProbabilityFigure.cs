using System.Globalization;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Cli.Parsing;

/// <summary>A probability as the person wrote it: a fraction taken as exact, or counts with their uncertainty.</summary>
internal readonly record struct ProbabilityFigure
{
    public ProbabilityFigure(double value) => Value = value;

    public ProbabilityFigure(CountsFigure counts)
    {
        Counts = counts;
        Value = counts.Trials == 0 ? null : (double)counts.Successes / counts.Trials;
    }

    /// <summary>The fraction; null for 0/0.</summary>
    public double? Value { get; }

    /// <summary>The counts, where it was written as counts.</summary>
    public CountsFigure? Counts { get; }

    /// <summary>The statement the statistics take; null for 0/0.</summary>
    public AccuracyStatement? Statement => Value is not { } value
        ? null
        : Counts is { } counts ? AccuracyStatement.FromCounts(counts.Successes, counts.Trials) : AccuracyStatement.Exact(value);

    /// <summary>The figure with its counts, as it is shown again.</summary>
    public string Shown => (Value, Counts) switch
    {
        (null, _) => "0/0",
        ({ } value, { } counts) => string.Create(CultureInfo.InvariantCulture, $"{value:0.####} ({counts.Successes}/{counts.Trials})"),
        ({ } value, _) => string.Create(CultureInfo.InvariantCulture, $"{value} (taken as exact)"),
    };
}
