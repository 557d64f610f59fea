using System.Runtime.InteropServices;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Counting.Rules;

/// <summary>
/// All rules of linkage applied to one person after the other: follow-up, audits, cases, interval cases, isolation. Holds buffers that
/// are used again for the next person, so one for each thread.
/// </summary>
public sealed class PersonLinkage
{
    private readonly PolicySettings policy;
    private readonly FollowUpWindow followUpWindow;
    private readonly FollowUpWindow auditWindow;
    private readonly long? dataAsOf;
    private readonly long lagSeconds;
    private readonly bool[] due = new bool[4];
    private readonly List<FoundIntervalCase> intervalCases = [];
    private readonly List<Moment> positives = [];
    private FollowUp[] followUps = [];
    private int[] settling = [];
    private bool[] cases = [];
    private bool[] isolated = [];
    private bool[] settles = [];
    private bool[] rests = [];
    private int runCount;

    /// <summary>Prepares for the people of one program.</summary>
    /// <param name="policy">The policy.</param>
    /// <param name="dataAsOf">The second up to which the data are complete; null where there is no confirmatory export.</param>
    /// <param name="lagSeconds">Reporting lag in seconds, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Hours of the policy are negative or not finite.</exception>
    public PersonLinkage(PolicySettings policy, long? dataAsOf, long lagSeconds)
    {
        this.policy = policy;
        this.dataAsOf = dataAsOf;
        this.lagSeconds = lagSeconds;
        followUpWindow = FollowUpWindow.OfFollowUp(policy);
        auditWindow = FollowUpWindow.OfAudit(policy);
        foreach (var outcome in Enum.GetValues<Outcome>()) due[(int)outcome] = FollowUpRule.IsDue(outcome, policy);
    }

    /// <summary>What became of each run.</summary>
    public ReadOnlySpan<FollowUp> FollowUps => followUps.AsSpan(0, runCount);

    /// <summary>Position of the specimen that each run's follow-up or audit rests on, conclusive or not; -1 for none.</summary>
    public ReadOnlySpan<int> Settling => settling.AsSpan(0, runCount);

    /// <summary>Which runs are cases.</summary>
    public ReadOnlySpan<bool> Cases => cases.AsSpan(0, runCount);

    /// <summary>Which runs fall into the isolation after a confirmatory positive; none where the policy states no length.</summary>
    public ReadOnlySpan<bool> Isolated => isolated.AsSpan(0, runCount);

    /// <summary>The interval cases, in order of time.</summary>
    public ReadOnlySpan<FoundIntervalCase> IntervalCases => CollectionsMarshal.AsSpan(intervalCases);

    /// <summary>Number of audit specimens that verify a run; the others find no negative run in their window.</summary>
    public int AuditsWithRun { get; private set; }

    /// <summary>Number of specimens on which the follow-up or audit of a run rests; a specimen that several runs rest on counts once.</summary>
    public int SettlingSpecimens { get; private set; }

    /// <summary>Applies the rules to one person.</summary>
    /// <param name="runs">Counted runs, in order of time (of the export where times are equal).</param>
    /// <param name="specimens">Specimens, in the same order.</param>
    public void Link(ReadOnlySpan<RunEvent> runs, ReadOnlySpan<SpecimenEvent> specimens)
    {
        Reset(runs.Length, specimens.Length);
        foreach (var specimen in specimens)
        {
            if (specimen.IsPositive) positives.Add(specimen.Time);
        }

        FollowUpRuns(runs, specimens);
        if (specimens.IsEmpty) return;
        AuditRuns(runs, specimens);
        CountSettling(specimens.Length);
        FindCases(runs, specimens);
        FindIntervalCases(runs, specimens);
        FindIsolated(runs);
    }

