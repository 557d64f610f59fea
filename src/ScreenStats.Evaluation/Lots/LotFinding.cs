using ScreenStats.Evaluation.Flagging;

namespace ScreenStats.Evaluation.Lots;

/// <summary>One lot: its counts, how likely they are by chance, and whether it needs looking into.</summary>
public sealed record LotFinding : JudgedLevel
{
    /// <summary>Name of the lot.</summary>
    public required string Lot { get; init; }

    /// <inheritdoc/>
    protected override string LevelName => Lot;
}
