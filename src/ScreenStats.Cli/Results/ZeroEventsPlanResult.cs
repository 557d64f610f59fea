using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>plan zero-events</c> answers.</summary>
internal sealed record ZeroEventsPlanResult(
    string Question, double Rate, double Confidence, double DesignEffect, Figure Tests, Figure Achieved, Figure UpperLimit, Figure ConfidenceWithOneFewer);
