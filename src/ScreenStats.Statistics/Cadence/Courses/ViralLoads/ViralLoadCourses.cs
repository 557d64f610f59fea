namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>Courses of infections that differ between people: the logarithm (to base 10) of the viral load rises along a line, then falls along one.</summary>
/// <remarks>
/// A person's load is 0 until <see cref="StartDay"/>, when its logarithm is <see cref="StartLevel"/>; it peaks after the time of growth,
/// the shortest plus a gamma variable, limited; from the peak it falls so that it crosses <see cref="EndLevel"/> after <see cref="ClearanceDays"/>, and on
/// along the same line. People with symptoms get them <see cref="SymptomsAfterPeakDays"/> after the peak, and their clearance is counted from there. A
/// screen is positive while the load is at or above <see cref="DetectionLimit"/>. Source of the model: Larremore DB, Wilder B, Lester E, et al., Sci
/// Adv 2021;7:eabd5393 (from memory); no figure is built in.
/// </remarks>
public sealed record ViralLoadCourses
{
    /// <summary>Days from infection to the start, 0 or more.</summary>
    public required UniformRange StartDay { get; init; }

    /// <summary>The logarithm of the load at the start, above 0.</summary>
    public required double StartLevel { get; init; }

    /// <summary>The shortest time from the start to the peak, in days, above 0.</summary>
    public required double ShortestGrowthDays { get; init; }

    /// <summary>The shape of the gamma variable that is added to it, 0.01 to 1000.</summary>
    public required double GrowthShape { get; init; }

    /// <summary>The scale of that variable in days, 0 or more; at 0 nothing is added.</summary>
    public required double GrowthScaleDays { get; init; }

    /// <summary>The longest time of growth in days, of what <see cref="GrowthLimit"/> says; above 0.</summary>
    public required double LongestGrowthDays { get; init; }

    /// <summary>What <see cref="LongestGrowthDays"/> limits.</summary>
    public GrowthLimit GrowthLimit { get; init; }

    /// <summary>The logarithm of the load at the peak; its lower end lies at least 0.1 above start and end level.</summary>
    public required UniformRange PeakLevel { get; init; }

    /// <summary>Days from the peak, or from the onset of symptoms, until the load falls to <see cref="EndLevel"/>, above 0.</summary>
    public required UniformRange ClearanceDays { get; init; }

    /// <summary>The logarithm of the load to which <see cref="ClearanceDays"/> counts, above 0.</summary>
    public required double EndLevel { get; init; }

    /// <summary>The share of people who get symptoms, in [0, 1].</summary>
    public required double SymptomShare { get; init; }

    /// <summary>Days from the peak to symptoms, 0 or more.</summary>
    public required UniformRange SymptomsAfterPeakDays { get; init; }

    /// <summary>The chance that a person with symptoms isolates at their onset, in [0, 1].</summary>
    public required double SymptomIsolationShare { get; init; }

    /// <summary>The logarithm of the load from which a screen is positive, above 0.</summary>
    public required double DetectionLimit { get; init; }

    /// <summary>The chance that a screen at or above the limit is positive, in [0, 1].</summary>
    public double SensitivityAboveLimit { get; init; } = 1;

    /// <summary>How much is passed on at a load.</summary>
    public required InfectiousnessFunction Infectiousness { get; init; }

    /// <summary>The logarithm of the load above which anything is passed on, above 0.</summary>
    public required double InfectiousLevel { get; init; }

    /// <summary>The longest time a load can stay at or above the limit, in days.</summary>
    internal double LongestDetectable
    {
        get
        {
            var growth = GrowthLimit == GrowthLimit.Whole ? LongestGrowthDays : ShortestGrowthDays + LongestGrowthDays;
            var clearance = ClearanceDays.Upper + (SymptomShare > 0 ? SymptomsAfterPeakDays.Upper : 0);
            double Fall(double peak) => Math.Max((peak - DetectionLimit) / (peak - EndLevel), 0);
            return growth + (clearance * Math.Max(Fall(PeakLevel.Lower), Fall(PeakLevel.Upper)));
        }
    }

    internal void Check()
    {
        Positive(StartLevel, nameof(StartLevel));
        Positive(EndLevel, nameof(EndLevel));
        Positive(DetectionLimit, nameof(DetectionLimit));
        Positive(InfectiousLevel, nameof(InfectiousLevel));
        Positive(ShortestGrowthDays, nameof(ShortestGrowthDays));
        Positive(LongestGrowthDays, nameof(LongestGrowthDays));
        Positive(ClearanceDays.Lower, nameof(ClearanceDays));
        if (!(GrowthShape is >= 0.01 and <= 1000)) throw new ArgumentOutOfRangeException(nameof(GrowthShape), GrowthShape, "The shape of the growth must lie between 0.01 and 1000.");
        if (!(GrowthScaleDays is >= 0 and <= 1000)) throw new ArgumentOutOfRangeException(nameof(GrowthScaleDays), GrowthScaleDays, "The scale of the growth must be days from 0 to 1000.");
        if (GrowthLimit == GrowthLimit.Whole && LongestGrowthDays < ShortestGrowthDays)
            throw new ArgumentOutOfRangeException(nameof(LongestGrowthDays), LongestGrowthDays, "The longest growth must not be shorter than the shortest.");
        if (GrowthLimit is not (GrowthLimit.Whole or GrowthLimit.DrawnPart)) throw new ArgumentOutOfRangeException(nameof(GrowthLimit), GrowthLimit, "Not a limit this library knows.");
        if (!(PeakLevel.Lower >= Math.Max(StartLevel, EndLevel) + 0.1) || PeakLevel.Upper > 100)
            throw new ArgumentOutOfRangeException(nameof(PeakLevel), PeakLevel.Lower, "The peak must lie at least 0.1 above start and end level, and not above 100.");
        if (StartDay.Lower < 0) throw new ArgumentOutOfRangeException(nameof(StartDay), StartDay.Lower, "The start must not lie before the infection.");
        if (SymptomsAfterPeakDays.Lower < 0)
            throw new ArgumentOutOfRangeException(nameof(SymptomsAfterPeakDays), SymptomsAfterPeakDays.Lower, "Symptoms must not begin before the peak.");
        if (StartDay.Upper > InfectionCourse.LongestDays || ClearanceDays.Upper > InfectionCourse.LongestDays || SymptomsAfterPeakDays.Upper > InfectionCourse.LongestDays)
            throw new ArgumentOutOfRangeException(nameof(ClearanceDays), ClearanceDays.Upper, "No part of a course may take more than 3,660 days.");
        Guard.Probability(SymptomShare);
        Guard.Probability(SymptomIsolationShare);
        Guard.Probability(SensitivityAboveLimit);
        if (Infectiousness is not (InfectiousnessFunction.LogAboveThreshold or InfectiousnessFunction.Proportional or InfectiousnessFunction.Step))
            throw new ArgumentOutOfRangeException(nameof(Infectiousness), Infectiousness, "Not a function this library knows.");
    }

    private static void Positive(double value, string name)
    {
        if (!(value is > 0 and <= 1000)) throw new ArgumentOutOfRangeException(name, value, $"The {name} must lie above 0, up to 1000.");
    }
}
