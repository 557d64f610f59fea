namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>Adds events of one lot and closes a point at the end of each look.</summary>
internal sealed class EvidencePathBuilder(AlarmThreshold threshold)
{
    private readonly MixtureEvidence mixture = new();
    private readonly List<EvidencePoint> points = [];
    private long look = -1;
    private long events;
    private long onLot;
    private long uninformative;
    private long impossible;
    private double expected;
    private double maximum;
    private double lowest;
    private long? risingSince;
    private EvidenceAlarm? alarm;

    public void Add(double probability, bool fellOnLot, long atLook)
    {
        if (atLook < look) throw new ArgumentOutOfRangeException(nameof(atLook), atLook, "Events must be in the order of their looks.");
        if (atLook > look) Close();
        look = atLook;
        if (probability is 0 or 1)
        {
            if (fellOnLot == (probability == 1)) uninformative++;
            else impossible++;
            return;
        }

        mixture.Add(probability, fellOnLot);
        events++;
        if (fellOnLot) onLot++;
        expected += probability;
    }

    public EvidencePath Build()
    {
        Close();
        return new EvidencePath(threshold, points, alarm, uninformative, impossible);
    }

    private void Close()
    {
        if (events == (points.Count == 0 ? 0 : points[^1].Events)) return;
        var log = mixture.LogAverage;
        maximum = Math.Max(maximum, log);
        points.Add(new EvidencePoint(look, events, onLot, expected, log, maximum));
        if (log <= lowest) (lowest, risingSince) = (log, null);
        else risingSince ??= look;
        if (alarm is null && log >= threshold.LogEvidence) alarm = new EvidenceAlarm(points.Count - 1, look, events, onLot, expected, risingSince ?? look);
    }
}
