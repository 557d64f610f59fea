using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Rules;
using ScreenStats.Warehouse.Contract;

namespace ScreenStats.Warehouse.Sql;

/// <summary>
/// The queries of the screening view. Each groups in one flat query, by bucket first where people are divided among servers, so that shards
/// do it by themselves; what is summed over people is put around it.
/// </summary>
internal sealed class ScreeningSql
{
    /// <summary>Earliest and latest date a row may have: a day inside of what the log can hold.</summary>
    public const string FirstDate = "DATE '1970-01-03'";
    public const string LastDate = "DATE '2106-02-05'";

    private const string Always = "1 = 1";

    // Only PostgreSQL has shards, so only its hash is needed. Its last bits tell the line, others stand in it: together 40, so that of a thousand million
    // identifiers one in a thousand is looked at in vain.
    private const string IdHash = "hashtextextended(screen_id, 0)";
    private const int LineBits = 8;
    private const int HashFrom = 31;

    private readonly View view;
    private readonly Dialect dialect;
    private readonly string bucket;

    /// <param name="view">The view.</param>
    /// <param name="dialect">How the engine writes.</param>
    /// <param name="sharded">True where people are divided among servers.</param>
    /// <param name="met">What rows there are, once that is known: what is not met need not be looked for in every row. Null: all may be met.</param>
    public ScreeningSql(View view, Dialect dialect, bool sharded, RowsMet? met = null)
    {
        this.view = view;
        this.dialect = dialect;
        bucket = sharded ? "bucket, " : "";
        var any = met ?? new RowsMet(true, true, true, true);
        IsControl = view.Has(ViewContract.Control) && any.Controls ? $"control IN ({List(ViewContract.Controls)})" : "";
        Fault = Faults();
        // Not "= 0": planners take that for one row in two hundred, and think that grouping is not worth sending.
        Valid = any.Faults ? $"{Fault} < 1" : Always;
        var kept = new List<string>();
        if (any.Faults) kept.Add(Valid);
        if (IsControl.Length > 0) kept.Add($"(control IS NULL OR control NOT IN ({List(ViewContract.Controls)}))");
        if (view.Has(ViewContract.Symptomatic) && any.Symptomatic) kept.Add("(symptomatic IS NULL OR NOT symptomatic)");
        if (view.Has(ViewContract.Exposed) && any.Exposed) kept.Add("(exposed IS NULL OR NOT exposed)");
        Counted = kept.Count == 0 ? Always : string.Join(" AND ", kept);
        OnPerson = IsControl.Length == 0 ? Valid : $"{Valid} AND person IS NOT NULL AND person <> ''";
        Lot = view.Has(ViewContract.Lot) ? "CASE WHEN lot = '' THEN NULL ELSE lot END" : "";
    }

    /// <summary>Why a row is set aside, as <see cref="RowFault"/>; 0 for none.</summary>
    public string Fault { get; }

    public string Valid { get; }

    /// <summary>Rows that are counted as screens.</summary>
    public string Counted { get; }

    /// <summary>Valid rows of a person.</summary>
    public string OnPerson { get; }

    /// <summary>True for control runs; empty where the view has none.</summary>
    public string IsControl { get; }

    /// <summary>The lot, NULL where none is recorded; empty where the view has none.</summary>
    public string Lot { get; }

    private string From => $" FROM {view.Quoted}";

    private string HasId => $"{Valid} AND screen_id IS NOT NULL AND screen_id <> ''";

    /// <summary>Rows by local date, and the first and last instant on it.</summary>
    public Statement Days() => Grouped("the days of the view",
        $"SELECT {bucket}{Dialect.Day("collected_on")} AS day, count(*) FILTER (WHERE {Counted}) AS counted, count(*) FILTER (WHERE {Counted} AND collected_at IS NULL) AS dates, "
        + $"{dialect.Seconds("min(collected_at)")} AS first, {dialect.Seconds("max(collected_at)")} AS last{From} WHERE {Valid} GROUP BY {bucket}collected_on");

