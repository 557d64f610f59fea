using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>One way of screening with what follows a positive: what it costs and gains more than no screening, over the days looked at.</summary>
public sealed record WorthOption
{
    /// <summary>Option and confirmation, joined by a vertical bar.</summary>
    public required string Key { get; init; }

    /// <summary>The way of screening, as in the analysis how often.</summary>
    public required string Option { get; init; }

    /// <summary>What follows a positive screen.</summary>
    public required WorthConfirmation Confirmation { get; init; }

    /// <summary>What is spent: screens, confirmatory tests, isolation and false alarms.</summary>
    public required EstimateFinding Spending { get; init; }

    /// <summary>What is spent, less illness and outbreaks saved where they are priced; below 0 where it saves money.</summary>
    public required EstimateFinding Cost { get; init; }

    /// <summary>Infections averted, or infectious days removed.</summary>
    public required EstimateFinding Effect { get; init; }

    /// <summary>Value of the effect at the stated value, less the cost.</summary>
    public required EstimateFinding NetBenefit { get; init; }

    /// <summary>The mean net benefit over the draws: what counts for a choice under uncertainty; null where that is not known.</summary>
    public required double? MeanNetBenefit { get; init; }

    /// <summary>Why there is none; null where there is one.</summary>
    public required string? MeanNetBenefitUndefined { get; init; }

    /// <summary>Where it stands among the others.</summary>
    public required WorthStanding Standing { get; init; }

    /// <summary>The options that dominate it, in words; empty where none does.</summary>
    public required string DominatedBy { get; init; }

    /// <summary>On the frontier: what one more effect costs against the next cheaper option on it.</summary>
    public required EstimateFinding IncrementalRatio { get; init; }

    /// <summary>The share of draws in which its net benefit is highest at the stated value; null where that is not known.</summary>
    public required double? BestShare { get; init; }

    /// <summary>Why there is no such share; null where there is one.</summary>
    public required string? BestShareUndefined { get; init; }

    /// <summary>Whether its net benefit at the stated value is the highest, at the central figures.</summary>
    public required bool IsBest { get; init; }

    /// <summary>Whether it is the one that the verdict is of.</summary>
    public required bool IsJudged { get; init; }

    /// <summary>Whether it is what was done, site by site, with the gaps as they were: it is held against the options, and is none of them to choose.</summary>
    public bool IsAsDone { get; init; }

    /// <summary>Whether nobody is screened.</summary>
    public required bool IsNone { get; init; }
}
