using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.PredictiveValues;

/// <summary>What a positive run was worth in this program.</summary>
/// <param name="Observed">Confirmed, of the positive runs that were confirmed or refuted, in the whole program.</param>
/// <param name="Bounds">What the positive runs without a conclusion leave possible.</param>
/// <param name="FlaggedLots">Lots flagged for refuted positives, in order.</param>
/// <param name="WithoutFlaggedLots">The same without the runs of those lots; equal to <paramref name="Observed"/> where none is flagged.</param>
/// <param name="WithoutFlaggedLotsBounds">Its bounds.</param>
/// <param name="Corrected">The observed value corrected for the confirmatory test's own accuracy; undefined where that is not stated.</param>
/// <param name="Inconclusive">Confirmed, of the inconclusive runs that were confirmed or refuted: kept apart.</param>
/// <param name="InconclusiveBounds">Their bounds.</param>
/// <param name="Groups">The parts of the program, without the whole.</param>
/// <param name="Table">The table of predictive values, with the expected ones.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record PredictiveValueFindings(
    ProportionFinding Observed, PredictiveValueBounds Bounds,
    ImmutableArray<string> FlaggedLots, ProportionFinding WithoutFlaggedLots, PredictiveValueBounds WithoutFlaggedLotsBounds,
    EstimateFinding Corrected, ProportionFinding Inconclusive, PredictiveValueBounds InconclusiveBounds,
    ImmutableArray<ObservedPredictiveValue> Groups, [property: JsonIgnore] Table<PredictiveValueRow> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
