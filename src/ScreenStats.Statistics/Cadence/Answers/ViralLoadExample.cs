using ScreenStats.Statistics.Cadence.Courses.ViralLoads;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>Figures of a published model of viral loads, to begin with. They are no default of the library: whoever uses them shows them.</summary>
public static class ViralLoadExample
{
    /// <summary>A fast respiratory infection.</summary>
    /// <param name="detectionLimit">The logarithm (base 10) of the load from which a screen is positive, above 0.</param>
    /// <param name="infectiousness">How much is passed on at a load.</param>
    /// <returns>
    /// Start on day 2.5 to 3.5 at a logarithm of 3; growth of half a day plus a gamma variable (shape 1.5, scale 1 day), at most 3 days together; peak 7 to 11;
    /// 6 reached again 4 to 9 days after the peak, or after symptoms, which 35 in 100 people get 0 to 3 days after the peak and stay away then; passed on above 6.
    /// </returns>
    /// <remarks>Source: Larremore DB, Wilder B, Lester E, et al., Sci Adv 2021;7:eabd5393, of its figures from memory; the step in which the growth ends is our reading of it.</remarks>
    public static ViralLoadCourses Respiratory(double detectionLimit, InfectiousnessFunction infectiousness = InfectiousnessFunction.LogAboveThreshold) => new()
    {
        StartDay = new UniformRange(2.5, 3.5),
        StartLevel = 3,
        ShortestGrowthDays = 0.5,
        GrowthShape = 1.5,
        GrowthScaleDays = 1,
        LongestGrowthDays = 3,
        PeakLevel = new UniformRange(7, 11),
        ClearanceDays = new UniformRange(4, 9),
        EndLevel = 6,
        SymptomShare = 0.35,
        SymptomsAfterPeakDays = new UniformRange(0, 3),
        SymptomIsolationShare = 1,
        DetectionLimit = detectionLimit,
        Infectiousness = infectiousness,
        InfectiousLevel = 6,
    };
}
