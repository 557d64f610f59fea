namespace ScreenStats.Statistics.Monitoring.Acceptance;

/// <summary>The smallest plan that keeps two risks.</summary>
public sealed record PlanSearch
{
    internal PlanSearch(SamplingPlan? plan, double? acceptedAtGood, double? acceptedAtBad)
    {
        Plan = plan;
        AcceptedAtGood = acceptedAtGood;
        AcceptedAtBad = acceptedAtBad;
    }

    /// <summary>The plan; null where none within the limits keeps both risks.</summary>
    public SamplingPlan? Plan { get; }

    /// <summary>The chance that a lot at the good rate is accepted; null without a plan.</summary>
    public double? AcceptedAtGood { get; }

    /// <summary>The chance that a lot at the bad rate is accepted; null without a plan.</summary>
    public double? AcceptedAtBad { get; }

    /// <summary>Why there is no plan; null where there is one.</summary>
    public UndefinedReason? Reason => Plan is null ? UndefinedReason.NoPlanWithinLimits : null;
}
