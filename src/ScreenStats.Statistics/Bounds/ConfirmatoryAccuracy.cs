namespace ScreenStats.Statistics.Bounds;

/// <summary>Between which limits the sensitivity and the specificity of the confirmatory test are said to lie.</summary>
/// <remarks>
/// The limits hold within the positive screens and within the negative ones, each apart: the confirmatory test may err more often in the one than
/// in the other, but in neither outside its limits. Limits without width say that its errors do not depend on the screen's result.
/// </remarks>
public sealed record ConfirmatoryAccuracy
{
    /// <summary>Makes the statement.</summary>
    /// <param name="sensitivity">Limits of the sensitivity, inside [0, 1].</param>
    /// <param name="specificity">Limits of the specificity, inside [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">A limit outside [0, 1].</exception>
    public ConfirmatoryAccuracy(Interval sensitivity, Interval specificity)
    {
        Guard.Probability(sensitivity.Lower, nameof(sensitivity));
        Guard.Probability(sensitivity.Upper, nameof(sensitivity));
        Guard.Probability(specificity.Lower, nameof(specificity));
        Guard.Probability(specificity.Upper, nameof(specificity));
        Sensitivity = sensitivity;
        Specificity = specificity;
    }

    /// <summary>A confirmatory test that is never wrong: its word is the truth.</summary>
    public static ConfirmatoryAccuracy Perfect { get; } = new(new Interval(1, 1), new Interval(1, 1));

    /// <summary>Limits of the sensitivity.</summary>
    public Interval Sensitivity { get; }

    /// <summary>Limits of the specificity.</summary>
    public Interval Specificity { get; }

    /// <summary>Whether even the lowest sensitivity and specificity together exceed 1, so that its results say something.</summary>
    public bool Informs => Sensitivity.Lower + Specificity.Lower > 1;
}
