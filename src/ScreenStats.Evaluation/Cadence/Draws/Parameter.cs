namespace ScreenStats.Evaluation.Cadence.Draws;

/// <summary>The figures that the outcomes are computed from.</summary>
internal enum Parameter
{
    Sensitivity,
    FalsePositiveRate,
    DetectableFrom,
    DetectableTo,
    InfectiousFrom,
    InfectiousTo,
    DetectionLimit,
    SymptomShare,
    SymptomOnset,
    SymptomSpread,
    SymptomIsolation,
    Delay,
    ConfirmatoryDelay,
    RepeatedMisses,
    Participation,

    /// <summary>Infections per person-day; where it is from the data, the cases divided by the share followed up.</summary>
    Incidence,
    FollowThrough,
    Reproduction,
    BroughtIn,
    Dispersion,
    FalseAlarmDays,

    /// <summary>Days after which someone infected can be infected again; not known where nobody is.</summary>
    ImmunityDays,

    /// <summary>Inconclusive runs of all runs, and of these the shares that get a confirmatory test and that are repeated on the same day.</summary>
    Inconclusive,
    InconclusiveTested,
    InconclusiveRepeated,
}
