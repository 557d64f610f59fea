using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;

namespace ScreenStats.Evaluation.Cadence.Inputs;

/// <summary>What was planned at the sites, against the person-days there: sites without a plan are left out.</summary>
internal sealed class SitePlans
{
    public SitePlans(DataFigures data, CadenceSettings settings)
    {
        var parts = ImmutableArray.CreateBuilder<(CadenceOptionSettings Option, long PersonDays)>();
        foreach (var (site, gaps, days) in data.Sites)
        {
            if (settings.PlanAt(site) is not { } plan) continue;
            Done += gaps;
            PersonDays += days;
            Due += days * plan.ScreensPerDay;
            parts.Add((plan, days));
        }

        Parts = parts.ToImmutable();
    }

    /// <summary>The plan of each site that has one, and the person-days there.</summary>
    public ImmutableArray<(CadenceOptionSettings Option, long PersonDays)> Parts { get; }

    /// <summary>Person-days of people tested twice, between their first screen and their last, at sites with a plan.</summary>
    public long PersonDays { get; }

    /// <summary>Screens that were due in them.</summary>
    public double Due { get; }

    /// <summary>Screens that were done.</summary>
    public long Done { get; }
}
