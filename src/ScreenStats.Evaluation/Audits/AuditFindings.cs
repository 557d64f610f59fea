using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Audits;

/// <summary>What audited negative runs say about the negatives.</summary>
/// <param name="Program">The whole program.</param>
/// <param name="Groups">The parts of the program, without the whole.</param>
/// <param name="NegativeRuns">All negative runs, audited or not.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record AuditFindings(
    AuditFinding Program, ImmutableArray<AuditFinding> Groups, long NegativeRuns,
    [property: JsonIgnore] Table<AuditFinding> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
