using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.IntervalCases;

/// <summary>Positive confirmatory specimens of people whose latest run was negative. Never part of sensitivity, specificity or negative predictive value.</summary>
/// <param name="Total">All of them.</param>
/// <param name="MedianDays">Median of days since the negative run; null without any.</param>
/// <param name="ScreenDetected">Cases found through a positive or inconclusive run.</param>
/// <param name="ProgramSensitivity">Cases found by screening, of these and all interval cases: what the program as a whole found of what came to light.</param>
/// <param name="Days">By days since the negative run, ascending, as in the table.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record IntervalCaseFindings(
    long Total, double? MedianDays, long ScreenDetected, ProportionFinding ProgramSensitivity, ImmutableArray<IntervalCaseFinding> Days,
    [property: JsonIgnore] Table<IntervalCaseFinding> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
