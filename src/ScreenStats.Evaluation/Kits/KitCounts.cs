using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Kits;

/// <summary>Runs of one device by measure, site and week.</summary>
internal sealed class KitCounts
{
    /// <summary>The measures in the order in which they are read.</summary>
    public static readonly PersonMeasure[] Measures = [PersonMeasure.Positivity, PersonMeasure.InvalidRuns, PersonMeasure.Refuted, PersonMeasure.PredictiveValue];

    private readonly ClusterCounter[] counters = Counters();

    public ClusterCounter this[PersonMeasure measure] => counters[(int)measure];

    public long Runs => this[PersonMeasure.InvalidRuns].Trials;

    public SortedSet<string> Lots { get; } = new(Levels.Order);

    public void Add(ScreenCell cell)
    {
        Lots.Add(cell.Lot);
        foreach (var measure in Measures)
        {
            var (trial, happened) = Classify(measure, cell.Outcome, cell.FollowUp);
            if (trial) this[measure].Add(cell.Site, cell.Day, cell.Runs, happened ? cell.Runs : 0);
        }
    }

    private static ClusterCounter[] Counters()
    {
        var counters = new ClusterCounter[(int)Measures.Max() + 1];
        foreach (var measure in Measures) counters[(int)measure] = new ClusterCounter();
        return counters;
    }

    private static (bool Trial, bool Happened) Classify(PersonMeasure measure, Outcome outcome, FollowUp followUp)
    {
        var (valid, positive) = (outcome is Outcome.Negative or Outcome.Positive, outcome == Outcome.Positive);
        return measure switch
        {
            PersonMeasure.Positivity => (valid, positive),
            PersonMeasure.InvalidRuns => (true, !valid),
            PersonMeasure.Refuted => (valid, positive && followUp == FollowUp.Refuted),
            _ => (positive && (followUp is FollowUp.Confirmed or FollowUp.Refuted), followUp == FollowUp.Confirmed),
        };
    }
}
