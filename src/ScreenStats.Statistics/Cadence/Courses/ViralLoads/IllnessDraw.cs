using ScreenStats.Statistics.Monitoring.Scans;
using ScreenStats.Statistics.Regression.Ranks;

namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>What is drawn for one person, from a stream of the person's own.</summary>
internal readonly struct IllnessDraw
{
    private IllnessDraw(ViralLoadCourses courses, RandomDraw random)
    {
        // The gamma variable comes last: it takes as many numbers as it needs.
        Start = courses.StartDay.At(random.Uniform());
        Peak = courses.PeakLevel.At(random.Uniform());
        HasSymptoms = random.Uniform() < courses.SymptomShare;
        var toSymptoms = courses.SymptomsAfterPeakDays.At(random.Uniform());
        SymptomsAfterPeak = HasSymptoms ? toSymptoms : 0;
        Clearance = courses.ClearanceDays.At(random.Uniform());
        Isolates = random.Uniform() < courses.SymptomIsolationShare;
        Phase = random.Uniform();
        var drawn = courses.GrowthScaleDays > 0 ? courses.GrowthScaleDays * Math.Exp(random.LogGamma(courses.GrowthShape)) : 0;
        Growth = courses.GrowthLimit == GrowthLimit.Whole
            ? Math.Min(courses.ShortestGrowthDays + drawn, courses.LongestGrowthDays)
            : courses.ShortestGrowthDays + Math.Min(drawn, courses.LongestGrowthDays);
    }

    public double Start { get; }

    public double Growth { get; }

    public double Peak { get; }

    public bool HasSymptoms { get; }

    public double SymptomsAfterPeak { get; }

    public double Clearance { get; }

    public bool Isolates { get; }

    /// <summary>Where the first of the phases lies, in (0, 1) of the distance between two.</summary>
    public double Phase { get; }

    public static IllnessDraw Of(ViralLoadCourses courses, ulong seed, int person) => new(courses, new RandomDraw(new ReplicateStream(seed, person)));
}
