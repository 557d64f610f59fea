using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Flagging;

/// <summary>A lot or a site as it is judged.</summary>
public interface IJudgedLevel
{
    /// <summary>Its name.</summary>
    string Name { get; }

    /// <summary>Counted runs.</summary>
    long Runs { get; }

    /// <summary>Runs with a test line and no control line.</summary>
    long Inconclusive { get; }

    /// <summary>Runs with neither line.</summary>
    long Invalid { get; }

    /// <summary>Exact one-sided chance of at least its inconclusive and invalid runs; null where not tested.</summary>
    double? InvalidP { get; }

    /// <summary>The same adjusted for the number compared (Holm); null where not tested.</summary>
    double? InvalidPHolm { get; }

    /// <summary>Why its inconclusive and invalid runs were not tested; null where they were.</summary>
    string? InvalidPUndefined { get; }

    /// <summary>Valid tests.</summary>
    long Tests { get; }

    /// <summary>Positive tests.</summary>
    long Positives { get; }

    /// <summary>Positives that the confirmatory test confirmed.</summary>
    long Confirmed { get; }

    /// <summary>Positives that the confirmatory test refuted.</summary>
    long Refuted { get; }

    /// <summary>Positives with a conclusive confirmatory result: confirmed and refuted ones.</summary>
    long Conclusive { get; }

    /// <summary>Exact one-sided chance of at least its refuted positives; null where not tested.</summary>
    double? RefutedP { get; }

    /// <summary>The same adjusted for the number compared (Holm); null where not tested.</summary>
    double? RefutedPHolm { get; }

    /// <summary>Why its refuted positives were not tested; null where they were.</summary>
    string? RefutedPUndefined { get; }

    /// <summary>What needs looking into.</summary>
    Flag Flag { get; }

    /// <summary>The judgement of its inconclusive and invalid runs.</summary>
    FlagTest InvalidTest { get; }

    /// <summary>The judgement of its refuted positives.</summary>
    FlagTest RefutedTest { get; }

    /// <summary>Where its refuted positives were, where flagged for them; else empty. Most first.</summary>
    ImmutableArray<FlaggedPlace> RefutedPlaces { get; }

    /// <summary>The few places that hold most of them, where flagged for them; else null.</summary>
    FlaggedConcentration? RefutedConcentration { get; }
}
