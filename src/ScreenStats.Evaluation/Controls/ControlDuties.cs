using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Controls;

/// <summary>Occasions for control swabs, and how many passed without one.</summary>
internal static class ControlDuties
{
    /// <summary>The occasions, each as a share for the program and by site, and those without a control one by one (but days, which are many).</summary>
    public static (ImmutableArray<ControlDuty> Duties, ImmutableArray<ControlStart> Missed) Of(TallyCells cells, PolicySettings policy, double confidence)
    {
        var duties = ImmutableArray.CreateBuilder<ControlDuty>();
        var missed = ImmutableArray.CreateBuilder<ControlStart>();
        foreach (var trigger in Enum.GetValues<ControlTrigger>())
        {
            var required = policy.ControlsRequired.Contains(trigger);
            var unknown = ControlStarts.Unknown(trigger, cells.Controls);
            var starts = unknown is null ? ControlStarts.Of(trigger, cells.Controls, cells.Screens, cells.Operators) : [];
            ControlDuty Duty(Grouping grouping, string level, IEnumerable<ControlStart> some)
            {
                var counter = new ClusterCounter();
                var without = 0L;
                foreach (var start in some)
                {
                    counter.Add(start.Site, start.FirstDay, 1, start.IsMissed ? 1 : 0);
                    without += start.RunsWithoutControl;
                }

                return new ControlDuty($"{LevelNames.Of(trigger)}|{LevelNames.Of(grouping)}|{level}", trigger, grouping, level, required, unknown, without,
                    counter.Proportion(confidence).Because(unknown ?? "nothing started"));
            }

            duties.Add(Duty(Grouping.Program, "", starts));
            foreach (var site in starts.GroupBy(start => start.Site, StringComparer.Ordinal).OrderBy(site => site.Key, Levels.Order)) duties.Add(Duty(Grouping.Site, site.Key, site));
            if (trigger != ControlTrigger.Daily) missed.AddRange(starts.Where(start => start.IsMissed));
        }

        return (duties.ToImmutable(), missed.ToImmutable());
    }
}
