using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Statistics.Planning;

/// <summary>How many tests give an interval of a given width.</summary>
public sealed record WidthPlan
{
    internal WidthPlan(double proportion, double width, double confidence, double designEffect, long? tests, Interval? interval, double? widthWithOneFewer)
    {
        Proportion = proportion;
        Width = width;
        Confidence = confidence;
        DesignEffect = designEffect;
        Tests = tests;
        Interval = interval;
        WidthWithOneFewer = widthWithOneFewer;
    }

    /// <summary>The expected proportion.</summary>
    public double Proportion { get; }

    /// <summary>The width asked for.</summary>
    public double Width { get; }

    /// <summary>The confidence of the interval.</summary>
    public double Confidence { get; }

    /// <summary>The design effect.</summary>
    public double DesignEffect { get; }

    /// <summary>The fewest tests; null where more than <see cref="SampleSize.Largest"/> would be needed.</summary>
    public long? Tests { get; }

    /// <summary>The interval at that number and exactly the expected proportion; null without a number.</summary>
    public Interval? Interval { get; }

    /// <summary>The width achieved; null without a number.</summary>
    public double? Achieved => Interval?.Width;

    /// <summary>The width with one test fewer, above the one asked for; null without a number, and where one test is enough.</summary>
    public double? WidthWithOneFewer { get; }

    /// <summary>Why there is no number; null where there is one.</summary>
    public UndefinedReason? Reason => Tests is null ? UndefinedReason.NoSampleLargeEnough : null;
}
