using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Statistics.Cadence.Windows;

namespace ScreenStats.Evaluation.Cadence.Courses;

/// <summary>Windows by how many screens fall into them: quick, for the draws.</summary>
internal sealed class QuickCourses : ICourseModel
{
    private readonly IsolateOn isolateOn;
    private readonly int? isolationDays;
    private readonly ImmutableArray<ScreeningOption> options;
    private readonly ScreenCounts[] counts;
    private readonly EarlierScreens earlier;

    public QuickCourses(KnownFigures known, OptionList options, double longestDays)
    {
        isolateOn = known.Settings.IsolateOn;
        isolationDays = known.IsolationDays;
        KnowsInfectious = known.Knows(Parameter.InfectiousFrom);
        this.options = [.. options.Computed];
        counts = [.. this.options.Select(option => option.IsAsDone
            ? ScreenCounts.Mixture([.. option.Sites.Select(site => (site.PersonDays, ScreenCounts.Of(site.Schedule, longestDays)))]) : ScreenCounts.Of(option.Schedule, longestDays))];
        earlier = EarlierScreens.Together([.. known.Data.SiteGaps.Select(site => EarlierScreens.Of(site.People, site.Gaps, longestDays))]);
    }

    public bool KnowsInfectious { get; }

    public CourseFigures Of(ParameterSet at)
    {
        var windows = CourseParts.Windows(at);
        WindowCourse Course(IsolateOn leaves) =>
            new(windows, at.Known(Parameter.Sensitivity), CourseParts.Symptoms(at), CourseParts.DaysToIsolation(at, leaves), CourseParts.Correlation(at), isolationDays);
        var course = Course(isolateOn);
        var onScreen = options.Any(option => option.LeavesOnScreen) ? Course(IsolateOn.Screen) : course;
        var (detection, removed, caught) = (new double[options.Length], new double[KnowsInfectious ? options.Length : 0], new double[KnowsInfectious ? options.Length : 0]);
        var away = new double[isolationDays is null ? 0 : options.Length];
        for (var index = 0; index < options.Length; index++)
        {
            var option = options[index];
            if (option.IsNone)
            {
                if (isolationDays is not null) away[index] = course.DaysAwayBySymptoms!.Value;
                if (!KnowsInfectious) continue;
                (removed[index], caught[index]) = (course.RemovedBySymptoms, course.CaughtBySymptoms);
                continue;
            }

            var outcome = (option.LeavesOnScreen ? onScreen : course).Of(counts[index], (option.IsAsDone ? 1 : at.Known(Parameter.Participation)) * option.Acted(at, isolateOn));
            detection[index] = outcome.Detection;
            if (isolationDays is not null) away[index] = outcome.DaysAway!.Value;
            if (!KnowsInfectious) continue;
            removed[index] = outcome.FractionRemoved;
            caught[index] = outcome.CaughtBeforeInfectious;
        }

        return new CourseFigures(detection, removed, caught, course.RemovedBySymptoms, windows.InfectiousDays, away, course.DaysAwayBySymptoms ?? 0, course.Exposure(earlier));
    }

    public double[] InfectiousnessByDay(ParameterSet at)
    {
        var windows = CourseParts.Windows(at);
        return CourseParts.ByDay(windows.InfectiousTo, (from, to) => Math.Max(0, Math.Min(to, windows.InfectiousTo) - Math.Max(from, windows.InfectiousFrom)));
    }
}
