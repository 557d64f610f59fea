using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.TruePrevalence;

/// <summary>The prevalence behind the positivity, corrected for the stated accuracy of the devices.</summary>
/// <param name="Program">The whole program over the whole span.</param>
/// <param name="Periods">The whole program by reporting period, in order.</param>
/// <param name="PeriodsAtZero">Periods with fewer positives than 1 - specificity alone would give.</param>
/// <param name="Sites">Each site over the whole span.</param>
/// <param name="Devices">Each device over the whole span.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record TruePrevalenceFindings(
    TruePrevalenceFinding Program, ImmutableArray<TruePrevalenceFinding> Periods, int PeriodsAtZero,
    ImmutableArray<TruePrevalenceFinding> Sites, ImmutableArray<TruePrevalenceFinding> Devices,
    [property: JsonIgnore] Table<TruePrevalenceRow> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <summary>Number of periods.</summary>
    public int PeriodCount => Periods.Length;

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
