using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Methods for following rates over time.</summary>
internal static class TrendNotes
{
    public const string LocalLevel = "local-level-binomial";
    public const string Spline = "penalised-spline";
    public const string Growth = "log-linear-growth";
    public const string Segmented = "segmented-logit";
    public const string Interrupted = "interrupted-series";
    public const string Weekdays = "weekdays-within-weeks";

    public static ImmutableArray<MethodNote> All { get; } = [];
}