    /// <summary>Rows by their entry in the ledger, or by why they are set aside.</summary>
    public Statement Entries()
    {
        var kept = (IsControl.Length > 0 ? $" WHEN {IsControl} THEN {Entry(LedgerEntry.ControlRun)}" : "")
            + (view.Has(ViewContract.Symptomatic) ? $" WHEN symptomatic THEN {Entry(LedgerEntry.KeptOutSymptomatic)}" : "")
            + (view.Has(ViewContract.Exposed) ? $" WHEN exposed THEN {Entry(LedgerEntry.KeptOutExposed)}" : "");
        var entry = $"{Fault[..^" ELSE 0 END".Length]}{kept} ELSE {Entry(LedgerEntry.Counted)} END";
        return Grouped("the entries of the ledger", Summed([entry], ""));
    }

    /// <summary>What <see cref="Entries"/> says of a row that is not set aside, as a number beyond those of <see cref="RowFault"/>.</summary>
    public static int Entry(LedgerEntry entry) => 100 + (int)entry;

    /// <summary>One line a bucket: numbers under the conditions given.</summary>
    public Statement Totals(IEnumerable<string> conditions) => Grouped("the numbers of rows",
        $"SELECT {bucket}{string.Join(", ", conditions.Select(condition => condition.Length == 0 ? "count(*)" : $"count(*) FILTER (WHERE {condition})"))}{From}" + (bucket.Length > 0 ? " GROUP BY bucket" : ""));

    /// <summary>Counted rows by the columns given that the view has; the others are read as NULL.</summary>
    public Statement Counts(string what, ImmutableArray<string> expressions, string condition = "") => Counts(what, expressions, condition, []);

    /// <summary>The same with parameters.</summary>
    public Statement Counts(string what, ImmutableArray<string> expressions, string condition, ImmutableArray<object> parameters)
        => new(Summed(expressions, $" WHERE {Counted}{(condition.Length > 0 ? " AND " + condition : "")}"), parameters) { What = what, Grouped = true };

    /// <summary>Counted rows by site and minute of the hour, in seconds of UTC.</summary>
    public Statement Minutes() => Grouped("the minutes of runs",
        $"SELECT site, {dialect.SecondsOf("minute")}, n FROM (SELECT {bucket}site, {dialect.MinuteOfHour("collected_at")} AS minute, count(*) AS n{From} WHERE {Counted} AND collected_at IS NOT NULL "
        + $"GROUP BY {bucket}site, {dialect.MinuteOfHour("collected_at")}) AS minutes");

    /// <summary>
    /// People by how many runs, positive ones, and inconclusive or invalid ones they have in one scope. People with a positive one come by
    /// name, one line each, because what became of it is not known here; the others only as numbers.
    /// </summary>
    /// <param name="what">In words.</param>
    /// <param name="keys">The expressions that name the part of the scope; none for the whole program.</param>
    public Statement People(string what, ImmutableArray<string> keys) => People(what, keys, "");

    /// <summary>The same of those only who have in a part a run that is not negative: few beside all people and parts.</summary>
    public Statement PeopleNotNegative(string what, ImmutableArray<string> keys) => People(what, keys, " HAVING count(*) FILTER (WHERE result <> 'negative') > 0");

    /// <summary>
    /// For each of some stretches of days: people with runs, their runs, and the squares of each one's runs. Of each person (and site) shards send one line
    /// with a number for each stretch; a line for each person and stretch would be nearly as many lines as rows, as a person has few runs in a week.
    /// Counts alone would do if a shard joined its rows with themselves, week by week, and counted pairs: that took four times as long.
    /// </summary>
    /// <param name="what">In words.</param>
    /// <param name="parts">First days, and the days behind the last, as days since 2000-01-01; in order.</param>
    /// <param name="bySite">True for a line of each site as well, before the one of all, whose site is NULL.</param>
    public Statement PeopleByTime(string what, IReadOnlyList<(int From, int To)> parts, bool bySite)
    {
        var runs = string.Join(", ", parts.Select((part, at) => $"count(*) FILTER (WHERE {Within(part.From, part.To)}) AS n{at}"));
        var sums = string.Join(", ", parts.Select((_, at) => FormattableString.Invariant($"count(*) FILTER (WHERE n{at} > 0), CAST(sum(n{at}) AS bigint), CAST(sum(n{at} * n{at}) AS bigint)")));
        var where = $"{From} WHERE {Counted} AND {Within(parts[0].From, parts[^1].To)}";
        if (!bySite) return Grouped(what, $"SELECT NULL, {sums} FROM (SELECT {bucket}{runs}{where} GROUP BY {bucket}person) AS people");
        // Of integers, as PostgreSQL keeps sums of wider numbers in a hundred bytes each.
        var added = string.Join(", ", parts.Select((_, at) => FormattableString.Invariant($"CAST(sum(CAST(n{at} AS integer)) AS bigint) AS n{at}")));
        return Grouped(what, $"WITH people AS MATERIALIZED (SELECT {bucket}person, site, {runs}{where} GROUP BY {bucket}person, site) "
            + $"SELECT site, {sums} FROM people GROUP BY site UNION ALL SELECT NULL, {sums} FROM (SELECT {added} FROM people GROUP BY person) AS added");
    }

