using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.LotTests;

/// <summary>Lots compared within site-weeks, or sites within lot-weeks.</summary>
/// <param name="By"><c>lot</c> or <c>site</c>.</param>
/// <param name="Families">The comparisons that were made, one for each measure.</param>
/// <param name="Rows">Each lot or site by each measure.</param>
/// <param name="LeftOut">Of sites: lots whose runs are left out of the comparison by refuted positives, because they stand out by these themselves.</param>
/// <param name="Table">The rows as a table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record PlaceTestFindings(
    string By, ImmutableArray<PlaceTestFamily> Families, ImmutableArray<PlaceTestRow> Rows, ImmutableArray<string> LeftOut,
    [property: JsonIgnore] Table<PlaceTestRow> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
