using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Warehouse.Reading;

/// <summary>Which days of which people linkage looks at, beside those with more to see than one negative run.</summary>
internal static class DaysToRead
{
    /// <summary>
    /// Days on which a specimen may verify a negative run, or on which a run falls into isolation: of audits the whole window, with a day
    /// around it; of positive specimens the days of isolation.
    /// </summary>
    public static void AddOfSpecimens(HashSet<(ulong Person, long Day)> days, IEnumerable<SpecimenRow> specimens, PolicySettings policy)
    {
        var window = FollowUpWindow.OfAudit(policy);
        foreach (var row in specimens)
        {
            var day = SpecimenIndex.Time(row).DayNumber;
            if (row.Reason == SpecimenReason.Audit) Add(row.Person, day - window.WithinDays - 1, day + window.BeforeDays + 1);
            if (row.Result == ConfirmatoryResult.Positive && policy.IsolationDays is { } isolation) Add(row.Person, day, day + isolation + 1);
        }

        void Add(ulong person, long from, long to)
        {
            for (var day = from; day <= to; day++) days.Add((person, day));
        }
    }

    /// <summary>
    /// People with a positive specimen, taken for another reason than audit, on which no due run rests: it may be an interval case, which
    /// rests on the latest run before it, whenever that was.
    /// </summary>
    /// <param name="specimens">The specimens.</param>
    /// <param name="due">Every due run of these people.</param>
    /// <param name="policy">The policy.</param>
    public static IEnumerable<ulong> Unsettled(SpecimenIndex specimens, ILookup<ulong, Moment> due, PolicySettings policy)
    {
        var window = FollowUpWindow.OfFollowUp(policy);
        foreach (var person in specimens.Rows.Select(row => row.Person).Distinct())
        {
            var (start, count) = specimens.Of(person);
            var events = specimens.Events.AsSpan(start, count);
            var settles = new bool[count];
            foreach (var run in due[person])
            {
                if (FollowUpRule.Settling(run, window, events) is var found and >= 0) settles[found] = true;
            }

            for (var i = 0; i < count; i++)
            {
                if (!events[i].IsPositive || settles[i] || events[i].Reason == SpecimenReason.Audit) continue;
                yield return person;
                break;
            }
        }
    }
}
