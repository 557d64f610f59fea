using ScreenStats.Counting.Cubes;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Sums;

/// <summary>Sums over people by program, site, lot, period, week and site-week. One for each thread.</summary>
internal sealed class PersonSums
{
    private readonly Calendar calendar;
    private readonly LevelCounts sites;
    private readonly LevelCounts lots;
    private readonly ScopeSums[] weeks;
    private readonly ScopeSums[] periods;
    private readonly int[]?[] siteWeekPlaces;
    private readonly LevelCounts week;
    private ScopeSums program;
    private ScopeSums[] siteWeeks = new ScopeSums[64];
    private int siteWeekCount;

    public PersonSums(Calendar calendar, int siteCount, int lotCount)
    {
        this.calendar = calendar;
        sites = new(siteCount);
        lots = new(lotCount);
        weeks = new ScopeSums[calendar.WeekStarts.Length];
        periods = calendar.PeriodIsWeek ? weeks : new ScopeSums[calendar.PeriodStarts.Length];
        siteWeekPlaces = new int[]?[siteCount];
        week = new(siteCount);
    }

    /// <summary>Adds one person.</summary>
    /// <param name="runs">Counted runs in order of local days, at least one.</param>
    /// <param name="shapes">The shapes behind their codes.</param>
    public void Add(ReadOnlySpan<CountedRun> runs, ShapeInfo[] shapes)
    {
        PersonCounts inProgram = default, inPeriod = default;
        var (currentWeek, currentPeriod) = (calendar.Week(runs[0].DayNumber), calendar.Period(runs[0].DayNumber));
        foreach (ref readonly var run in runs)
        {
            ref readonly var shape = ref shapes[run.Code];
            var weekOfRun = calendar.Week(run.DayNumber);
            if (weekOfRun != currentWeek)
            {
                EndWeek(currentWeek, ref inProgram);
                currentWeek = weekOfRun;
            }

            if (!calendar.PeriodIsWeek)
            {
                var periodOfRun = calendar.Period(run.DayNumber);
                if (periodOfRun != currentPeriod)
                {
                    periods[currentPeriod].Add(inPeriod);
                    inPeriod = default;
                    currentPeriod = periodOfRun;
                }

                inPeriod.Add(shape.Outcome, run.FollowUp);
            }

            week.Of(shape.Site).Add(shape.Outcome, run.FollowUp);
            lots.Of(shape.Lot).Add(shape.Outcome, run.FollowUp);
        }

        EndWeek(currentWeek, ref inProgram);
        if (!calendar.PeriodIsWeek) periods[currentPeriod].Add(inPeriod);
        program.Add(inProgram);
        sites.EndPerson();
        lots.EndPerson();
    }

    /// <summary>Adds people of the same counts in one scope, summed elsewhere, or takes them off. A period that is a week is the week.</summary>
    /// <param name="scope">The scope.</param>
    /// <param name="level">Code of the site or lot; 0 without.</param>
    /// <param name="day">A day of the period or week; 0 without.</param>
    /// <param name="counts">The counts of each of them there.</param>
    /// <param name="people">How many.</param>
    public void Add(PersonScope scope, int level, int day, in PersonCounts counts, long people)
    {
        if (IsKept(scope)) Of(scope, level, day).Add(counts, people);
    }

    /// <summary>The same of people whose runs in one scope are all negative: their number, their runs, and the squares of each one's runs.</summary>
    public void AddNegative(PersonScope scope, int level, int day, long people, long runs, long squares)
    {
        if (IsKept(scope)) Of(scope, level, day).AddNegative(people, runs, squares);
    }

    /// <summary>Adds what another thread summed over other people.</summary>
    public void Add(PersonSums other)
    {
        program.Add(other.program);
        Add(sites.Sums, other.sites.Sums);
        Add(lots.Sums, other.lots.Sums);
        Add(weeks, other.weeks);
        if (!calendar.PeriodIsWeek) Add(periods, other.periods);
        for (var site = 0; site < siteWeekPlaces.Length; site++)
        {
            if (other.siteWeekPlaces[site] is not { } places) continue;
            for (var at = 0; at < places.Length; at++)
            {
                if (places[at] > 0) SiteWeek(site, at).Add(other.siteWeeks[places[at] - 1]);
            }
        }
    }

