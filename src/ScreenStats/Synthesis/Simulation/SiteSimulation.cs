using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Synthesis.Planning;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>One site, day by day: infections, who comes, what each run shows and what follows from it.</summary>
internal sealed class SiteSimulation
{
    private readonly SynthesisPlan plan;
    private readonly SynthesisSite site;
    private readonly int index;
    private readonly RandomStream random;
    private readonly Person[] people;
    private readonly Desk[] desks;
    private readonly LotUse lots;
    private readonly SynthesisKit[] kitOfLot;
    private readonly SiteRecorder recorder;
    private readonly bool recordsSymptoms, recordsExposure;
    private readonly double auditShare;
    private readonly int auditStratum;
    private readonly ImmutableArray<(int First, int Last, double IncidenceFactor)> outbreaks;
    private int[] lotsToday = [];
    private int kitsOpened;

    public SiteSimulation(SynthesisPlan plan, int index, ulong seed, uint[] codes, int firstOperator, SiteRecorder recorder)
    {
        this.plan = plan;
        this.index = index;
        this.recorder = recorder;
        site = plan.Sites[index];
        random = new RandomStream(seed, 1, (ulong)index);
        lots = new LotUse(plan, site);
        outbreaks = PlanSurroundings.OutbreaksOf(plan, site.Name);
        kitOfLot = [.. plan.Lots.Select(lot => plan.Kits.First(kit => kit.Name == lot.Kit))];
        recordsSymptoms = plan.ScreeningColumns.Contains("symptomatic");
        recordsExposure = plan.ScreeningColumns.Contains("exposed");
        auditStratum = Stratum();
        auditShare = auditStratum < 0 ? 0 : plan.Audits[auditStratum].Share;
        desks = [.. Enumerable.Range(0, site.Operators).Select(number => new Desk { Operator = firstOperator + number })];
        people = new Person[codes.Length];
        for (var number = 0; number < people.Length; number++)
        {
            people[number] = new Person
            {
                Code = codes[number],
                Infected = -1,
                SymptomsOn = -1,
                UsualMinute = (short)(390 + (number * 240L / people.Length)),
                Weekday = (byte)random.Below(5),
            };
        }
    }

    public long Infected => people.LongCount(person => person.Infected >= 0);

    public long Seen => people.LongCount(person => person.Seen);

    public void RunDay(int day)
    {
        var weekday = day % 7;
        var incidence = Incidence(day);
        lotsToday = lots.On(day);
        foreach (ref var desk in desks.AsSpan())
        {
            if (!lotsToday.Contains(desk.Lot)) desk.Left = 0;
        }

        if (weekday == 0 && plan.ControlSwabs) RunControls(day);
        foreach (ref var person in people.AsSpan()) Live(ref person, day, weekday, incidence);
        recorder.EndDay();
    }

    private int Stratum()
    {
        for (var number = 0; number < plan.Audits.Length; number++)
        {
            if (plan.Audits[number].Sites.Contains(site.Name)) return number;
        }

        return plan.Audits.IndexOf(plan.Audits.FirstOrDefault(audit => audit.Sites.IsEmpty)!);
    }

    private double Incidence(int day)
    {
        var infection = plan.Infection;
        var rate = infection.BackgroundIncidence;
        if (infection.WavePeak is { } peak)
        {
            var distance = Math.Abs(day - (peak.DayNumber - plan.FirstDay.DayNumber));
            if (distance < infection.WaveHalfWidthDays)
            {
                rate += infection.WaveIncidence * (infection.WaveHalfWidthDays - distance) / infection.WaveHalfWidthDays;
            }
        }

        rate *= site.IncidenceFactor;
        foreach (var outbreak in outbreaks)
        {
            if (day >= outbreak.First && day <= outbreak.Last) rate *= outbreak.IncidenceFactor;
        }

        return rate;
    }

