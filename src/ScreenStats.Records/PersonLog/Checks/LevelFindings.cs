using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Checks;

/// <summary>The findings of sense in whole sites and lots.</summary>
internal sealed class LevelFindings(Vocabularies vocabularies, ShapeTable shapes, PartitionScan scan, CubeAssembly cubes, TallyCells cells, IRowSource rows, FoundDiagnostics found)
{
    private const int MostNamed = 5;

    private readonly string[] sites = vocabularies.Sites.ToArray();

    public void Add(bool hasConfirmatory)
    {
        var lots = vocabularies.Lots.ToArray();
        Spelling(ConductDiagnostics.LotSpelledTwice, "lot", lots, cubes.Checks.FirstOfLot, Runs(cell => cell.Lot));
        Spelling(ConductDiagnostics.SiteSpelledTwice, "site", sites, cubes.Checks.FirstOfSite, Runs(cell => cell.Site));
        NoNegatives();
        Minutes();
        Operators();
        Days();
        if (hasConfirmatory) Coverage();
    }

    private Dictionary<string, long> Runs(Func<ScreenCell, string> level)
    {
        var runs = new Dictionary<string, long>(StringComparer.Ordinal);
        foreach (ref readonly var cell in cells.Screens.AsSpan()) runs[level(cell)] = runs.GetValueOrDefault(level(cell)) + cell.Runs;
        return runs;
    }

    private void Spelling(string code, string column, string[] names, Func<int, uint> first, Dictionary<string, long> runs)
    {
        var codes = names.Select((name, at) => (name, at)).Where(one => one.name != Levels.None && runs.ContainsKey(one.name)).ToDictionary(one => one.name, one => one.at, StringComparer.Ordinal);
        var alike = SpellingRule.Alike(codes.Keys);
        if (alike.IsEmpty) return;
        var rarer = alike.SelectMany(group => group.OrderByDescending(name => runs[name]).ThenBy(name => name, StringComparer.Ordinal).Skip(1)).ToList();
        var shown = string.Join("; ", alike.Take(MostNamed).Select(group => string.Join(", ", group.Select(name => FormattableString.Invariant($"\"{name}\" ({runs[name]:N0})")))));
        var more = alike.Length > MostNamed ? FormattableString.Invariant($"; and {alike.Length - MostNamed:N0} more") : "";
        var count = rarer.Sum(name => runs[name]);
        found.Add(code, column, rows, rarer.Select(name => first(codes[name])), count,
            $"{alike.Length:N0} {(alike.Length == 1 ? column + " is" : column + "s are")} spelled in more than one way, with these runs: {shown}{more}. They are counted as different {column}s; spell each in one way in the source.");
    }

    private void NoNegatives()
    {
        var (all, negatives) = (Runs(cell => cell.Site), new Dictionary<string, long>(StringComparer.Ordinal));
        foreach (ref readonly var cell in cells.Screens.AsSpan())
        {
            if (cell.Outcome == Outcome.Negative) negatives[cell.Site] = negatives.GetValueOrDefault(cell.Site) + cell.Runs;
        }

        var without = new List<string>();
        var runs = 0L;
        foreach (var (site, count) in all)
        {
            if (!SuspiciousShareRule.HasNoNegatives(negatives.GetValueOrDefault(site), count)) continue;
            without.Add(site);
            runs += count;
        }

        without.Sort(StringComparer.Ordinal);
        found.Add(ConductDiagnostics.NoNegatives, "result", rows, without.Select(site => cubes.Checks.FirstOfSite(Array.IndexOf(sites, site))), without.Count,
            $"{without.Count:N0} {(without.Count == 1 ? "site has" : "sites have")} {runs:N0} runs and no negative one: {Named(without)}. Export every run of the site, not only positives; until then its positivity means nothing.");
    }

    private void Minutes()
    {
        var (named, records, runs) = (new List<string>(), new List<uint>(), 0L);
        for (var site = 0; site < sites.Length; site++)
        {
            var times = cubes.Checks.Minutes(site);
            if (SuspiciousShareRule.MinuteOfHour(times) is not { } minute) continue;
            named.Add(FormattableString.Invariant($"\"{sites[site]}\" (minute {minute:00})"));
            records.Add(cubes.Checks.FirstOfSite(site));
            runs += times[minute];
        }

        named.Sort(StringComparer.Ordinal);
        found.Add(ConductDiagnostics.OneMinuteOfTheHour, "collected_at", rows, records, runs,
            $"{runs:N0} runs of {named.Count:N0} {(named.Count == 1 ? "site" : "sites")} fall on one minute of the hour, more than half of all there: {Listed(named)}. Have times taken from the clock; delays and reading windows cannot be judged there.");
    }

