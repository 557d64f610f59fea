namespace ScreenStats.Statistics.Accuracy;

/// <summary>What to expect among a number of people tested once: four counts that need not be whole.</summary>
public readonly record struct ExpectedResults
{
    /// <summary>Works the four out.</summary>
    /// <param name="sensitivity">Sensitivity, in [0, 1].</param>
    /// <param name="specificity">Specificity, in [0, 1].</param>
    /// <param name="prevalence">Prevalence, in [0, 1].</param>
    /// <param name="people">People tested, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public ExpectedResults(double sensitivity, double specificity, double prevalence, long people)
    {
        Guard.Probability(sensitivity);
        Guard.Probability(specificity);
        Guard.Probability(prevalence);
        ArgumentOutOfRangeException.ThrowIfLessThan(people, 1);
        People = people;
        TruePositives = people * prevalence * sensitivity;
        FalseNegatives = people * prevalence * (1 - sensitivity);
        FalsePositives = people * (1 - prevalence) * (1 - specificity);
        TrueNegatives = people * (1 - prevalence) * specificity;
    }

    /// <summary>People tested.</summary>
    public long People { get; }

    /// <summary>Positive, with the condition.</summary>
    public double TruePositives { get; }

    /// <summary>Positive, without it.</summary>
    public double FalsePositives { get; }

    /// <summary>Negative, with it.</summary>
    public double FalseNegatives { get; }

    /// <summary>Negative, without it.</summary>
    public double TrueNegatives { get; }

    /// <summary>The share with a right result.</summary>
    public double Accuracy => (TruePositives + TrueNegatives) / People;
}
