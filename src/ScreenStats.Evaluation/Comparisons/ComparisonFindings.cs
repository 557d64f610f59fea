using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Comparisons;

/// <summary>Sites, or what else is compared, side by side: as counted, and once adjusted for what they do not share.</summary>
/// <param name="By">What is compared: <c>site</c>, <c>operator</c>, <c>kit</c>, <c>specimen</c> or <c>region</c>.</param>
/// <param name="LevelCount">Levels with a counted run.</param>
/// <param name="Confidence">Confidence of all limits.</param>
/// <param name="LeftOutLots">Lots that are flagged and left out where the basis says so, in order.</param>
/// <param name="OutbreakRuns">Counted runs that were taken because of an outbreak.</param>
/// <param name="NotRecordedRuns">Counted runs for which what is compared is not recorded.</param>
/// <param name="Summaries">What each measure and basis say as a whole: the basis that leads before the other.</param>
/// <param name="Rows">Each level by each measure and basis.</param>
/// <param name="Tests">Whether, and by how much, levels differ as a whole.</param>
/// <param name="Pairs">Every two levels, where they are few.</param>
/// <param name="Model">The terms of the logistic models.</param>
/// <param name="Funnel">The limits of the funnels at a grid of sizes.</param>
/// <param name="Tables">All of it as tables.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record ComparisonFindings(
    string By, int LevelCount, double Confidence, ImmutableArray<string> LeftOutLots, long OutbreakRuns, long NotRecordedRuns, ImmutableArray<ComparisonSummary> Summaries, ImmutableArray<ComparisonRow> Rows,
    ImmutableArray<ComparisonTestRow> Tests, ImmutableArray<ComparisonPairRow> Pairs, ImmutableArray<ComparisonModelRow> Model, ImmutableArray<ComparisonFunnelRow> Funnel,
    [property: JsonIgnore] ImmutableArray<ITable> Tables, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <summary>Above this many levels pairs are not compared: nobody reads so many.</summary>
    public const int MostPaired = 12;

    /// <summary>The rows of one measure and basis.</summary>
    /// <param name="summary">The measure and basis.</param>
    /// <returns>Its rows, in the order of levels.</returns>
    public IEnumerable<ComparisonRow> RowsOf(ComparisonSummary summary)
    {
        ArgumentNullException.ThrowIfNull(summary);
        return Rows.Where(row => row.Measure == summary.Measure && row.Basis == summary.Basis);
    }
}
