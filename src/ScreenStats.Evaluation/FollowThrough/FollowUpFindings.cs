using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.FollowThrough;

/// <summary>How many of the runs that called for a confirmatory test got a conclusive one.</summary>
/// <param name="Positive">Positive runs of the whole program.</param>
/// <param name="Inconclusive">Inconclusive runs of the whole program, kept apart.</param>
/// <param name="Groups">The parts of the program, without the whole.</param>
/// <param name="HasConfirmatory">Whether there is a confirmatory export at all.</param>
/// <param name="ConfirmWithinHours">Hours after a run within which a specimen follows it up.</param>
/// <param name="ReportingLagHours">Hours from collection to report that were allowed before a missing specimen counts as unverified.</param>
/// <param name="ReportingLagFromData">Whether that lag is the data's own 95th percentile.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record FollowUpFindings(
    FollowUpFinding Positive, FollowUpFinding Inconclusive, ImmutableArray<FollowUpFinding> Groups,
    bool HasConfirmatory, double ConfirmWithinHours, double ReportingLagHours, bool ReportingLagFromData,
    [property: JsonIgnore] Table<FollowUpFinding> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
