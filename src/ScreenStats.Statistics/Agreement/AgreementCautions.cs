using System.Collections.Immutable;

namespace ScreenStats.Statistics.Agreement;

/// <summary>The cautions of Feinstein and Cicchetti, by fixed rules.</summary>
/// <remarks>
/// Source of the two paradoxes: Feinstein AR, Cicchetti DV, J Clin Epidemiol 1990;43:543-549, and Cicchetti DV, Feinstein AR, the same
/// 1990;43:551-558. They ask that positive and negative specific agreement stand beside kappa. The limits in the rules are this library's.
/// </remarks>
public static class AgreementCautions
{
    /// <summary>How far kappa may fall below its prevalence-adjusted value before <see cref="AgreementCaution.HighAgreementLowKappa"/> is said.</summary>
    public const double LoweredBy = 0.1;

    /// <summary>How far unequal margins may lift kappa before <see cref="AgreementCaution.UnequalMarginsRaiseKappa"/> is said.</summary>
    public const double RaisedBy = 0.05;

    /// <summary>The cautions that apply to a table.</summary>
    /// <param name="table">The table.</param>
    /// <returns>
    /// High agreement, low kappa: kappa is more than 0.1 below the prevalence-adjusted kappa. Unequal margins (two categories only): kappa is more
    /// than 0.05 above what it would be with the same agreement and prevalence index and no bias. No disagreement seen: all agree and kappa is defined.
    /// </returns>
    public static ImmutableArray<AgreementCaution> Of(AgreementTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var cautions = ImmutableArray.CreateBuilder<AgreementCaution>();
        if (Kappa.Cohen(table).Estimate.Value is not { } kappa || Kappa.PrevalenceAdjusted(table).Value is not { } adjusted) return [];
        if (adjusted - kappa > LoweredBy) cautions.Add(AgreementCaution.HighAgreementLowKappa);
        if (table.Pairs is { } pairs && AgreementIndex.Prevalence(pairs) is { } prevalence)
        {
            var unbiased = (adjusted - (prevalence * prevalence)) / (1 - (prevalence * prevalence));
            if (kappa - unbiased > RaisedBy) cautions.Add(AgreementCaution.UnequalMarginsRaiseKappa);
        }

        if (table.Agreeing == table.Total) cautions.Add(AgreementCaution.NoDisagreementSeen);
        return cautions.ToImmutable();
    }

    /// <summary>Says a caution in plain words.</summary>
    /// <param name="caution">The caution.</param>
    /// <returns>A sentence.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public static string Describe(this AgreementCaution caution) => caution switch
    {
        AgreementCaution.HighAgreementLowKappa =>
            "High agreement, low kappa (Feinstein and Cicchetti 1990): one category is much more frequent than the others, which lowers kappa whatever the readings do. Read the specific agreements beside it, and compare kappas only between tables with like margins.",
        AgreementCaution.UnequalMarginsRaiseKappa =>
            "The readings differ in how often they are positive, and kappa is the higher for it (Feinstein and Cicchetti 1990): test that difference first, for instance with contrast --paired.",
        AgreementCaution.NoDisagreementSeen =>
            "No disagreement was seen: the standard error of kappa is 0 and says nothing about how far it could be from 1. Read the interval of the overall agreement.",
        _ => throw new ArgumentOutOfRangeException(nameof(caution), caution, "Not a caution this library knows."),
    };
}
