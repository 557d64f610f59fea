namespace ScreenStats.Statistics.Agreement;

/// <summary>Why a kappa must not be read alone (see <see cref="AgreementCautions"/> for rules and words).</summary>
public enum AgreementCaution
{
    /// <summary>The readings agree often and kappa is low, because one category is much more frequent than the others.</summary>
    HighAgreementLowKappa,

    /// <summary>The readings differ in how often they say yes, and kappa is the higher for it.</summary>
    UnequalMarginsRaiseKappa,

    /// <summary>No disagreement was seen, so the standard error is 0.</summary>
    NoDisagreementSeen,
}
