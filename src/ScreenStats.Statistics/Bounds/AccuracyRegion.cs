using System.Collections.Immutable;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Statistics.Bounds;

/// <summary>Everything sensitivity, specificity, prevalence and both predictive values can be, together, given the counts.</summary>
/// <remarks>
/// The region has two dimensions: how many of the positive runs and how many of the negative runs are truly infected. Each lies between its two
/// limits whatever the other is, and the two fix all five figures. The bounds of a single figure are its least and greatest value over the region.
/// </remarks>
public sealed record AccuracyRegion
{
    private readonly ImmutableArray<BoundedFigure> _figures;

    internal AccuracyRegion(
        VerificationCounts counts, ConfirmatoryAccuracy confirmatory, double confidence, Interval infectedPositives, Interval infectedNegatives,
        bool positivesCompatible, bool negativesCompatible, ImmutableArray<BoundedFigure> figures)
    {
        Counts = counts;
        Confirmatory = confirmatory;
        Confidence = confidence;
        InfectedPositives = infectedPositives;
        InfectedNegatives = infectedNegatives;
        PositivesCompatible = positivesCompatible;
        NegativesCompatible = negativesCompatible;
        _figures = figures;
    }

    /// <summary>The counts.</summary>
    public VerificationCounts Counts { get; }

    /// <summary>What was stated of the confirmatory test.</summary>
    public ConfirmatoryAccuracy Confirmatory { get; }

    /// <summary>The confidence of the intervals, in (0, 1).</summary>
    public double Confidence { get; }

    /// <summary>The least and the greatest number of truly infected positive runs.</summary>
    public Interval InfectedPositives { get; }

    /// <summary>The least and the greatest number of truly infected negative runs.</summary>
    public Interval InfectedNegatives { get; }

    /// <summary>
    /// False where the verified positives cannot come about with the stated accuracy but by chance (say, fewer confirmed than false alarms of the
    /// confirmatory test alone); their infected are then taken as none, or all.
    /// </summary>
    public bool PositivesCompatible { get; }

    /// <summary>The same of the audited negatives.</summary>
    public bool NegativesCompatible { get; }

    /// <summary>The bounds of one figure.</summary>
    /// <param name="measure">What it measures.</param>
    /// <returns>The bounds with their confidence interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public BoundedFigure this[AccuracyMeasure measure] => Enum.IsDefined(measure)
        ? _figures[(int)measure]
        : throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure this library knows.");

    /// <summary>Positive runs of all runs; null without runs.</summary>
    public double? Positivity => Total == 0 ? null : Counts.Positives / Total;

    /// <summary>
    /// The least specificity where the screen is no worse than chance (sensitivity at least 1 - specificity): no less than 1 - positivity,
    /// without any confirmatory test. Null without runs.
    /// </summary>
    public double? SpecificityIfNoWorseThanChance =>
        Total == 0 ? null : Math.Max(this[AccuracyMeasure.Specificity].Bounds?.Lower ?? 0, Counts.Negatives / Total);

    /// <summary>The least sensitivity on the same condition: no less than the positivity. Null without runs.</summary>
    public double? SensitivityIfNoWorseThanChance =>
        Positivity is { } positivity ? Math.Max(this[AccuracyMeasure.Sensitivity].Bounds?.Lower ?? 0, positivity) : null;

    /// <summary>The four corners: few or many infected among the positives, and among the negatives; each corner once.</summary>
    public ImmutableArray<RegionCorner> Corners =>
    [
        .. new[]
        {
            (InfectedPositives.Lower, InfectedNegatives.Lower), (InfectedPositives.Lower, InfectedNegatives.Upper),
            (InfectedPositives.Upper, InfectedNegatives.Lower), (InfectedPositives.Upper, InfectedNegatives.Upper),
        }.Distinct().Select(pair => Corner(pair.Item1, pair.Item2)),
    ];

    private double Total => (double)Counts.Positives + Counts.Negatives;

