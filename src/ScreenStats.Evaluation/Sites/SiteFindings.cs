using System.Collections;
using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Sites;

/// <summary>Every site, in the ordinal order of its name. In findings.json this is a list of the sites.</summary>
public sealed class SiteFindings : IReadOnlyList<SiteFinding>, IFinding
{
    private readonly Table<SiteFinding> table;

    internal SiteFindings(Table<SiteFinding> table, ImmutableArray<Sentence> sentences)
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
    public SiteFinding this[int index] => table[index];

    /// <summary>The sites as a table.</summary>
    /// <returns>The table.</returns>
    public Table<SiteFinding> ToTable() => table;

    /// <inheritdoc/>
    public IEnumerator<SiteFinding> GetEnumerator() => table.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
