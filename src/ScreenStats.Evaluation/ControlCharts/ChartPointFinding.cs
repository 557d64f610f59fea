using ScreenStats.Statistics.Monitoring.Runs;
using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>One point of a control chart.</summary>
/// <param name="Name">What tells it from the others of its chart: the first day of the period, the lot, the operator, the number of the refuted positive.</param>
/// <param name="PeriodStart">First day of the period, first day of use of the lot, or day of the refuted positive that ends the stretch; null for operators.</param>
/// <param name="Trials">Runs or valid tests; null for stretches.</param>
/// <param name="Events">Unusable runs or refuted positives; null for stretches.</param>
/// <param name="Estimate">What was seen: a share, tests or days.</param>
/// <param name="Plotted">What is held against the limits: the same, or the moving average up to the point.</param>
/// <param name="Centre">The centre at this point; null where the chart has none.</param>
/// <param name="Lower">The lower limit, itself inside; null where there is none.</param>
/// <param name="Upper">The upper limit, itself inside; null where there is none.</param>
/// <param name="Score">How far from the centre, as a standard normal variable would lie; null without limits.</param>
/// <param name="Signals">The rules that fired.</param>
/// <param name="Above">Whether it lies above the centre.</param>
/// <param name="Incomplete">Whether positives of the period still wait for a result, so that the point is shown and judged only for lying above.</param>
public sealed record ChartPointFinding(
    string Name, DateOnly? PeriodStart, long? Trials, long? Events, double Estimate, double Plotted,
    double? Centre, double? Lower, double? Upper, double? Score, ImmutableArray<RunRule> Signals, bool Above, bool Incomplete)
{
    /// <summary>Whether it lies outside the limits.</summary>
    [JsonIgnore]
    public bool Outside => Signals.Contains(RunRule.OutsideLimits);
}
