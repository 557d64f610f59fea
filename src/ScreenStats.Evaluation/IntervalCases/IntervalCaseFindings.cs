using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.IntervalCases;

/// <summary>Positive confirmatory specimens of people whose latest run was negative. Never part of sensitivity, specificity or negative predictive value.</summary>
/// <param name="Total">All of them.</param>
/// <param name="MedianDays">Median of days since the negative run; null without any.</param>
/// <param name="Days">By days since the negative run, ascending, as in the table.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record IntervalCaseFindings(
    long Total, double? MedianDays, ImmutableArray<IntervalCaseFinding> Days,
    [property: JsonIgnore] Table<IntervalCaseFinding> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
