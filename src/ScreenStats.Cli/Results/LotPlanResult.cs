using System.Text.Json.Serialization;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>plan lot</c> answers.</summary>
internal sealed record LotPlanResult(
    string Question, double ExpectedRate, double Excess, int Lots,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] long? OtherRuns,
    double Power, double Threshold, Figure Runs, Figure Achieved, Figure PowerWithOneFewer, Figure CheckedTo, Figure FlaggedFrom, Figure RefutedInOtherLots);
