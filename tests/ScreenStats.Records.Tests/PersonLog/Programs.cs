using CsCheck;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Tests.PersonLog;

/// <summary>Random small programs: few people, places and times, so that ties, duplicates and window ends are common.</summary>
internal static class Programs
{
    private static readonly DateTime Start = new(2026, 3, 27);

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(at => values[at]);

    private static readonly Gen<Outcome> Outcomes = Gen.Frequency(
        (5, Gen.Const(Outcome.Negative)), (4, Gen.Const(Outcome.Positive)), (2, Gen.Const(Outcome.Inconclusive)), (2, Gen.Const(Outcome.Invalid)));

    // Seconds beside the hour: the ends of windows are met and missed by one second.
    private static readonly Gen<TimeSpan> TimesOfDay = Gen.Select(
        OneOf(0, 8, 9, 10, 11, 12, 23), OneOf(0, 0, 0, 1, 59, 3599), (hour, second) => new TimeSpan(hour, 0, second));

    public static Gen<SmallProgram> Any => Of(sometimesDateOnly: true, mixedOffsets: true);

    /// <summary>Every row at another second and none twice: nothing is left to the order of rows.</summary>
    public static Gen<SmallProgram> DistinctTimes => Of(sometimesDateOnly: false, mixedOffsets: false).Select(program => program with
    {
        Runs = [.. program.Runs.Distinct().Select((run, at) => run with { Id = run.Id is null ? null : $"{run.Id}-{at}", Local = run.Local.AddSeconds(60 * at) })
            .DistinctBy(run => run.Local)],
        Specimens = program.Specimens?.Distinct().Select((specimen, at) => specimen with { Local = specimen.Local.AddSeconds((60 * at) + 30) })
            .DistinctBy(specimen => specimen.Local).ToList(),
    });

    /// <summary>
    /// People with known infections screened every so many days at 8; every positive or inconclusive run has its specimen, nobody is audited.
    /// </summary>
    public static Gen<SmallProgram> EveryDays(int days) =>
        from infected in Gen.Int[-10, 40].Array[6]
        from seed in Gen.Int[0, 1_000_000]
        select Screened(infected, days, seed);

    private static SmallProgram Screened(int[] infected, int days, int seed)
    {
        var runs = new List<TestRun>();
        var specimens = new List<TestSpecimen>();
        for (var person = 0; person < infected.Length; person++)
        {
            for (var day = 0; day < 30; day += days)
            {
                var chance = SmallProgram.Hash($"{seed} {person} {day}") % 100;
                var ill = day >= infected[person] && day < infected[person] + 10;
                var outcome = chance < 3 ? Outcome.Invalid : chance < 5 ? Outcome.Inconclusive : (ill ? chance < 75 : chance < 7) ? Outcome.Positive : Outcome.Negative;
                var time = Start.AddDays(day).AddHours(8);
                runs.Add(new($"p{person}", time, 0, false, "North", "A1", "(none)", "(none)", outcome, Counting.Cubes.Specimen.Nasal, CollectedBy.Self, false, false, null, null, null, null));
                if (outcome is not (Outcome.Positive or Outcome.Inconclusive)) continue;
                specimens.Add(new($"p{person}", time.AddHours(chance % 30), 0, false, ill ? ConfirmatoryResult.Positive : ConfirmatoryResult.Negative, SpecimenReason.FollowUp, null, false, "(none)"));
            }
        }

        return new(new(), runs, specimens, null);
    }

    private static Gen<SmallProgram> Of(bool sometimesDateOnly, bool mixedOffsets) =>
        from style in Gen.Int[0, 3]
        from people in Gen.Int[1, 4]
        from days in Gen.Int[1, 9]
        from offsets in mixedOffsets ? OneOf<int[]>([0], [60], [60, 120], [0, -660, 780]) : Gen.Const<int[]>([0])
        from runs in Run(people, days, sometimesDateOnly ? style : 0, offsets).List[0, 16]
        from copies in Gen.Select(Gen.Int[0, 15], Gen.Int[0, 3]).List[0, 4]
        from strata in OneOf("North", "(none)", "random")
        from specimens in Specimen(people, days, sometimesDateOnly ? style : 0, offsets, strata).List[0, 9]
        from confirmatory in Gen.Frequency((9, Gen.Const(true)), (1, Gen.Const(false)))
        from settings in Settings
        from asOf in Gen.Frequency((2, Gen.Const((StatedMoment?)null)), (1, Gen.Int[0, 200].Select(hours => (StatedMoment?)new StatedMoment(Start.AddHours(hours), null))))
        from bits in OneOf(64, 1, 8)
        from idBits in OneOf(64, 64, 40, 8, 1)
        select new SmallProgram(
            asOf is null ? settings : settings with { TimeZone = "UTC" }, Copied(runs, copies),
            confirmatory ? [.. specimens, .. specimens.Take(copies.Count / 2)] : null, asOf) { MeaningBits = bits, IdBits = idBits };

    private static List<TestRun> Copied(List<TestRun> runs, List<(int At, int Change)> copies)
    {
        var all = new List<TestRun>(runs);
        if (runs.Count == 0) return all;
        foreach (var (at, change) in copies)
        {
            var copy = runs[at % runs.Count];
            all.Insert(at % (all.Count + 1), change switch { 0 => copy with { Lot = "B7" }, 1 => copy with { Person = "p9" }, _ => copy });
        }

        return all;
    }