    /// <summary>Days between consecutive runs of a person, by site of the later one.</summary>
    /// <param name="without">People who are left out.</param>
    public Statement Gaps(string[] without)
    {
        // Rows of one person at one time have no order: all such people are among those left out.
        const string order = "ORDER BY collected_on, collected_at NULLS FIRST";
        var some = without.Length == 0 ? "" : $" AND NOT ({dialect.In("person", 1, "VARCHAR")})";
        var inner = $"SELECT {bucket}person, array_agg({Dialect.Day("collected_on")} {order}) AS d, CASE WHEN min(site) = max(site) THEN NULL ELSE array_agg(site {order}) END AS s, min(site) AS sole, count(*) AS n"
            + $"{From} WHERE {Counted}{some} GROUP BY {bucket}person HAVING count(*) > 1";
        return new($"SELECT CASE WHEN site IS NULL THEN sole ELSE site END AS site, day - before AS gap, count(*) FROM (SELECT sole, unnest(d[2:n]) AS day, unnest(d[1:n-1]) AS before, unnest(s[2:n]) AS site FROM ({inner}) AS people) AS gaps GROUP BY 1, 2",
            without.Length == 0 ? [] : [without]) { What = "the days between runs", Grouped = true };
    }

    /// <summary>How many people stand in more than one bucket: the shards find the people in each of theirs, and what they found is held against each other before them.</summary>
    public Statement PeopleInSeveralBuckets() => Grouped("people in several buckets",
        $"SELECT count(*) FROM (SELECT person FROM (SELECT bucket, person{From} WHERE {OnPerson} GROUP BY bucket, person) AS met GROUP BY person HAVING count(*) > 1) AS several");

    /// <summary>People and days with more than one valid row.</summary>
    public Statement SeveralOnOneDay() => Grouped("people with several rows on one day",
        $"SELECT {bucket}person, {Dialect.Day("collected_on")} AS day{From} WHERE {OnPerson} GROUP BY {bucket}person, collected_on HAVING count(*) > 1");

    /// <summary>Negative runs of people by stratum: of the people listed by name, of the others as numbers.</summary>
    /// <param name="stratum">The expression that numbers the stratum.</param>
    /// <param name="parameters">Its parameters, and behind them the people.</param>
    public Statement Strata(string stratum, ImmutableArray<object> parameters)
    {
        var inner = $"SELECT {bucket}person, {stratum} AS stratum, count(*) AS n{From} WHERE {Counted} AND result = 'negative' GROUP BY {bucket}person, {stratum}";
        var vectors = $"SELECT person, string_agg(CAST(stratum AS varchar) || ':' || CAST(n AS varchar), ' ' ORDER BY stratum) AS v FROM ({inner}) AS counts GROUP BY person";
        var who = $"CASE WHEN {dialect.Among("person", parameters.Length)} THEN person END";
        return new Statement($"SELECT {who}, v, count(*) FROM ({vectors}) AS vectors GROUP BY {who}, v", parameters) { What = "negative runs by sampling stratum", Grouped = true };
    }

