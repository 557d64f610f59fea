using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Audits;

/// <summary>What audited negative runs say about the negatives, and about the screen's accuracy.</summary>
/// <param name="Program">The whole program.</param>
/// <param name="Groups">The parts of the program, without the whole.</param>
/// <param name="NegativeRuns">All negative runs, audited or not.</param>
/// <param name="VerifiedPositives">Positive runs that were confirmed or refuted.</param>
/// <param name="Sensitivity">Sensitivity against the confirmatory test, corrected for negatives that were not audited; undefined without audits.</param>
/// <param name="Specificity">Specificity, corrected likewise; undefined without audits.</param>
/// <param name="Assumption">Under what condition the two hold.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record AuditFindings(
    AuditFinding Program, ImmutableArray<AuditFinding> Groups, long NegativeRuns, long VerifiedPositives,
    EstimateFinding Sensitivity, EstimateFinding Specificity, string Assumption,
    [property: JsonIgnore] Table<AuditFinding> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
