using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>plan width</c> answers.</summary>
internal sealed record WidthPlanResult(
    string Question, double Proportion, double Width, double Confidence, double DesignEffect,
    Figure Tests, Figure Achieved, Figure Lower, Figure Upper, Figure WidthWithOneFewer);
