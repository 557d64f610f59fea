using ScreenStats.Counting.Programs;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Evaluation.Shared;

/// <summary>Stated figures as the statistics take them.</summary>
internal static class Accuracies
{
    public static AccuracyStatement Statement(this StatedAccuracy stated) => stated switch
    {
        { Successes: { } successes, Trials: { } trials } => AccuracyStatement.FromCounts(successes, trials),
        { Lower: { } lower, Upper: { } upper } => AccuracyStatement.FromInterval(stated.Value, lower, upper),
        _ => AccuracyStatement.Exact(stated.Value),
    };

    public static AccuracyStatement Statement(this PrevalenceSettings stated) => stated is { Lower: { } lower, Upper: { } upper }
        ? AccuracyStatement.FromInterval(stated.Value, lower, upper)
        : AccuracyStatement.Exact(stated.Value);
}
