using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Evaluation.Cadence.Options;

/// <summary>One way of screening, or what was done.</summary>
internal sealed class ScreeningOption
{
    public ScreeningOption(CadenceOptionSettings option)
    {
        Name = option.Name;
        Weekdays = option.Weekdays;
        Schedule = option.EveryDays is { } days ? ScreeningSchedule.Every(days) : option.Weekdays.IsEmpty ? ScreeningSchedule.Never : ScreeningSchedule.OnWeekdays([.. option.Weekdays]);
    }

    /// <summary>What was done: days between a person's screens as they were, missed ones and all.</summary>
    /// <param name="gaps">Those of all sites.</param>
    /// <param name="sites">Those of each site, and its person-days.</param>
    public ScreeningOption(ImmutableArray<ObservedGap> gaps, IEnumerable<(double PersonDays, ImmutableArray<ObservedGap> Gaps)> sites)
    {
        Sites = [.. sites.Where(site => site.PersonDays > 0).Select(site => (site.PersonDays, ScreeningSchedule.Observed(site.Gaps)))];
        Name = CadenceOptionFinding.AsDone;
        IsAsDone = true;
        Schedule = ScreeningSchedule.Observed(gaps);
    }

    /// <summary>No screening, where it is not among the options and they are held against it.</summary>
    public static ScreeningOption NoScreening { get; } = new(new CadenceOptionSettings { Name = "none" });

    public string Name { get; }

    public ImmutableArray<DayOfWeek> Weekdays { get; } = [];

    /// <summary>When screens fall due, of somebody who takes them all.</summary>
    public ScreeningSchedule Schedule { get; }

    public bool IsAsDone { get; }

    /// <summary>Whether people leave on the screen under this option though they wait for confirmation under the others.</summary>
    public bool LeavesOnScreen { get; init; }

    /// <summary>Of what was done: the gaps of each site, to be weighted by its person-days, as a plan by site is.</summary>
    public ImmutableArray<(double PersonDays, ScreeningSchedule Schedule)> Sites { get; } = [];

    /// <summary>Screens due of one person in a day.</summary>
    public double ScreensPerDay => Schedule.DuePerDay;

    /// <summary>Days from one screen to the next, on average; null where nobody is screened.</summary>
    public double? EveryDays => ScreensPerDay > 0 ? 1 / ScreensPerDay : null;

    public bool IsNone => ScreensPerDay == 0;

    /// <summary>On what a person is sent away under this option.</summary>
    public IsolateOn LeavesOn(IsolateOn isolateOn) => LeavesOnScreen ? IsolateOn.Screen : isolateOn;

    /// <summary>The chance that a positive screen sends the person away: where that waits for confirmation and the option is what was done, the share that was followed up.</summary>
    public double Acted(ParameterSet at, IsolateOn isolateOn) => IsAsDone && isolateOn == IsolateOn.Confirmation ? at[Parameter.FollowThrough] ?? 1 : 1;
}