    /// <summary>Rows in full.</summary>
    public Statement Rows(string what, string condition, ImmutableArray<object> parameters) => new($"SELECT {Columns}{From} WHERE {condition}", parameters) { What = what };

    /// <summary>The columns of <see cref="Rows"/>, in the order in which <c>RowFetch</c> reads them; those the view lacks are NULL.</summary>
    private string Columns => string.Join(", ",
    [
        "person", Dialect.Day("collected_on"), dialect.Seconds("collected_at"), "site", "result",
        Or(ViewContract.Lot), Or(ViewContract.Kit), Or(ViewContract.Operator), Or(ViewContract.Specimen), Or(ViewContract.Collection), Or(ViewContract.Control), Or(ViewContract.ScreenId),
        Mark(ViewContract.Symptomatic), Mark(ViewContract.Exposed), Mark(ViewContract.Outbreak),
        view.Has(ViewContract.LotExpiry) ? Dialect.Day(ViewContract.LotExpiry) : "NULL", view.Has(ViewContract.ReadAt) ? dialect.Seconds(ViewContract.ReadAt) : "NULL", Or(ViewContract.RowNumber),
    ]);

    /// <summary>Rows that are set aside: their number and why.</summary>
    public Statement SetAside() => new($"SELECT {Or(ViewContract.RowNumber)}, {Fault}{From} WHERE {Fault} <> 0") { What = "rows that are set aside" };

    /// <summary>Identifiers that stand in more than one row, on one server.</summary>
    public Statement SharedIds() => new($"SELECT screen_id{From} WHERE {HasId} GROUP BY screen_id HAVING count(*) > 1") { What = "identifiers that stand twice" };

    /// <summary>
    /// Hashes of identifiers that stand in more than one row, anywhere behind the server, as <see cref="IdKey"/> reads them. Whether two shards have
    /// an identifier in common cannot be told from counts: whoever wants to be sure has to be told of each. Shards send a whole number of
    /// each, some thousands to a line, and the server in front of them passes on those that it meets twice.
    /// </summary>
    public Statement SharedIdHashes()
    {
        // Bit by bit, as planners take a yes or no for two groups, but a number made of an identifier for one group a row, not worth sending.
        var bits = Enumerable.Range(0, LineBits).Select(bit => FormattableString.Invariant($"({IdHash} & {1L << bit}) > 0")).ToArray();
        var line = string.Join(" + ", bits.Select((_, bit) => FormattableString.Invariant($"CASE WHEN b{bit} THEN {1L << bit} ELSE 0 END")));
        var inner = $"SELECT {bucket}{string.Join(", ", bits.Select((expression, bit) => FormattableString.Invariant($"{expression} AS b{bit}")))}, array_agg(CAST((({IdHash} >> {HashFrom}) & 4294967295) - 2147483648 AS integer)) AS hashes"
            + $"{From} WHERE {HasId} GROUP BY {bucket}{string.Join(", ", bits)}";
        return Grouped("identifiers that stand twice", $"SELECT line, hash FROM (SELECT {line} AS line, unnest(hashes) AS hash FROM ({inner}) AS bundles) AS ids GROUP BY line, hash HAVING count(*) > 1");
    }

    /// <summary>One number of the two of a line of <see cref="SharedIdHashes"/>.</summary>
    public static long IdKey(long line, long hash) => ((hash + 2147483648) << HashFrom) | line;

    /// <summary>Valid rows whose identifier has one of the keys of <see cref="IdKey"/> in the first parameter.</summary>
    public string HasIdOf => FormattableString.Invariant($"{HasId} AND ({IdHash} & {(4294967295L << HashFrom) | ((1L << LineBits) - 1)}) = ANY($1)");

    /// <summary>People of whom there is any valid row, among those listed.</summary>
    public Statement Known(string[] people) => new($"SELECT {bucket}person{From} WHERE {OnPerson} AND {dialect.In("person", 1, "VARCHAR")} GROUP BY {bucket}person", [people]) { What = "people with specimens" };

    /// <summary>Some pseudonyms, to see what they look like.</summary>
    public Statement SomePeople(int most) => new($"SELECT person{From} WHERE person IS NOT NULL AND person <> '' LIMIT {most.ToString(System.Globalization.CultureInfo.InvariantCulture)}") { What = "a sample of pseudonyms" };

