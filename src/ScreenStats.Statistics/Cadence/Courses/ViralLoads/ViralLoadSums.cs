namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>Sums over people under one schedule.</summary>
internal struct ViralLoadSums
{
    private RatioSum found;
    private RatioSum screens;
    private RatioSum days;
    private RatioSum removed;
    private RatioSum bySymptoms;
    private RatioSum byScreening;
    private RatioSum before;
    private RatioSum beforeOnset;
    private RatioSum away;
    private RatioSum awayBySymptoms;

    /// <summary>Adds a person.</summary>
    /// <param name="illness">How the infection runs.</param>
    /// <param name="yield">What the schedule gives.</param>
    /// <param name="isolation">Days of an isolation; 0 where they are not asked for.</param>
    public void Add(in Illness illness, in PersonYield yield, double isolation)
    {
        away.Add(illness.Isolates ? isolation + yield.Earlier : yield.Found * isolation, 1);
        awayBySymptoms.Add(illness.Isolates ? isolation : 0, 1);
        found.Add(yield.Found, 1);
        screens.Add(yield.Screens, 1);
        if (illness.Total > 0)
        {
            var kept = illness.Isolates ? illness.Tail(illness.Symptoms) : 0;
            days.Add(illness.Total, illness.Highest);
            removed.Add(kept + yield.Beyond, illness.Total);
            bySymptoms.Add(kept, illness.Total);
            byScreening.Add(yield.Alone, illness.Total);
            before.Add(illness.Isolates && illness.Symptoms <= illness.InfectiousFrom ? 1 : yield.Before, 1);
        }

        if (double.IsFinite(illness.Symptoms)) beforeOnset.Add(yield.BeforeOnset, 1);
    }

    public void Add(in ViralLoadSums other)
    {
        found.Add(other.found);
        screens.Add(other.screens);
        days.Add(other.days);
        removed.Add(other.removed);
        bySymptoms.Add(other.bySymptoms);
        byScreening.Add(other.byScreening);
        before.Add(other.before);
        beforeOnset.Add(other.beforeOnset);
        away.Add(other.away);
        awayBySymptoms.Add(other.awayBySymptoms);
    }

    public readonly SimulatedOutcome Outcome(int people, bool asksDays) => new(
        people,
        new CourseOutcome(
            CourseOutcome.BySimulation, found.Value ?? 0, screens.Value ?? 0, days.Value ?? 0, removed.Value ?? 0, bySymptoms.Value ?? 0,
            byScreening.Value ?? 0, before.Value ?? 0, beforeOnset.Value, asksDays ? (away.Value ?? 0, awayBySymptoms.Value ?? 0) : null))
    {
        DetectionError = found.Error(people) ?? 0,
        ScreensError = screens.Error(people) ?? 0,
        RemovedError = removed.Error(people),
        RemovedBySymptomsError = bySymptoms.Error(people),
        RemovedByScreeningError = byScreening.Error(people),
        CaughtBeforeInfectiousError = before.Error(people),
    };
}
