using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Scanning;
using ScreenStats.Records.PersonLog.Sums;
using ScreenStats.Warehouse.Sql;

namespace ScreenStats.Warehouse.Reading;

/// <summary>
/// What is summed over people where the rows lie. The database sums over everybody; of the few people whose rows were all read, what it summed is
/// taken off again, because the log counts them by itself.
/// </summary>
internal sealed class PeopleElsewhere(
    Asking asking, ScreeningSql sql, Names names, Vocabularies vocabularies, ProgramSettings settings, LocalTimes times, FetchedRuns runs, IReadOnlySet<ulong> wholes, IReadOnlyList<ViewDay> days,
    IReadOnlySet<ulong> known) : ICountedElsewhere
{
    // A number for each in every line: half a year of weeks.
    private const int PartsOfOneQuery = 26;

    private readonly Dictionary<ulong, string> people = [];
    private readonly Dictionary<ulong, IReadOnlyList<(int Stratum, int Negatives)>> negatives = [];
    private readonly List<(IReadOnlyList<(int Stratum, int Negatives)> Vector, long People)> vectors = [];
    private AuditSampling? sampling;

    private int FirstDay => days.Where(day => day.Counted > 0).Select(day => day.Day).DefaultIfEmpty(0).Min();

    /// <summary>Says which people are in the log.</summary>
    public void Meet(ulong person, string text) => people[person] = text;

    public IEnumerable<ulong> Known => known;

    public bool IsWhole(ulong person) => person == 0 || wholes.Contains(person);

    public IReadOnlyList<(int Stratum, int Negatives)> Negatives(ulong person) => negatives.GetValueOrDefault(person) ?? [];

    public void Begin(AuditSampling? sampling)
    {
        if (sampling is null) return;
        this.sampling = sampling;
        var (expression, parameters) = StratumSql.Of(sampling, asking.Dialect, sql, vocabularies);
        string[] named = [.. people.Where(person => !wholes.Contains(person.Key)).Select(person => person.Value)];
        asking.Read(sql.Strata(expression, [.. parameters, named]), line =>
        {
            var vector = Vector(line.Text(1)!);
            if (line.Text(0) is { } person) negatives[Names.Person(person)] = vector;
            else vectors.Add((vector, line.Whole(2)));
        });
    }

    public void AddTo(PartitionScan scan)
    {
        var (first, last) = (FirstDay, days.Count == 0 ? 0 : days[^1].Day);
        Scope(scan, PersonScope.Program, "people by their runs", [], static _ => (0, 0));
        Scope(scan, PersonScope.Site, "people by site", ["site"], static run => (run.Site, 0));
        if (sql.Lot.Length > 0) Scope(scan, PersonScope.Lot, "people by lot", [sql.Lot], static run => (run.Lot, 0));
        else Scope(scan, PersonScope.Lot, "people by their runs", [], static _ => (0, 0));
        if (settings.Report.Period is var period and not ReportPeriod.Week)
        {
            ByTime(scan, PersonScope.Period, null, period, "people by period");
            Scope(scan, PersonScope.Period, "people by period", [ScreeningSql.Period(period, first, last)], run => (0, Start(period, run.Day)), byTime: true);
        }

        ByTime(scan, PersonScope.Week, PersonScope.SiteWeek, ReportPeriod.Week, "people by site and week");
        var week = ScreeningSql.Period(ReportPeriod.Week, first, last);
        Scope(scan, PersonScope.Week, "people by week", [week], static run => (0, Start(ReportPeriod.Week, run.Day)), byTime: true);
        Scope(scan, PersonScope.SiteWeek, "people by site and week", ["site", week], static run => (run.Site, Start(ReportPeriod.Week, run.Day)), byTime: true);
        Gaps(scan);
        Outside(scan);
        Audits(scan);
    }

    private static int Start(ReportPeriod period, int day) => Moment.On(period.Start(Moment.DayOf(day))).DayNumber;

    private static int End(ReportPeriod period, int start) => period switch
    {
        ReportPeriod.Day => start + 1,
        ReportPeriod.Week => start + 7,
        _ => Moment.On(Moment.DayOf(start).AddMonths(1)).DayNumber,
    };

    private static IReadOnlyList<(int Stratum, int Negatives)> Vector(string text) => [.. text.Split(' ').Select(part =>
    {
        var colon = part.IndexOf(':', StringComparison.Ordinal);
        return (int.Parse(part.AsSpan(0, colon), CultureInfo.InvariantCulture), int.Parse(part.AsSpan(colon + 1), CultureInfo.InvariantCulture));
    })];

    private void Scope(PartitionScan scan, PersonScope scope, string what, ImmutableArray<string> keys, Func<(int Site, int Lot, int Day), (int Level, int Start)> of, bool byTime = false)
    {
        var settled = new Dictionary<(ulong Person, int Level, int Start), (int Confirmed, int Refuted)>();
        foreach (var run in scan.SettledElsewhere)
        {
            var (level, start) = of((run.Site, run.Lot, run.DayNumber));
            ref var known = ref CollectionsMarshal.GetValueRefOrAddDefault(settled, (run.Person, level, start), out _);
            if (run.Confirmed) known.Confirmed++;
            else known.Refuted++;
        }

        var first = FirstDay;
        asking.Read(byTime ? sql.PeopleNotNegative(what, keys) : sql.People(what, keys), line =>
        {
            var at = 1;
            var level = scope switch { PersonScope.Site or PersonScope.SiteWeek => names.Site(line.Text(at++)!), PersonScope.Lot when keys.Length > 0 => names.Lot(line.Text(at++)), _ => 0 };
            var start = scope is PersonScope.Period or PersonScope.Week or PersonScope.SiteWeek ? (int)line.Whole(at++) : 0;
            var counts = new PersonCounts { Runs = (int)line.Whole(at), Positives = (int)line.Whole(at + 1), Unusable = (int)line.Whole(at + 2) };
            // There all were counted as if their runs were negative.
            if (byTime && line.Whole(at + 3) is var alike) scan.Sums.AddNegative(scope, level, Math.Max(first, start), -alike, -alike * counts.Runs, -alike * counts.Runs * counts.Runs);
            if (line.Text(0) is { } text)
            {
                var person = Names.Person(text);
                if (wholes.Contains(person)) return;
                if (settled.TryGetValue((person, level, start), out var known)) (counts.Confirmed, counts.Refuted) = known;
            }

            Add(scan, scope, level, Math.Max(first, start), counts, line.Whole(at + 3));
        });

        foreach (var person in Whole().GroupBy(row => row.Person))
        {
            foreach (var part in person.GroupBy(row => of((row.Site, row.Lot, Day(row)))))
            {
                var counts = new PersonCounts();
                foreach (var row in part) counts.Add(row.Outcome, FollowUp.None);
                if (counts.Positives == 0) Add(scan, scope, part.Key.Level, Math.Max(first, part.Key.Start), counts, -1);
            }
        }
    }

    // People by stretches of days, as if all runs were negative; of those with others the scope takes that off again.
    private void ByTime(PartitionScan scan, PersonScope scope, PersonScope? ofSites, ReportPeriod period, string what)
    {
        var first = FirstDay;
        var all = days.Where(day => day.Counted > 0).Select(day => Start(period, day.Day)).Distinct().Select(start => (From: start, To: End(period, start))).ToList();
        // Alike in length: in a short rest people would have hardly more than a run each, and lines of them would be no fewer than rows.
        var queries = (all.Count + PartsOfOneQuery - 1) / PartsOfOneQuery;
        foreach (var parts in all.Chunk(Math.Max(1, (all.Count + queries - 1) / Math.Max(1, queries))))
        {
            asking.Read(sql.PeopleByTime(what, parts, ofSites is not null), line =>
            {
                var (of, level) = line.Text(0) is { } site ? (ofSites!.Value, names.Site(site)) : (scope, 0);
                for (var at = 0; at < parts.Length; at++)
                {
                    // Nobody at all makes sums NULL.
                    if (line.Whole((3 * at) + 1) is > 0 and var people) scan.Sums.AddNegative(of, level, Math.Max(first, parts[at].From), people, line.Whole((3 * at) + 2), line.Whole((3 * at) + 3));
                }
            });
        }
    }

    private static void Add(PartitionScan scan, PersonScope scope, int level, int day, in PersonCounts counts, long people)
    {
        scan.Sums.Add(scope, level, day, counts, people);
        if (scope == PersonScope.Program) scan.Participation.Add((ulong)counts.Runs, people);
    }

    // The log counts those of the people whose rows were all read.
    private void Gaps(PartitionScan scan) => asking.Read(sql.Gaps([.. people.Where(person => wholes.Contains(person.Key)).Select(person => person.Value)]), line =>
        scan.Gaps.Add(((ulong)(uint)names.Site(line.Text(0)!) << Keys.DayBits) | (uint)line.Whole(1), line.Whole(2)));

    // Rows outside of the days of the program: of people who are not whole the log has not all rows.
    private void Outside(PartitionScan scan)
    {
        var checks = scan.Checks;
        var lastInstant = checks.LastSecond + RunCounter.EarliestInstant;
        var (before, future) = (0L, 0L);
        foreach (var day in days)
        {
            if (day.Day < checks.FirstDay) before += day.Counted;
            else if (day.Day > checks.LastDay) future += day.Counted;
            else if (times.Midnight(day.Day, out _) > lastInstant) future += day.Dates;
        }

        if (checks.LastSecond != uint.MaxValue)
        {
            var condition = FormattableString.Invariant($"{sql.Counted} AND collected_at IS NOT NULL AND {asking.Dialect.IsAfter("collected_at", lastInstant)} AND {Dialect.Day("collected_on")} >= {checks.FirstDay} AND {Dialect.Day("collected_on")} <= {checks.LastDay}");
            asking.Read(sql.Totals([condition]), line => future += line.Whole(line.Count - 1));
        }

        foreach (var row in Whole())
        {
            if (Day(row) < checks.FirstDay) before--;
            else if (Day(row) > checks.LastDay || row.Instant > lastInstant) future--;
        }

        checks.BeforeProgram.AddUnseen(before);
        checks.InTheFuture.AddUnseen(future);
    }

    private void Audits(PartitionScan scan)
    {
        if (sampling is null) return;
        foreach (var (vector, count) in vectors) scan.Audits!.AddPeople(vector, count);
        var (sites, lots) = (vocabularies.Sites.ToArray(), vocabularies.Lots.ToArray());
        foreach (var person in Whole().Where(row => row.Outcome == Outcome.Negative).GroupBy(row => row.Person))
        {
            scan.Audits!.AddPeople([.. person.GroupBy(row => sampling.StratumOf(sites[row.Site], lots[row.Lot], row.Collection) + 1).Select(part => (part.Key, part.Count()))], -1);
        }
    }

    private IEnumerable<RunRow> Whole()
    {
        for (var at = 0; at < runs.Count; at++)
        {
            var row = runs[at];
            if (row.Person != 0 && wholes.Contains(row.Person) && IsCounted(row)) yield return row;
        }
    }

    private static bool IsCounted(in RunRow row) => LedgerRule.Entry(row.Control, row.Symptomatic, row.Exposed) == LedgerEntry.Counted;

    private static int Day(RunRow row) => new Moment(row.Instant, row.OffsetMinutes, row.DateOnly).DayNumber;
}
