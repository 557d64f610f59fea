namespace ScreenStats.Statistics.Cadence.Sojourn;

/// <summary>What testing everybody a number of times gives, a person counting as positive at any positive test.</summary>
public sealed record RepeatedTestStep
{
    internal RepeatedTestStep(int tests, double cases, double falsePositives, double cost, Estimate costPerCase, Estimate marginalCostPerCase)
    {
        Tests = tests;
        Cases = cases;
        FalsePositives = falsePositives;
        Cost = cost;
        CostPerCase = costPerCase;
        MarginalCostPerCase = marginalCostPerCase;
    }

    /// <summary>Tests of each person.</summary>
    public int Tests { get; }

    /// <summary>Cases found.</summary>
    public double Cases { get; }

    /// <summary>People with a false positive.</summary>
    public double FalsePositives { get; }

    /// <summary>What all of it costs.</summary>
    public double Cost { get; }

    /// <summary>Cost per case found; undefined where none is.</summary>
    public Estimate CostPerCase { get; }

    /// <summary>The cost of the last test per case that it adds; undefined where it adds none.</summary>
    public Estimate MarginalCostPerCase { get; }
}