    /// <summary>True where the way of collection is one of those listed, or not recorded where that is wanted.</summary>
    public string CollectionIs(ImmutableArray<string> words, bool notRecorded)
    {
        if (!view.Has(ViewContract.Collection)) return notRecorded ? "1 = 1" : "1 = 0";
        var one = words.IsEmpty ? "1 = 0" : $"(collection IS NOT NULL AND collection IN ({List(words)}))";
        return notRecorded ? $"({one} OR collection IS NULL OR collection NOT IN ({List(ViewContract.Collections)}))" : one;
    }

    internal static string List(IEnumerable<string> words) => string.Join(", ", words.Select(word => $"'{word}'"));

    /// <summary>The day that names the period of a row.</summary>
    public static string Period(ReportPeriod period, int firstDay, int lastDay) => period switch
    {
        ReportPeriod.Day => Dialect.Day("collected_on"),
        ReportPeriod.Week => Dialect.Week("collected_on"),
        _ => Dialect.Month("collected_on", firstDay, lastDay),
    };

    private string Or(string column) => view.Has(column) ? column : "NULL";

    private string Mark(string column) => view.Has(column) ? $"CASE WHEN {column} THEN 1 WHEN NOT {column} THEN 0 END" : "NULL";

    // What shards counted by bucket is added up by the server in front of them.
    private string Summed(ImmutableArray<string> expressions, string where)
    {
        var keys = string.Join(", ", expressions);
        if (bucket.Length == 0) return $"SELECT {keys}, count(*){From}{where} GROUP BY {keys}";
        var names = string.Join(", ", expressions.Select((_, at) => $"k{at}"));
        return $"SELECT {names}, CAST(sum(n) AS bigint) FROM (SELECT bucket, {string.Join(", ", expressions.Select((expression, at) => $"{expression} AS k{at}"))}, count(*) AS n{From}{where} GROUP BY bucket, {keys}) AS parts GROUP BY {names}";
    }

    private Statement People(string what, ImmutableArray<string> keys, string having)
    {
        var named = keys.Select((key, at) => $"{key} AS k{at}").ToArray();
        var inner = $"SELECT {string.Join(", ", [bucket + "person", .. named, "count(*) AS n", "count(*) FILTER (WHERE result = 'positive') AS p", "count(*) FILTER (WHERE result IN ('inconclusive', 'invalid')) AS u"])}"
            + $"{From} WHERE {Counted} GROUP BY {string.Join(", ", [bucket + "person", .. keys])}{having}";
        var outer = string.Join(", ", ["CASE WHEN p > 0 THEN person END", .. keys.Select((_, at) => $"k{at}"), "n", "p", "u"]);
        return Grouped(what, $"SELECT {outer}, count(*) FROM ({inner}) AS people GROUP BY {outer}");
    }

    private static string Within(int from, int to) => FormattableString.Invariant($"collected_on >= DATE '{Moment.DayOf(from):yyyy-MM-dd}' AND collected_on < DATE '{Moment.DayOf(to):yyyy-MM-dd}'");

    private static Statement Grouped(string what, string text) => new(text) { What = what, Grouped = true };

    private string Faults() =>
        $"CASE WHEN (person IS NULL OR person = ''){(IsControl.Length > 0 ? $" AND (control IS NULL OR NOT {IsControl})" : "")} THEN {(int)RowFault.NoPerson}"
        + $" WHEN site IS NULL OR site = '' THEN {(int)RowFault.NoSite} WHEN {dialect.Bytes("site")} > 200 THEN {(int)RowFault.LongSite}"
        + $" WHEN collected_on IS NULL THEN {(int)RowFault.NoDate} WHEN collected_on < {FirstDate} OR collected_on > {LastDate} THEN {(int)RowFault.ImpossibleDate}"
        + $" WHEN result IS NULL OR result = '' THEN {(int)RowFault.NoResult} WHEN result NOT IN ({List(ViewContract.Outcomes)}) THEN {(int)RowFault.UnknownResult} ELSE 0 END";
}