    private void Operators()
    {
        var (named, records, runs) = (new List<string>(), new List<uint>(), 0L);
        foreach (var site in cells.Operators.Where(cell => cell.Operator != Levels.None).GroupBy(cell => cell.Site, StringComparer.Ordinal))
        {
            var people = site.GroupBy(cell => cell.Operator, StringComparer.Ordinal).Select(one => one.Sum(cell => cell.Runs)).ToList();
            if (!SuspiciousShareRule.IsOneOperator(people.Count, people.Max(), people.Sum())) continue;
            named.Add(site.Key);
            records.Add(cubes.Checks.FirstOfSite(Array.IndexOf(sites, site.Key)));
            runs += people.Max();
        }

        named.Sort(StringComparer.Ordinal);
        found.Add(ConductDiagnostics.OneOperator, "operator", rows, records, runs,
            $"{runs:N0} runs of {named.Count:N0} {(named.Count == 1 ? "site" : "sites")} have one of several operators, who stands in at least 95 of 100 there: {Named(named)}. Check whether the form fills in the operator by itself.");
    }

    private void Days()
    {
        var ofSites = new Dictionary<string, Dictionary<int, DayOfSite>>(StringComparer.Ordinal);
        foreach (ref readonly var cell in cells.Screens.AsSpan())
        {
            if (!ofSites.TryGetValue(cell.Site, out var ofSite)) ofSites[cell.Site] = ofSite = [];
            if (!ofSite.TryGetValue(cell.Day.DayNumber, out var met)) ofSite[cell.Day.DayNumber] = met = new DayOfSite(cell.Site, cell.Day, cell.Outcome);
            met.Runs += cell.Runs;
            met.OneResult &= cell.Outcome == met.Outcome;
        }

        var days = ofSites.Values.SelectMany(ofSite => ofSite.Values).Where(day => day.IsSuspicious).OrderBy(day => day.Day.DayNumber).ThenBy(day => day.Site, StringComparer.Ordinal).ToList();
        if (days.Count == 0) return;
        bool IsWanted(string site, DateOnly day) => ofSites.TryGetValue(site, out var ofSite) && ofSite.TryGetValue(day.DayNumber, out var met) && met.IsSuspicious;
        // Every row of such a day is a notable one.
        var records = cubes.NotableRows.Where(row => shapes[row.Code].Control is null && IsWanted(sites[shapes[row.Code].Site], shapes[row.Code].Time(row.Seconds).Day)).Select(row => row.Record).Take(Diagnostic.MostPlaces).ToList();
        var shown = Listed([.. days.Select(day => FormattableString.Invariant($"\"{day.Site}\" on {day.Day:yyyy-MM-dd} ({day.Runs:N0})"))]);
        found.Add(ConductDiagnostics.OneResultForADay, "result", rows, records, days.Count,
            $"{days.Count:N0} {(days.Count == 1 ? "day of a site has" : "days of sites have")} one result in every run, and not the negative one: {shown}. Check the entries of that day, the lot, and how the swabs were stored.");
    }

    private void Coverage()
    {
        var covered = new Dictionary<int, (int First, int Last)>();
        foreach (var result in scan.Results.Where(result => result.FollowUp is not (FollowUp.Pending or FollowUp.Unverified or FollowUp.None)))
        {
            var site = shapes[result.Code].Site;
            covered[site] = covered.TryGetValue(site, out var known) ? (Math.Min(known.First, result.DayNumber), Math.Max(known.Last, result.DayNumber)) : (result.DayNumber, result.DayNumber);
        }

        var outside = scan.Results.Where(result => result.FollowUp == FollowUp.Unverified
            && (!covered.TryGetValue(shapes[result.Code].Site, out var span) || result.DayNumber < span.First || result.DayNumber > span.Last)).ToList();
        var named = outside.Select(result => sites[shapes[result.Code].Site]).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        found.Add(ConductDiagnostics.OutsideFollowUpCoverage, "collected_at", rows, outside.Select(result => result.Record), outside.Count,
            $"{outside.Count:N0} {(outside.Count == 1 ? "run that calls" : "runs that call")} for follow-up {(outside.Count == 1 ? "lies" : "lie")} before the first or after the last run of {(outside.Count == 1 ? "its" : "their")} site that has a confirmatory specimen ({Named(named)}). Check that the confirmatory export covers the whole time and every site.");
    }

    private sealed class DayOfSite(string site, DateOnly day, Outcome outcome)
    {
        public string Site => site;

        public DateOnly Day => day;

        public Outcome Outcome => outcome;

        public long Runs { get; set; }

        public bool OneResult { get; set; } = true;

        public bool IsSuspicious => OneResult && outcome != Outcome.Negative && SuspiciousShareRule.IsOneResult(Runs, Runs);
    }

    private static string Named(IEnumerable<string> names) => Listed([.. names.Select(name => $"\"{name}\"")]);

    private static string Listed(List<string> names) =>
        string.Join(", ", names.Take(MostNamed)) + (names.Count > MostNamed ? FormattableString.Invariant($" and {names.Count - MostNamed:N0} more") : "");
}
