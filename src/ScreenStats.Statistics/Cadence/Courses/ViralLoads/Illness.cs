namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>
/// One person's course: when the load is detectable, what is passed on from an age on (R), and the integral of that from an age on (B), so that a
/// first positive screen anywhere between u and w takes away B(u) - B(w), over the density of its age.
/// </summary>
internal readonly struct Illness
{
    private readonly InfectiousnessFunction function;
    private readonly double rise;
    private readonly double fall;
    private readonly double atStart;
    private readonly double atPeak;
    private readonly double afterPeak;
    private readonly double sumAfterPeak;
    private readonly double sumAfterStart;

    public Illness(ViralLoadCourses courses, IllnessDraw draw)
    {
        var peak = draw.Start + draw.Growth;
        var up = (draw.Peak - courses.StartLevel) / draw.Growth;
        var down = (draw.Peak - courses.EndLevel) / (draw.SymptomsAfterPeak + draw.Clearance);
        double Rises(double level) => draw.Start + (Math.Max(level - courses.StartLevel, 0) / up);
        double Falls(double level) => peak + ((draw.Peak - level) / down);

        var detectable = courses.DetectionLimit < draw.Peak;
        DetectableFrom = detectable ? Rises(courses.DetectionLimit) : peak;
        DetectableTo = detectable ? Falls(courses.DetectionLimit) : peak;
        Symptoms = draw.HasSymptoms ? peak + draw.SymptomsAfterPeak : double.PositiveInfinity;
        Isolates = draw.HasSymptoms && draw.Isolates;

        var level = courses.InfectiousLevel;
        PeakDay = peak;
        (InfectiousFrom, InfectiousTo) = level < draw.Peak ? (Rises(level), Falls(level)) : (peak, peak);
        function = courses.Infectiousness;
        var start = Math.Max(courses.StartLevel - level, 0);
        var (before, after) = (peak - InfectiousFrom, InfectiousTo - peak);
        if (level >= draw.Peak) return;
        switch (function)
        {
            case InfectiousnessFunction.Step:
                (atStart, atPeak) = (1, 1);
                afterPeak = after;
                sumAfterPeak = after * after / 2;
                Total = before + after;
                sumAfterStart = sumAfterPeak + (before * (afterPeak + Total) / 2);
                break;
            case InfectiousnessFunction.LogAboveThreshold:
                (rise, fall, atStart, atPeak) = (up, down, start, draw.Peak - level);
                afterPeak = down * after * after / 2;
                sumAfterPeak = afterPeak * after / 3;
                Total = afterPeak + (before * (atStart + atPeak) / 2);
                sumAfterStart = sumAfterPeak + (before * (Total - (before * ((atStart / 2) + (up * before / 6)))));
                break;
            default:
                (rise, fall) = (up * Math.Log(10), down * Math.Log(10));
                (atStart, atPeak) = (Math.Pow(10, start), Math.Pow(10, draw.Peak - level));
                afterPeak = (atPeak - 1) / fall;
                sumAfterPeak = (afterPeak - after) / fall;
                Total = afterPeak + ((atPeak - atStart) / rise);
                sumAfterStart = sumAfterPeak + (before * (afterPeak + (atPeak / rise))) - ((atPeak - atStart) / (rise * rise));
                break;
        }
    }

    public double DetectableFrom { get; }

    public double DetectableTo { get; }

    public double InfectiousFrom { get; }

    public double InfectiousTo { get; }

    public double PeakDay { get; }

    /// <summary>The day of the onset; infinite without symptoms.</summary>
    public double Symptoms { get; }

    public bool Isolates { get; }

    /// <summary>All that is passed on.</summary>
    public double Total { get; }

    /// <summary>What is passed on in a day at the peak.</summary>
    public double Highest => atPeak;

    /// <summary>What is passed on in a day at an age.</summary>
    public double At(double age)
    {
        if (age < InfectiousFrom || age >= InfectiousTo) return 0;
        if (function == InfectiousnessFunction.Step) return 1;
        if (function == InfectiousnessFunction.LogAboveThreshold)
            return age < PeakDay ? atStart + (rise * (age - InfectiousFrom)) : fall * (InfectiousTo - age);
        return age < PeakDay ? atStart * Math.Exp(rise * (age - InfectiousFrom)) : Math.Exp(fall * (InfectiousTo - age));
    }

    /// <summary>R: what is passed on from an age on.</summary>
    public double Tail(double age)
    {
        if (age >= InfectiousTo) return 0;
        if (age <= InfectiousFrom) return Total;
        if (function == InfectiousnessFunction.Step) return InfectiousTo - age;
        if (age >= PeakDay)
        {
            var left = InfectiousTo - age;
            return function == InfectiousnessFunction.LogAboveThreshold ? fall * left * left / 2 : (Math.Exp(fall * left) - 1) / fall;
        }

        var gone = age - InfectiousFrom;
        return function == InfectiousnessFunction.LogAboveThreshold
            ? Total - (gone * (atStart + (rise * gone / 2)))
            : Total - (atStart * (Math.Exp(rise * gone) - 1) / rise);
    }

    /// <summary>B: the integral of R from an age on.</summary>
    public double TailSum(double age)
    {
        if (age >= InfectiousTo) return 0;
        if (age <= InfectiousFrom) return sumAfterStart + (Total * (InfectiousFrom - age));
        var left = InfectiousTo - age;
        if (function == InfectiousnessFunction.Step) return left * left / 2;
        if (age >= PeakDay)
            return function == InfectiousnessFunction.LogAboveThreshold ? fall * left * left * left / 6 : (((Math.Exp(fall * left) - 1) / fall) - left) / fall;
        var gone = age - InfectiousFrom;
        return function == InfectiousnessFunction.LogAboveThreshold
            ? sumAfterStart - (gone * (Total - (gone * ((atStart / 2) + (rise * gone / 6)))))
            : sumAfterStart - (gone * (Total + (atStart / rise))) + (atStart * (Math.Exp(rise * gone) - 1) / (rise * rise));
    }
}
