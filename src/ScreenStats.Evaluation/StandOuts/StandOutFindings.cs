using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.StandOuts;

/// <summary>What stands out among lots and sites, ranked, and what does not.</summary>
/// <param name="StandingOut">How many lots and sites stand out by some measure.</param>
/// <param name="Unremarkable">How many lots and sites were compared and stand out by no measure.</param>
/// <param name="NotCompared">How many lots and sites could be compared by no measure.</param>
/// <param name="Rows">Every lot and site by every measure: those that stand out first, ranked; then the rest by kind, name and measure.</param>
/// <param name="Table">The same as a table.</param>
/// <param name="Sentences">What to say of it.</param>
public sealed record StandOutFindings(
    int StandingOut, int Unremarkable, int NotCompared, ImmutableArray<StandOutRow> Rows,
    [property: JsonIgnore] Table<StandOutRow> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
