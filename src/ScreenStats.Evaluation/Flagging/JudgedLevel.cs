using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ScreenStats.Evaluation.Flagging;

/// <summary>One lot or site: its counts, how likely they are by chance, and whether it needs looking into.</summary>
public abstract record JudgedLevel : IJudgedLevel
{
    /// <inheritdoc/>
    public required long Runs { get; init; }

    /// <inheritdoc/>
    public required long Inconclusive { get; init; }

    /// <inheritdoc/>
    public required long Invalid { get; init; }

    /// <summary>Inconclusive and invalid runs together.</summary>
    public long Unusable => Inconclusive + Invalid;

    /// <inheritdoc/>
    public double? InvalidP => InvalidTest.P;

    /// <inheritdoc/>
    public double? InvalidPHolm => InvalidTest.PHolm;

    /// <inheritdoc/>
    public string? InvalidPUndefined => InvalidTest.PUndefined;

    /// <inheritdoc/>
    public required long Tests { get; init; }

    /// <inheritdoc/>
    public required long Positives { get; init; }

    /// <inheritdoc/>
    public required long Confirmed { get; init; }

    /// <inheritdoc/>
    public required long Refuted { get; init; }

    /// <inheritdoc/>
    public long Conclusive => Confirmed + Refuted;

    /// <inheritdoc/>
    public double? RefutedP => RefutedTest.P;

    /// <inheritdoc/>
    public double? RefutedPHolm => RefutedTest.PHolm;

    /// <inheritdoc/>
    public string? RefutedPUndefined => RefutedTest.PUndefined;

    /// <inheritdoc/>
    public Flag Flag => (RefutedTest.Flagged ? Flag.Refuted : Flag.None) | (InvalidTest.Flagged ? Flag.Invalid : Flag.None);

    /// <inheritdoc/>
    public required FlagTest InvalidTest { get; init; }

    /// <inheritdoc/>
    public required FlagTest RefutedTest { get; init; }

    /// <inheritdoc/>
    public required ImmutableArray<FlaggedPlace> RefutedPlaces { get; init; }

    /// <inheritdoc/>
    public required FlaggedConcentration? RefutedConcentration { get; init; }

    [JsonIgnore]
    string IJudgedLevel.Name => LevelName;

    /// <summary>Name of the lot or site.</summary>
    [JsonIgnore]
    protected abstract string LevelName { get; }
}