    private static Gen<ProgramSettings> Settings =>
        from within in OneOf(72.0, 24, 47.5, 0)
        from before in OneOf(2.0, 0, 1, 30)
        from audit in OneOf(24.0, 1, 50)
        from episode in OneOf(90, 2, 0)
        from isolation in OneOf<int?>(null, 1, 3)
        from lag in OneOf(48.0, 0, 5.5)
        from both in Gen.Bool
        from period in OneOf(ReportPeriod.Day, ReportPeriod.Week, ReportPeriod.Month)
        from devices in Gen.Int[0, 2]
        from strata in Gen.Int[0, 5]
        from outbreaks in Gen.Int[0, 3]
        select new ProgramSettings
        {
            Policy = new()
            {
                ConfirmWithinHours = within, ConfirmBeforeHours = before, AuditWithinHours = audit, EpisodeDays = episode, IsolationDays = isolation,
                ReportLagHours = lag, FollowUp = both ? [Outcome.Positive, Outcome.Inconclusive] : [Outcome.Positive],
            },
            Report = new() { Period = period },
            Audits = strata switch
            {
                0 => new() { Strata = [new() { Name = "South", Sites = ["South"], Lots = ["A*"] }, new() { Name = "North", Negatives = 1 }, new() { Name = "(none)", Sites = ["North"] }] },
                1 => new() { Strata = [new() { Name = "North", Collection = CollectedBy.Self, Lots = ["B*"] }, new() { Name = "South", Lots = ["A*"] }] },
                _ => new(),
            },
            Outbreaks = outbreaks switch
            {
                0 => [new("North", new(2026, 3, 28), new(2026, 3, 30), ""), new("West", new(2026, 3, 28), null, "")],
                1 => [new("South", new(2026, 3, 29), null, ""), new("North", new(2026, 3, 27), new(2026, 3, 27), ""), new("South", new(2026, 3, 28), new(2026, 3, 29), "")],
                _ => [],
            },
            Screens = devices switch
            {
                0 => [],
                1 => [new() { Name = "one", ReadFromMinutes = 10, ReadToMinutes = 20, RunsPerKit = 2 }],
                _ => [new() { Name = "a", Lots = ["A*"], RunsPerKit = 1 }, new() { Name = "b", Lots = ["B*"], ReadToMinutes = 15 }],
            },
        };

    private static Gen<TestRun> Run(int people, int days, int style, int[] offsets) =>
        from person in Gen.Int[0, people - 1]
        from time in Time(days, style)
        from offset in OneOf(offsets)
        from place in Gen.Select(OneOf("North", "South"), OneOf("A1", "A2", "B7", "(none)"), OneOf("k1", "(none)"), OneOf("o1", "o2", "(none)"))
        from outcome in Outcomes
        from how in Gen.Select(OneOf(Counting.Cubes.Specimen.NotRecorded, Counting.Cubes.Specimen.Nasal), OneOf(CollectedBy.Self, CollectedBy.Supervised))
        from apart in Gen.Int[0, 19]
        from outbreak in OneOf<bool?>(null, null, false, true)
        from expiry in OneOf<DateOnly?>(null, null, new(2026, 3, 28))
        from minutes in OneOf<int?>(null, 5, 15, 25)
        from id in Gen.Frequency((3, Gen.Const((string?)null)), (2, Gen.Int[0, 12].Select(n => (string?)$"s{n}")))
        select new TestRun(
            apart is 0 ? "" : $"p{person}", time.Local, offset, time.DateOnly, place.Item1, place.Item2, place.Item3, place.Item4, outcome, how.Item1, how.Item2,
            apart == 2, apart == 3, apart is 0 or 1 ? ControlExpectation.Negative : null, expiry, minutes, id, outbreak);

    private static Gen<TestSpecimen> Specimen(int people, int days, int style, int[] offsets, string strata) =>
        from person in Gen.Int[0, people - 1]
        from time in Time(days, style)
        from offset in OneOf(offsets)
        from result in Gen.Frequency((4, Gen.Const(ConfirmatoryResult.Positive)), (3, Gen.Const(ConfirmatoryResult.Negative)), (1, Gen.Const(ConfirmatoryResult.Rejected)))
        from reason in OneOf(SpecimenReason.NotRecorded, SpecimenReason.FollowUp, SpecimenReason.Audit, SpecimenReason.Other)
        from report in OneOf<int?>(null, -5, 0, 20, 50)
        from reportDateOnly in Gen.Bool
        from stratum in OneOf(strata, strata, "South", "North")
        select new TestSpecimen(
            $"p{person}", time.Local, offset, time.DateOnly, result, reason,
            report is null ? null : reportDateOnly ? time.Local.AddHours(report.Value).Date : time.Local.AddHours(report.Value), report is not null && reportDateOnly, stratum);

    private static Gen<(DateTime Local, bool DateOnly)> Time(int days, int style) =>
        from day in Gen.Int[0, days]
        from time in TimesOfDay
        from dateOnly in style switch { 0 => Gen.Const(false), 1 => Gen.Const(true), _ => Gen.Bool }
        select (dateOnly ? Start.AddDays(day) : Start.AddDays(day) + time, dateOnly);
}