    private void Live(ref Person person, int day, int weekday, double incidence)
    {
        if (person.Infected < 0 && random.Chance(incidence))
        {
            person.Infected = day;
            if (random.Chance(plan.Infection.SymptomaticShare)) person.SymptomsOn = day + plan.Infection.SymptomDay;
        }

        if (weekday == 0) person.AbsentThisWeek = random.Chance(plan.AbsentWeeksShare);
        if (day < person.AwayUntil) return;
        var due = weekday < 5 && !person.AbsentThisWeek && site.Schedule switch
        {
            SynthesisSchedule.Daily => true,
            SynthesisSchedule.MondayAndThursday => weekday is 0 or 3,
            _ => weekday == person.Weekday,
        };
        var minute = (day * Calendar.MinutesPerDay) + person.UsualMinute + random.Below(10);
        if (person.SymptomsOn >= 0 && person.SymptomsOn <= day && day < person.SymptomsOn + 5)
        {
            FallIll(ref person, due, minute);
        }
        else if (due && random.Chance(site.Participation))
        {
            Screen(ref person, minute, symptomatic: random.Chance(recordsSymptoms ? plan.Infection.OtherSymptomsShare : 0), repeat: false);
        }
    }

    private void FallIll(ref Person person, bool due, int minute)
    {
        person.SymptomsOn = -1;
        if (due && recordsSymptoms && random.Chance(plan.Infection.SymptomaticRunShare)) Screen(ref person, minute, symptomatic: true, repeat: false);
        var away = (minute / Calendar.MinutesPerDay) + 10;
        if (random.Chance(plan.Infection.SymptomaticSpecimenShare))
        {
            Specimen(ref person, minute + random.Between(60, 1_200), SpecimenReason.Other);
        }

        person.AwayUntil = Math.Max(person.AwayUntil, away);
    }

    private void Screen(ref Person person, int minute, bool symptomatic, bool repeat)
    {
        person.Seen = true;
        ref var desk = ref desks[random.Below(desks.Length)];
        Take(ref desk);
        var day = minute / Calendar.MinutesPerDay;
        var row = new ScreeningRow
        {
            Person = person.Code,
            Site = index,
            Minute = minute,
            Lot = desk.Lot,
            Kit = desk.Kit,
            Operator = desk.Operator,
            SelfCollected = random.Chance(site.SelfCollectedShare),
            Symptomatic = symptomatic,
            Exposed = recordsExposure && random.Chance(plan.Infection.ExposedShare),
            Outbreak = outbreaks.Any(outbreak => day >= outbreak.First && day <= outbreak.Last),
        };
        var detectability = Detectability(person, day);
        row.Detectable = detectability > 0;
        row.Outcome = Show(desk.Lot, day, detectability);
        row.ReadMinute = minute + ReadingDelay(kitOfLot[desk.Lot]);
        recorder.Record(ref row);
        switch (row.Outcome)
        {
            case Outcome.Negative:
                if (!symptomatic && !row.Exposed && random.Chance(auditShare)) Specimen(ref person, minute + random.Between(20, 360), SpecimenReason.Audit);
                return;
            case Outcome.Invalid or Outcome.Inconclusive when !repeat && random.Chance(plan.RepeatShare):
                Screen(ref person, row.ReadMinute + random.Between(2, 9), symptomatic, repeat: true);
                break;
        }

        if (row.Outcome is Outcome.Positive or Outcome.Inconclusive) FollowUp(ref person, minute);
    }

    private double Detectability(in Person person, int day)
    {
        if (person.Infected < 0) return 0;
        var since = day - person.Infected - plan.Infection.DetectableFromDay;
        var profile = plan.Infection.DetectabilityByDay;
        return since >= 0 && since < profile.Length ? profile[since] : 0;
    }

    private Outcome Show(int lot, int day, double detectability)
    {
        if (random.Chance(site.InvalidRate)) return Outcome.Invalid;
        if (random.Chance(site.InconclusiveRate)) return Outcome.Inconclusive;
        var positive = detectability > 0 ? detectability * kitOfLot[lot].PeakSensitivity : lots.FalsePositiveRate(lot, day);
        return random.Chance(positive) ? Outcome.Positive : Outcome.Negative;
    }

    private int ReadingDelay(SynthesisKit kit)
    {
        if (!random.Chance(plan.Dirt.ReadOutsideWindow)) return random.Between(kit.ReadFromMinutes, kit.ReadToMinutes);
        return random.Chance(0.5) && kit.ReadFromMinutes > 4 ? random.Between(1, kit.ReadFromMinutes - 3) : random.Between(kit.ReadToMinutes + 3, kit.ReadToMinutes + 60);
    }

