using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Rows;

namespace ScreenStats.Evaluation.Cadence.Options;

/// <summary>One way of screening, or what was done.</summary>
internal sealed class ScreeningOption
{
    public ScreeningOption(CadenceOptionSettings option)
    {
        Name = option.Name;
        EveryDays = option.IsNone ? null : option.EveryDays ?? 7.0 / option.Weekdays.Length;
        Weekdays = option.Weekdays;
        ScreensPerDay = option.ScreensPerDay;
    }

    /// <summary>What was done: days between a person's screens as they were, missed ones and all.</summary>
    public ScreeningOption(ImmutableArray<CadenceGap> gaps)
    {
        Name = CadenceOptionFinding.AsDone;
        Gaps = gaps;
        EveryDays = gaps.Sum(gap => (double)gap.Days * gap.Count) / gaps.Sum(gap => gap.Count);
        ScreensPerDay = 1 / EveryDays.Value;
    }

    public string Name { get; }

    public double? EveryDays { get; }

    public ImmutableArray<DayOfWeek> Weekdays { get; } = [];

    /// <summary>Days between screens as they were; empty for an option to choose.</summary>
    public ImmutableArray<CadenceGap> Gaps { get; } = [];

    /// <summary>Screens due of one person in a day.</summary>
    public double ScreensPerDay { get; }

    public bool IsNone => ScreensPerDay == 0;

    public bool IsAsDone => !Gaps.IsEmpty;
}
