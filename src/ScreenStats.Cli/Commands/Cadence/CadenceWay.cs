using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Cli.Commands.Cadence;

/// <summary>One way of screening that is compared.</summary>
/// <param name="EveryDays">Days from one screen to the next, on average.</param>
/// <param name="Weekdays">The weekdays; empty where it does not go by them.</param>
/// <param name="Gaps">Gaps between screens as they were; empty for a plan.</param>
internal sealed record CadenceWay(double EveryDays, ImmutableArray<DayOfWeek> Weekdays, ImmutableArray<ObservedGap> Gaps)
{
    public static CadenceWay Every(double days) => new(days, [], []);

    public static CadenceWay On(ImmutableArray<DayOfWeek> weekdays) => new(7.0 / weekdays.Length, weekdays, []);

    public static CadenceWay AsDone(ImmutableArray<ObservedGap> gaps) => new(gaps.Sum(gap => (double)gap.Days * gap.Count) / gaps.Sum(gap => gap.Count), [], gaps);

    /// <summary>True where it is no more than a number of days, as the closed forms take it.</summary>
    public bool IsRegular => Weekdays.IsEmpty && Gaps.IsEmpty;

    /// <summary>The schedule; who takes part counts for a plan, while gaps as they were hold it already.</summary>
    public ScreeningSchedule Schedule(double participation) => !Gaps.IsEmpty ? ScreeningSchedule.Observed(Gaps)
        : (Weekdays.IsEmpty ? ScreeningSchedule.Every(EveryDays) : ScreeningSchedule.OnWeekdays(Weekdays)) with { Participation = participation };
}
