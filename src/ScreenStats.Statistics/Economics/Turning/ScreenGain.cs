namespace ScreenStats.Statistics.Economics.Turning;

/// <summary>What one screen of one person gains and costs.</summary>
/// <remarks>
/// Net gain = p s B - c - (1 - p)(1 - Sp) h, p the prevalence among those screened, s and Sp sensitivity and specificity, c what the screen costs, h what a false positive costs
/// besides (confirmatory test, working days), B what a true positive is worth, less its own confirmatory test.
/// </remarks>
public sealed record ScreenGain
{
    /// <summary>The prevalence among those screened, in [0, 1].</summary>
    public required double Prevalence { get; init; }

    /// <summary>The sensitivity, in [0, 1].</summary>
    public required double Sensitivity { get; init; }

    /// <summary>The specificity, in [0, 1].</summary>
    public required double Specificity { get; init; }

    /// <summary>What a screen costs, 0 or more.</summary>
    public required double CostOfScreen { get; init; }

    /// <summary>What a false positive costs besides, 0 or more.</summary>
    public required double CostOfFalsePositive { get; init; }

    /// <summary>What a true positive is worth, 0 or more.</summary>
    public required double BenefitOfTruePositive { get; init; }

    internal void Check()
    {
        Guard.Probability(Prevalence, nameof(Prevalence));
        Guard.Probability(Sensitivity, nameof(Sensitivity));
        Guard.Probability(Specificity, nameof(Specificity));
        Guard.Amount(CostOfScreen, nameof(CostOfScreen));
        Guard.Amount(CostOfFalsePositive, nameof(CostOfFalsePositive));
        Guard.Amount(BenefitOfTruePositive, nameof(BenefitOfTruePositive));
    }
}