    private void Take(ref Desk desk)
    {
        if (desk.Left == 0)
        {
            desk.Lot = lotsToday[random.Below(lotsToday.Length)];
            desk.Kit = (kitsOpened++ * plan.Sites.Length) + index + 1;
            desk.Left = kitOfLot[desk.Lot].RunsPerKit;
            if (random.Chance(plan.Dirt.OverusedKits)) desk.Left += random.Between(1, 2);
        }

        desk.Left--;
    }

    private void FollowUp(ref Person person, int minute)
    {
        var confirmation = plan.Confirmation;
        var day = minute / Calendar.MinutesPerDay;
        if (!random.Chance(confirmation.FollowUpShare))
        {
            person.AwayUntil = Math.Max(person.AwayUntil, day + confirmation.UnverifiedAwayDays);
            return;
        }

        var late = random.Chance(confirmation.LateShare);
        var delay = late ? random.Between(4 * Calendar.MinutesPerDay, 7 * Calendar.MinutesPerDay)
            : random.Chance(confirmation.RecordedBeforeShare) ? -random.Between(5, 60)
            : Math.Min(random.Between(10, 60 * confirmation.UsualDelayHours), random.Between(10, 60 * confirmation.UsualDelayHours));
        Specimen(ref person, minute + delay, SpecimenReason.FollowUp);
    }

    private void Specimen(ref Person person, int minute, SpecimenReason reason)
    {
        var confirmation = plan.Confirmation;
        var day = minute / Calendar.MinutesPerDay;
        var detectable = Detectability(person, day) > 0;
        var result = random.Chance(confirmation.RejectedShare) ? ConfirmatoryResult.Rejected
            : random.Chance(confirmation.IndeterminateShare) ? ConfirmatoryResult.Indeterminate
            : random.Chance(detectable ? confirmation.Sensitivity : 1 - confirmation.Specificity) ? ConfirmatoryResult.Positive
            : ConfirmatoryResult.Negative;
        var reported = minute + random.Between(60 * confirmation.ReportFromHours, 60 * confirmation.ReportToHours);
        recorder.Record(new ConfirmatorySpecimen(minute, person.Code, reported, result, reason, reason == SpecimenReason.Audit ? auditStratum : -1));
        switch (result)
        {
            case ConfirmatoryResult.Positive:
                var isolation = random.Chance(confirmation.EarlyReturnShare) ? confirmation.IsolationDays / 2 : confirmation.IsolationDays + 1;
                person.AwayUntil = Math.Max(person.AwayUntil, day + isolation);
                break;
            case ConfirmatoryResult.Negative:
                if (reason == SpecimenReason.FollowUp) person.AwayUntil = Math.Max(person.AwayUntil, (reported / Calendar.MinutesPerDay) + 1);
                break;
            default:
                person.AwayUntil = Math.Max(person.AwayUntil, day + 2);
                if (reason == SpecimenReason.FollowUp && random.Chance(confirmation.RetakeShare))
                {
                    Specimen(ref person, minute + random.Between(360, 1_440), reason);
                }

                break;
        }
    }

    private void RunControls(int day)
    {
        var minute = (day * Calendar.MinutesPerDay) + 360;
        foreach (ref var desk in desks.AsSpan())
        {
            foreach (var expected in (ReadOnlySpan<ControlExpectation>)[ControlExpectation.Positive, ControlExpectation.Negative])
            {
                Take(ref desk);
                // A control swab carries far more than any person: nearly always seen.
                var outcome = expected == ControlExpectation.Positive && random.Chance(0.99) ? Show(desk.Lot, day, 1 / kitOfLot[desk.Lot].PeakSensitivity)
                    : Show(desk.Lot, day, 0);
                var row = new ScreeningRow
                {
                    Site = index,
                    Minute = minute++,
                    Lot = desk.Lot,
                    Kit = desk.Kit,
                    Operator = desk.Operator,
                    Control = expected,
                    Outcome = outcome,
                };
                row.ReadMinute = row.Minute + kitOfLot[desk.Lot].ReadFromMinutes;
                recorder.Record(ref row);
            }
        }
    }
}
