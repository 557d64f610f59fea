using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Accuracy;

/// <summary>How accurate the screen was in this program, against the confirmatory test.</summary>
/// <param name="Basis">What the figures stand on.</param>
/// <param name="Audited">Audited negative runs with a conclusive result.</param>
/// <param name="Missed">Those whose confirmatory test was positive.</param>
/// <param name="NegativeRuns">All negative runs.</param>
/// <param name="NegativesOutside">Negative runs of which the figures do not speak: in no stratum, or in one without an audit.</param>
/// <param name="Strata">The sampling strata; empty without audits.</param>
/// <param name="Sensitivity">Sensitivity; undefined without enough audits.</param>
/// <param name="Specificity">Specificity, likewise.</param>
/// <param name="Prevalence">Infected among the valid tests, likewise.</param>
/// <param name="PositivePredictiveValue">Infected among the positives, verified or not.</param>
/// <param name="NegativePredictiveValue">Not infected among the negatives, likewise.</param>
/// <param name="SensitivityLimit">The sensitivity is at least this.</param>
/// <param name="SpecificityLimit">The specificity is at least this.</param>
/// <param name="SensitivityBounds">What the counts alone allow.</param>
/// <param name="SpecificityBounds">What the counts alone allow.</param>
/// <param name="Assumption">Under what condition the figures hold.</param>
/// <param name="Proven">What the positivity alone proves: the whole program first, then each device.</param>
/// <param name="Rows">Every figure by part and basis, as in the table.</param>
/// <param name="Table">The table of accuracy.</param>
/// <param name="StratumTable">The table of sampling strata.</param>
/// <param name="ProvenTable">The table of what the positivity proves.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record AccuracyFindings(
    AccuracyBasis Basis, long Audited, long Missed, long NegativeRuns, long NegativesOutside, ImmutableArray<StratumFinding> Strata,
    EstimateFinding Sensitivity, EstimateFinding Specificity, EstimateFinding Prevalence,
    EstimateFinding PositivePredictiveValue, EstimateFinding NegativePredictiveValue,
    LimitFinding SensitivityLimit, LimitFinding SpecificityLimit, BoundsFinding SensitivityBounds, BoundsFinding SpecificityBounds,
    string Assumption, ImmutableArray<ProvenFinding> Proven, ImmutableArray<AccuracyRow> Rows,
    [property: JsonIgnore] Table<AccuracyRow> Table, [property: JsonIgnore] Table<StratumFinding> StratumTable,
    [property: JsonIgnore] Table<ProvenFinding> ProvenTable, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <summary>Number of sampling strata.</summary>
    public int StratumCount => Strata.Length;

    /// <summary>Negative runs of infected people, among those that the figures speak of: so many were missed.</summary>
    public EstimateFinding InfectedNegatives => NegativePredictiveValue with
    {
        Estimate = Among(NegativePredictiveValue.Estimate), Lower = Among(NegativePredictiveValue.Upper), Upper = Among(NegativePredictiveValue.Lower),
    };

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table, StratumTable, ProvenTable];

    private double? Among(double? right) => right is { } share ? (NegativeRuns - NegativesOutside) * (1 - share) : null;
}