    private void Reset(int runs, int specimens)
    {
        runCount = runs;
        if (followUps.Length < runs)
        {
            var size = Math.Max(runs, 2 * followUps.Length);
            (followUps, settling, cases, isolated) = (new FollowUp[size], new int[size], new bool[size], new bool[size]);
        }

        if (settles.Length < specimens) settles = new bool[Math.Max(specimens, 2 * settles.Length)];
        followUps.AsSpan(0, runs).Clear();
        settling.AsSpan(0, runs).Fill(-1);
        cases.AsSpan(0, runs).Clear();
        isolated.AsSpan(0, runs).Clear();
        settles.AsSpan(0, specimens).Clear();
        intervalCases.Clear();
        positives.Clear();
        (AuditsWithRun, SettlingSpecimens) = (0, 0);
    }

    private void FollowUpRuns(ReadOnlySpan<RunEvent> runs, ReadOnlySpan<SpecimenEvent> specimens)
    {
        for (var i = 0; i < runs.Length; i++)
        {
            if (!due[(int)runs[i].Outcome]) continue;
            var found = FollowUpRule.Settling(runs[i].Time, followUpWindow, specimens);
            settling[i] = found;
            followUps[i] = FollowUpRule.Status(runs[i].Time, followUpWindow, found < 0 ? null : specimens[found], dataAsOf, lagSeconds);
            if (found >= 0) settles[found] = true;
        }
    }

    private void AuditRuns(ReadOnlySpan<RunEvent> runs, ReadOnlySpan<SpecimenEvent> specimens)
    {
        for (var i = 0; i < specimens.Length; i++)
        {
            if (specimens[i].Reason != SpecimenReason.Audit) continue;
            var run = AuditRule.RunOf(specimens[i].Time, auditWindow, runs);
            if (run < 0) continue;
            AuditsWithRun++;
            settling[run] = FollowUpRule.Prefer(settling[run], i, specimens);
            followUps[run] = AuditRule.Status(specimens[settling[run]].Result);
        }
    }

    private void CountSettling(int specimens)
    {
        if (rests.Length < specimens) rests = new bool[settles.Length];
        rests.AsSpan(0, specimens).Clear();
        foreach (var specimen in Settling)
        {
            if (specimen < 0 || rests[specimen]) continue;
            rests[specimen] = true;
            SettlingSpecimens++;
        }
    }

    private void FindCases(ReadOnlySpan<RunEvent> runs, ReadOnlySpan<SpecimenEvent> specimens)
    {
        if (positives.Count == 0) return;
        int? latestSettlingDay = null;
        for (var i = 0; i < runs.Length; i++)
        {
            if (followUps[i] != FollowUp.Confirmed) continue;
            var time = runs[i].Time;
            var known = latestSettlingDay is { } day && CaseRule.SameEpisode(day, time.DayNumber, policy.EpisodeDays);
            cases[i] = !known && !CaseRule.HasEarlierPositive(time, followUpWindow, CollectionsMarshal.AsSpan(positives), policy.EpisodeDays);
            latestSettlingDay = Math.Max(latestSettlingDay ?? int.MinValue, specimens[settling[i]].Time.DayNumber);
        }
    }

    private void FindIntervalCases(ReadOnlySpan<RunEvent> runs, ReadOnlySpan<SpecimenEvent> specimens)
    {
        int? latestPositiveDay = null;
        for (var i = 0; i < specimens.Length; i++)
        {
            if (!specimens[i].IsPositive) continue;
            var day = specimens[i].Time.DayNumber;
            var known = latestPositiveDay is { } latest && CaseRule.SameEpisode(latest, day, policy.EpisodeDays);
            latestPositiveDay = Math.Max(latestPositiveDay ?? int.MinValue, day);
            if (known || settles[i] || specimens[i].Reason == SpecimenReason.Audit) continue;
            var run = IntervalCaseRule.LatestRunBefore(specimens[i].Time, runs);
            if (run < 0 || runs[run].Outcome != Outcome.Negative) continue;
            intervalCases.Add(new(run, Math.Max(0, day - runs[run].Time.DayNumber)));
        }
    }

    private void FindIsolated(ReadOnlySpan<RunEvent> runs)
    {
        if (policy.IsolationDays is not { } days || positives.Count == 0) return;
        for (var i = 0; i < runs.Length; i++)
        {
            isolated[i] = ConductRule.IsWithinIsolation(runs[i].Time, CollectionsMarshal.AsSpan(positives), days);
        }
    }
}
