using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Persons;

/// <summary>People and cases in one part of the program.</summary>
/// <param name="Key">The level; empty for the whole program.</param>
/// <param name="Grouping">Program or site.</param>
/// <param name="Level">Name of the site; empty for the whole program.</param>
/// <param name="Tested">People with at least one counted run here.</param>
/// <param name="EverPositive">People with at least one positive run here.</param>
/// <param name="CasesThroughPositive">Cases found through a positive run.</param>
/// <param name="CasesThroughInconclusive">Cases found through an inconclusive run.</param>
/// <param name="PersonWeeks">Pairs of a person and an ISO week with at least one counted run here.</param>
/// <param name="CaseShare">Cases among person-weeks; the rate per 1,000 is a thousand times this.</param>
public sealed record PersonRow(
    string Key, Grouping Grouping, string Level, long Tested, long EverPositive, long CasesThroughPositive, long CasesThroughInconclusive,
    long PersonWeeks, ProportionFinding CaseShare)
{
    /// <summary>All cases.</summary>
    public long Cases => CasesThroughPositive + CasesThroughInconclusive;

    /// <summary>Cases per 1,000 person-weeks; null without person-weeks.</summary>
    public double? CasesPerThousandPersonWeeks => CaseShare.Estimate * 1000;

    /// <summary>Why there is no rate; null where there is one.</summary>
    public string? CasesPerThousandPersonWeeksUndefined => CaseShare.EstimateUndefined;

    /// <summary>Lower limit of the rate, widened for clusters.</summary>
    public double? CasesPerThousandLower => CaseShare.WidenedLower * 1000;

    /// <summary>Upper limit of the rate, widened for clusters.</summary>
    public double? CasesPerThousandUpper => CaseShare.WidenedUpper * 1000;
}