    /// <summary>The least and the greatest specificity that go with one sensitivity.</summary>
    /// <param name="sensitivity">The sensitivity, in [0, 1].</param>
    /// <returns>The interval; null where that sensitivity does not fit the counts at all.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The sensitivity is outside [0, 1].</exception>
    /// <remarks>
    /// With i infected positives, sensitivity s makes i (1 - s)/s infected negatives; along that line the odds of the specificity,
    /// (n0 - i (1 - s)/s)/(n1 - i), move in one direction only, so that the ends of the line give the ends of the interval. Ends without anybody
    /// infected count as approached.
    /// </remarks>
    public Interval? SpecificityAt(double sensitivity)
    {
        Guard.Probability(sensitivity);
        if (this[AccuracyMeasure.Sensitivity].Bounds is not { } all) return null;
        // An end of the bounds, passed back, must not fall out by its rounding.
        var s = Math.Abs(sensitivity - all.Lower) <= 1e-12 * all.Lower ? all.Lower : Math.Abs(sensitivity - all.Upper) <= 1e-12 * all.Upper ? all.Upper : sensitivity;
        if (!all.Contains(s)) return null;
        List<(double Positives, double Negatives)> ends = s switch
        {
            0 => [(0, InfectedNegatives.Lower), (0, InfectedNegatives.Upper)],
            1 => [(InfectedPositives.Lower, 0), (InfectedPositives.Upper, 0)],
            _ => Line(s),
        };
        var values = ends.Select(end => Corner(end.Positives, end.Negatives)).Select(corner => corner.Specificity).OfType<double>().ToList();
        return values.Count == 0 ? null : new Interval(values.Min(), values.Max());
    }

    /// <summary>Whether sensitivity, specificity and prevalence together fit the counts.</summary>
    /// <param name="sensitivity">The sensitivity, in [0, 1].</param>
    /// <param name="specificity">The specificity, in [0, 1].</param>
    /// <param name="prevalence">The prevalence, in [0, 1].</param>
    /// <param name="tolerance">How far, as a share of all runs, each number of runs may be off. 0 or more.</param>
    /// <returns>True where they give the number of positives and numbers of infected within the region.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public bool Contains(double sensitivity, double specificity, double prevalence, double tolerance = 1e-9)
    {
        Guard.Probability(sensitivity);
        Guard.Probability(specificity);
        Guard.Probability(prevalence);
        if (!(tolerance >= 0)) throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "A tolerance is 0 or more.");
        var slack = tolerance * Total;
        var found = sensitivity * prevalence * Total;
        var missed = (1 - sensitivity) * prevalence * Total;
        var falseAlarms = (1 - specificity) * (1 - prevalence) * Total;
        return Math.Abs(found + falseAlarms - Counts.Positives) <= slack
            && found >= InfectedPositives.Lower - slack && found <= InfectedPositives.Upper + slack
            && missed >= InfectedNegatives.Lower - slack && missed <= InfectedNegatives.Upper + slack;
    }

    private List<(double Positives, double Negatives)> Line(double s)
    {
        var slope = (1 - s) / s;
        var least = Math.Max(InfectedPositives.Lower, InfectedNegatives.Lower / slope);
        var most = Math.Min(InfectedPositives.Upper, InfectedNegatives.Upper / slope);
        if (most < least) most = least;
        return [(least, Math.Min(least * slope, Counts.Negatives)), (most, Math.Min(most * slope, Counts.Negatives))];
    }

    private RegionCorner Corner(double positives, double negatives)
    {
        var infected = positives + negatives;
        var free = Total - infected;
        return new RegionCorner(
            positives, negatives,
            infected > 0 ? positives / infected : null,
            free > 0 ? (Counts.Negatives - negatives) / (Counts.Negatives - negatives + (Counts.Positives - positives)) : null,
            Total > 0 ? infected / Total : null,
            Counts.Positives > 0 ? positives / Counts.Positives : null,
            Counts.Negatives > 0 ? (Counts.Negatives - negatives) / Counts.Negatives : null);
    }
}