    /// <summary>The cells in canonical order: scope, level, start, measure.</summary>
    public IEnumerable<PersonCell> ToCells(Ranking siteRanking, Ranking lotRanking)
    {
        foreach (var cell in Cells(PersonScope.Program, "", null, program)) yield return cell;
        foreach (var site in siteRanking.Order)
        {
            foreach (var cell in Cells(PersonScope.Site, siteRanking.Texts[site], null, sites.Sums[site])) yield return cell;
        }

        foreach (var lot in lotRanking.Order)
        {
            foreach (var cell in Cells(PersonScope.Lot, lotRanking.Texts[lot], null, lots.Sums[lot])) yield return cell;
        }

        for (var at = 0; at < periods.Length; at++)
        {
            foreach (var cell in Cells(PersonScope.Period, "", calendar.PeriodStarts[at], periods[at])) yield return cell;
        }

        for (var at = 0; at < weeks.Length; at++)
        {
            foreach (var cell in Cells(PersonScope.Week, "", calendar.WeekStarts[at], weeks[at])) yield return cell;
        }

        foreach (var site in siteRanking.Order)
        {
            if (siteWeekPlaces[site] is not { } places) continue;
            for (var at = 0; at < places.Length; at++)
            {
                if (places[at] == 0) continue;
                foreach (var cell in Cells(PersonScope.SiteWeek, siteRanking.Texts[site], calendar.WeekStarts[at], siteWeeks[places[at] - 1]))
                {
                    yield return cell;
                }
            }
        }
    }

    private static IEnumerable<PersonCell> Cells(PersonScope scope, string level, DateOnly? start, ScopeSums sums)
    {
        foreach (var measure in Enum.GetValues<PersonMeasure>())
        {
            var of = sums.Of(measure);
            if (of.Persons == 0) continue;
            yield return new(scope, level, start, measure, of.Persons, of.WithEvent, of.Trials, of.Events,
                of.TrialsSquared, of.TrialsTimesEvents, of.EventsSquared);
        }
    }

    private static void Add(ScopeSums[] sums, ScopeSums[] others)
    {
        for (var i = 0; i < sums.Length; i++) sums[i].Add(others[i]);
    }

    private bool IsKept(PersonScope scope) => scope != PersonScope.Period || !calendar.PeriodIsWeek;

    private ref ScopeSums Of(PersonScope scope, int level, int day)
    {
        if (scope == PersonScope.Program) return ref program;
        if (scope == PersonScope.Site) return ref sites.Sums[level];
        if (scope == PersonScope.Lot) return ref lots.Sums[level];
        if (scope == PersonScope.Week) return ref weeks[calendar.Week(day)];
        if (scope == PersonScope.SiteWeek) return ref SiteWeek(level, calendar.Week(day));
        return ref periods[calendar.Period(day)];
    }

    // A week's counts are added up to the week, the site and the program: a run is counted only once, into its week at its site.
    private void EndWeek(int at, ref PersonCounts inProgram)
    {
        PersonCounts inWeek = default;
        foreach (var site in week.Touched)
        {
            ref readonly var counts = ref week.Of(site);
            SiteWeek(site, at).Add(counts);
            sites.Of(site).Add(counts);
            inWeek.Add(counts);
        }

        week.Clear();
        weeks[at].Add(inWeek);
        inProgram.Add(inWeek);
    }

    private ref ScopeSums SiteWeek(int site, int at)
    {
        var places = siteWeekPlaces[site] ??= new int[calendar.WeekStarts.Length];
        if (places[at] == 0)
        {
            if (siteWeekCount == siteWeeks.Length) Array.Resize(ref siteWeeks, 2 * siteWeekCount);
            places[at] = ++siteWeekCount;
        }

        return ref siteWeeks[places[at] - 1];
    }
}
