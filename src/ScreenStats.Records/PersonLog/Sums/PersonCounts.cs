using ScreenStats.Counting.Cubes;

namespace ScreenStats.Records.PersonLog.Sums;

/// <summary>The counts of one person in one scope.</summary>
internal struct PersonCounts
{
    public int Runs;
    public int Unusable;
    public int Positives;
    public int Confirmed;
    public int Refuted;

    public void Add(in PersonCounts other)
    {
        Runs += other.Runs;
        Unusable += other.Unusable;
        Positives += other.Positives;
        Confirmed += other.Confirmed;
        Refuted += other.Refuted;
    }

    public void Add(Outcome outcome, FollowUp followUp)
    {
        Runs++;
        if (outcome == Outcome.Negative) return;
        if (outcome != Outcome.Positive)
        {
            Unusable++;
            return;
        }

        Positives++;
        if (followUp == FollowUp.Confirmed) Confirmed++;
        if (followUp == FollowUp.Refuted) Refuted++;
    }
}
