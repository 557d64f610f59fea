using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>Runs of one part of a program in one period.</summary>
internal struct TestCounts
{
    public long Runs { get; private set; }

    public long Unusable { get; private set; }

    public long Refuted { get; private set; }

    public long Pending { get; private set; }

    public readonly long ValidTests => Runs - Unusable;

    public void Add(Outcome outcome, FollowUp followUp, long runs)
    {
        Runs += runs;
        if (outcome is Outcome.Inconclusive or Outcome.Invalid) Unusable += runs;
        if (outcome != Outcome.Positive) return;
        if (followUp == FollowUp.Refuted) Refuted += runs;
        if (followUp == FollowUp.Pending) Pending += runs;
    }

    /// <summary>What a chart takes as trials.</summary>
    public readonly long Trials(ChartMeasure measure) => measure == ChartMeasure.InvalidRuns ? Runs : ValidTests;

    /// <summary>What a chart takes as events.</summary>
    public readonly long Events(ChartMeasure measure) => measure == ChartMeasure.InvalidRuns ? Unusable : Refuted;
}
