using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Trends.Series;

/// <summary>Runs of one part of a program in one stretch of time.</summary>
internal struct TrendCounts
{
    public long Runs { get; private set; }

    public long Unusable { get; private set; }

    public long Positives { get; private set; }

    public long Confirmed { get; private set; }

    public long Refuted { get; private set; }

    /// <summary>Positive runs that still wait for a result.</summary>
    public long Pending { get; private set; }

    public void Add(Outcome outcome, FollowUp followUp, long runs)
    {
        Runs += runs;
        if (outcome is Outcome.Inconclusive or Outcome.Invalid) Unusable += runs;
        if (outcome != Outcome.Positive) return;
        Positives += runs;
        if (followUp == FollowUp.Confirmed) Confirmed += runs;
        else if (followUp == FollowUp.Refuted) Refuted += runs;
        else if (followUp == FollowUp.Pending) Pending += runs;
    }

    public void Add(in TrendCounts other)
    {
        Runs += other.Runs;
        Unusable += other.Unusable;
        Positives += other.Positives;
        Confirmed += other.Confirmed;
        Refuted += other.Refuted;
        Pending += other.Pending;
    }

    public readonly long Trials(TrendMeasure measure) => measure switch
    {
        TrendMeasure.Positivity => Runs - Unusable,
        TrendMeasure.InvalidRuns => Runs,
        _ => Confirmed + Refuted,
    };

    public readonly long Events(TrendMeasure measure) => measure switch
    {
        TrendMeasure.Positivity => Positives,
        TrendMeasure.InvalidRuns => Unusable,
        _ => Confirmed,
    };
}
