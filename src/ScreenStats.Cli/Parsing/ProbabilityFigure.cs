using System.Globalization;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Cli.Parsing;

/// <summary>A probability as the person wrote it: a fraction taken as exact, counts, or a value with its 95 % interval.</summary>
internal readonly record struct ProbabilityFigure
{
    public ProbabilityFigure(double value) => Value = value;

    public ProbabilityFigure(CountsFigure counts)
    {
        Counts = counts;
        Value = counts.Trials == 0 ? null : (double)counts.Successes / counts.Trials;
    }

    public ProbabilityFigure(double value, double lower, double upper)
    {
        Value = value;
        Limits = new Interval(lower, upper);
    }

    /// <summary>The fraction; null for 0/0.</summary>
    public double? Value { get; }

    /// <summary>The counts, where it was written as counts.</summary>
    public CountsFigure? Counts { get; }

    /// <summary>The 95 % limits, where it was written with them.</summary>
    public Interval? Limits { get; }

    /// <summary>The statement the statistics take; null for 0/0.</summary>
    public AccuracyStatement? Statement => Value is not { } value
        ? null
        : Counts is { } counts ? AccuracyStatement.FromCounts(counts.Successes, counts.Trials)
        : Limits is { } limits ? AccuracyStatement.FromInterval(value, limits.Lower, limits.Upper)
        : AccuracyStatement.Exact(value);

    /// <summary>Whether it was written as counts without an event, or with events only: such a figure has no variance of its own.</summary>
    public bool AtAnEnd => Counts is { Trials: > 0 } counts && (counts.Successes == 0 || counts.Successes == counts.Trials);

    /// <summary>The figure with its counts, as it is shown again.</summary>
    public string Shown => (Value, Counts, Limits) switch
    {
        (null, _, _) => "0/0",
        ({ } value, _, { } limits) => string.Create(CultureInfo.InvariantCulture, $"{value} ({limits.Lower} to {limits.Upper})"),
        ({ } value, { } counts, _) => string.Create(CultureInfo.InvariantCulture, $"{value:0.####} ({counts.Successes}/{counts.Trials})"),
        ({ } value, _, _) => string.Create(CultureInfo.InvariantCulture, $"{value} (taken as exact)"),
    };
}
