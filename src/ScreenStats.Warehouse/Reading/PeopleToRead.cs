using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Warehouse.Contract;
using ScreenStats.Warehouse.Engines;
using ScreenStats.Warehouse.Sql;

namespace ScreenStats.Warehouse.Reading;

/// <summary>
/// Reads the rows that the rules look at one by one. Of most people these are days: with a run that is not negative, with more than one
/// run, or near a specimen. Of people whose rows may be copies, or who may be interval cases, all rows are read.
/// </summary>
internal sealed class PeopleToRead(
    Asking asking, ScreeningSql sql, View view, FetchedRuns runs, RowFetch fetch, ProgramSettings settings, IReadOnlyList<SpecimenRow>? specimens, FetchedSpecimens specimenRows)
{
    private const int PeopleOfOneQuery = 100_000;
    private const string RepeatedRuns = "the runs whose identifier stands twice";

    private readonly Dictionary<ulong, string> texts = [];

    /// <summary>Reads them.</summary>
    /// <param name="known">People with specimens of whom there is any row.</param>
    /// <param name="people">The pseudonyms of everybody of whom a row was read.</param>
    /// <returns>The people of whom all rows were read.</returns>
    public IReadOnlySet<ulong> Read(out IReadOnlySet<ulong> known, out IReadOnlyCollection<string> people)
    {
        var wholes = Copies();
        foreach (var (person, text) in specimens is null ? [] : specimenRows.People) texts[person] = text;
        var days = new HashSet<(ulong Person, long Day)>();
        asking.Read(sql.SeveralOnOneDay(), line =>
        {
            var person = Meet(line.Text(Column)!);
            if (!wholes.Contains(person)) days.Add((person, line.Whole(Column + 1)));
        });
        DaysToRead.AddOfSpecimens(days, (specimens ?? []).Where(row => !wholes.Contains(row.Person)), settings.Policy);

        // First the rows that are seen by themselves, then the days that only a list names.
        var met = new HashSet<ulong>();
        var notable = $"({sql.Counted} AND result <> 'negative')" + (sql.IsControl.Length > 0 ? $" OR ({sql.Valid} AND {sql.IsControl})" : "");
        asking.Read(sql.Rows("the runs that are not negative", notable, []), line => Take(line, skip: days));
        asking.ReadDays(sql, "the days with more to see", [.. days.Select(day => (texts[day.Person], day.Day))], line => Take(line, only: days));
        wholes.UnionWith(Enumerable.Range(0, runs.Count).Select(at => runs[at]).Where(row => row.Person != 0).GroupBy(row => (row.Person, row.Instant, row.DateOnly)).Where(same => same.Skip(1).Any()).Select(same => same.Key.Person));
        if (specimens is { Count: > 0 })
        {
            var index = new SpecimenIndex(specimens, specimenRows, settings.Policy.ReportLagHours);
            var due = Enumerable.Range(0, runs.Count).Select(at => runs[at]).Where(row => FollowUpRule.IsDue(row.Outcome, settings.Policy) && LedgerRule.Entry(row.Control, row.Symptomatic, row.Exposed) == LedgerEntry.Counted)
                .ToLookup(row => row.Person, row => new Moment(row.Instant, row.OffsetMinutes, row.DateOnly));
            wholes.UnionWith(DaysToRead.Unsettled(index, due, settings.Policy));
        }

        runs.Remove(wholes);
        foreach (var piece in wholes.Where(texts.ContainsKey).Select(person => texts[person]).Chunk(PeopleOfOneQuery))
        {
            asking.Read(sql.Rows("the people read in full", $"{sql.OnPerson} AND {asking.Dialect.In("person", 1, "VARCHAR")}", [piece]), line =>
            {
                met.Add(Names.Person(line.Text(0)));
                fetch.Take(line);
            });
        }

        for (var at = 0; at < runs.Count; at++) met.Add(runs[at].Person);
        known = Known(met);
        people = [.. texts.Where(person => met.Contains(person.Key)).Select(person => person.Value)];
        return wholes;

        void Take(Line line, HashSet<(ulong Person, long Day)>? skip = null, HashSet<(ulong Person, long Day)>? only = null)
        {
            var (text, day) = RowFetch.Key(line);
            var key = (text is null ? 0 : Meet(text), (long)day);
            if (wholes.Contains(key.Item1) || skip?.Contains(key) == true || only?.Contains(key) == false) return;
            fetch.Take(line);
        }
    }

    private int Column => asking.Sharded ? 1 : 0;

    private ulong Meet(string text)
    {
        var person = Names.Person(text);
        texts.TryAdd(person, text);
        return person;
    }

    // People of whom a row has the identifier of another.
    private HashSet<ulong> Copies()
    {
        var wholes = new HashSet<ulong>();
        if (!view.Has(ViewContract.ScreenId)) return wholes;
        if (asking.Sharded) CopiesOnShards(wholes);
        else CopiesHere(wholes);
        return wholes;
    }

    private void CopiesHere(HashSet<ulong> wholes)
    {
        var shared = new List<string>();
        asking.Read(sql.SharedIds(), line => shared.Add(line.Text(0)!));
        foreach (var piece in shared.Chunk(PeopleOfOneQuery))
        {
            asking.Read(sql.Rows(RepeatedRuns, $"{sql.OnPerson} AND {asking.Dialect.In(ViewContract.ScreenId, 1, "VARCHAR")}", [piece]), line => wholes.Add(Meet(line.Text(0)!)));
        }
    }

    // A hash only nominates: whether identifiers are the same is seen in the rows.
    private void CopiesOnShards(HashSet<ulong> wholes)
    {
        var shared = new List<long>();
        asking.Read(sql.SharedIdHashes(), line => shared.Add(ScreeningSql.IdKey(line.Whole(0), line.Whole(1))));
        foreach (var piece in shared.Chunk(PeopleOfOneQuery))
        {
            var found = new List<(string Identifier, string? Person)>();
            asking.Read(sql.Rows(RepeatedRuns, sql.HasIdOf, [piece]), line => found.Add((line.Text(RowFetch.Identifier)!, line.Text(0))));
            var twice = found.GroupBy(row => row.Identifier, StringComparer.Ordinal).Where(same => same.Skip(1).Any()).SelectMany(same => same.Select(row => row.Person));
            foreach (var person in twice.OfType<string>()) wholes.Add(Meet(person));
        }
    }

    private HashSet<ulong> Known(HashSet<ulong> met)
    {
        var found = new HashSet<ulong>(met);
        foreach (var piece in (specimens ?? []).Select(row => row.Person).Distinct().Where(person => !met.Contains(person)).Select(person => texts[person]).Chunk(PeopleOfOneQuery))
        {
            asking.Read(sql.Known(piece), line => found.Add(Names.Person(line.Text(Column))));
        }

        return found;
    }
}
