using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Evaluation.Cadence.Courses;

/// <summary>Windows, symptoms and delays from a value for each figure; draws beyond what a course can hold are cut there.</summary>
internal static class CourseParts
{
    private const double LargestCorrelation = 0.9999;
    private const double LargestSpread = 2;
    private const double ShortestOnset = 1e-3;

    /// <summary>The two windows. An end drawn before its beginning makes a window without length.</summary>
    public static InfectionWindows Windows(ParameterSet at)
    {
        double Age(Parameter parameter, double least) => Math.Clamp(at[parameter] ?? least, least, InfectionCourse.LongestDays);
        var from = Age(Parameter.DetectableFrom, 0);
        var infectious = Age(Parameter.InfectiousFrom, 0);
        return new InfectionWindows(from, Age(Parameter.DetectableTo, from), infectious, Age(Parameter.InfectiousTo, infectious));
    }

    public static SymptomOnset? Symptoms(ParameterSet at) => at[Parameter.SymptomShare] is > 0 and var share && at[Parameter.SymptomOnset] is { } onset
        ? new SymptomOnset(
            share, Math.Clamp(onset, ShortestOnset, InfectionCourse.LongestDays), Math.Min(at[Parameter.SymptomSpread] ?? 0, LargestSpread), at[Parameter.SymptomIsolation] ?? 1)
        : null;

    public static double Correlation(ParameterSet at) => Math.Min(at[Parameter.RepeatedMisses] ?? 0, LargestCorrelation);

    /// <summary>Days from a positive screen to staying away.</summary>
    public static double DaysToIsolation(ParameterSet at, IsolateOn isolateOn) =>
        (at[Parameter.Delay] ?? 0) is var delay && isolateOn == IsolateOn.Confirmation ? Math.Max(delay, at.Known(Parameter.ConfirmatoryDelay)) : delay;

    /// <summary>The share of the infectious time on each day after infection: the whole days nearest to its age.</summary>
    public static double[] ByDay(double last, Func<double, double, double> between)
    {
        const int Longest = 400;
        var days = new double[Math.Clamp((int)Math.Ceiling(last + 0.5), 1, Longest)];
        for (var day = 1; day <= days.Length; day++) days[day - 1] = between(day == 1 ? 0 : day - 0.5, day + 0.5);
        return days;
    }
}
