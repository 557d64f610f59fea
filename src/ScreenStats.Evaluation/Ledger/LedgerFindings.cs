using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Ledger;

/// <summary>What became of every row of every export.</summary>
public sealed record LedgerFindings : IFinding
{
    /// <summary>Rows read from the screening export.</summary>
    public required long Read { get; init; }

    /// <summary>Rows of the screening export that are counted.</summary>
    public required long Counted { get; init; }

    /// <summary>Rows of the screening export that were set aside.</summary>
    public required long SetAside { get; init; }

    /// <summary>Rows of the screening export that repeat an earlier row.</summary>
    public required long Duplicates { get; init; }

    /// <summary>Rows of the screening export that are runs of control swabs.</summary>
    public required long ControlRuns { get; init; }

    /// <summary>Rows of the screening export kept out of the figures: people with symptoms, and contacts of a case.</summary>
    public required long KeptOut { get; init; }

    /// <summary>The whole ledger: by export, the rows read and then each entry.</summary>
    public required ImmutableArray<LedgerRow> Rows { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<ITable> Tables { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }
}
