namespace ScreenStats.Statistics.Accuracy;

/// <summary>Whether a stated specificity agrees with what was observed.</summary>
public enum SpecificityOutcome
{
    /// <summary>Neither the lowest nor the highest possible count of refuted positives contradicts it. Not a proof that it holds.</summary>
    Compatible,

    /// <summary>It is contradicted on the same side whatever the missing follow-up would have shown.</summary>
    NotCompatible,

    /// <summary>The answer hangs on positives that were never followed up, or there are no data.</summary>
    CannotTell,
}
