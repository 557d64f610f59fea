using System.Collections;
using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Lots;

/// <summary>Every lot, in the ordinal order of its name. In findings.json this is a list of the lots.</summary>
public sealed class LotFindings : IReadOnlyList<LotFinding>, IFinding
{
    private readonly Table<LotFinding> table;

    internal LotFindings(Table<LotFinding> table, ImmutableArray<Sentence> sentences)
    {
        this.table = table;
        Sentences = sentences;
    }

    /// <inheritdoc/>
    [JsonIgnore]
    public int Count => table.Count;

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [table];

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<Sentence> Sentences { get; }

    /// <inheritdoc/>
    public LotFinding this[int index] => table[index];

    /// <summary>The lots as a table.</summary>
    /// <returns>The table.</returns>
    public Table<LotFinding> ToTable() => table;

    /// <inheritdoc/>
    public IEnumerator<LotFinding> GetEnumerator() => table.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
