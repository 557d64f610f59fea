namespace ScreenStats.Statistics.Economics.Uncertainty.Information;

/// <summary>The sample that is worth most after what it costs.</summary>
public sealed record BestSample
{
    internal BestSample(long sample, InformationValue worth, double cost)
    {
        Sample = sample;
        Worth = worth;
        Cost = cost;
    }

    /// <summary>How many to look at; 0 where no sample is worth its cost.</summary>
    public long Sample { get; }

    /// <summary>What the sample is worth before its cost.</summary>
    public InformationValue Worth { get; }

    /// <summary>What it costs; 0 where none is taken.</summary>
    public double Cost { get; }

    /// <summary>What is left: 0 or more.</summary>
    public double Net => Worth.Value - Cost;
}
