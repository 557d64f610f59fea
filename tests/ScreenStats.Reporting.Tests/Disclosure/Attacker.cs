using System.Globalization;
using System.Text;

namespace ScreenStats.Reporting.Tests.Disclosure;

/// <summary>
/// A reader with the folder of a report, or of two, who works out what is hidden: every sum and difference that the tables' own words state,
/// percentages turned back into counts, and bounds passed along the sums until nothing moves. Written apart from the code under test and
/// without it: it knows files only.
/// </summary>
internal sealed class Attacker
{
    private const string SharingSpecimens = "runs that share a specimen";
    private static readonly string[] Parts = ["program", "site", "lot", "specimen", "collection", "weekday"];
    private readonly Dictionary<string, (double Low, double High)> bounds = new(StringComparer.Ordinal);
    private readonly HashSet<string> hidden = new(StringComparer.Ordinal);
    private readonly List<(string Total, string[] Parts)> sums = [];
    private readonly string prefix;

    public Attacker(IReadOnlyDictionary<string, byte[]> files, Attacker? earlier = null)
    {
        prefix = earlier is null ? "" : "now ";
        foreach (var (table, counts, share) in new[]
        {
            ("positivity", new[] { ("tests", "tests"), ("positives", "positives") }, ("positives", "tests")),
            ("invalid-runs", [("runs", "runs"), ("inconclusive", "inconclusive"), ("invalid", "invalid")], ("unusable", "runs")),
            ("lots", [("runs", "runs"), ("inconclusive", "inconclusive"), ("invalid", "invalid"), ("tests", "tests"), ("positives", "positives"), ("confirmed", "confirmed"), ("refuted", "refuted")], ("", "")),
            ("sites", [("runs", "runs"), ("inconclusive", "inconclusive"), ("invalid", "invalid"), ("tests", "tests"), ("positives", "positives"), ("confirmed", "confirmed"), ("refuted", "refuted")], ("", "")),
            ("refuted", [("tests", "tests"), ("refuted", "refuted"), ("without_conclusion", "open")], ("refuted", "tests")),
            ("audits", [("audited", "audited"), ("missed", "missed"), ("agreed", "agreed"), ("unresolved", "audit unresolved")], ("agreed", "audit conclusive")),
        })
        {
            foreach (var row in Rows(files, table)) Take(row, table is "lots" ? "lot" : table is "sites" ? "site" : row["by"], counts, share);
        }

        foreach (var row in Rows(files, "follow-up"))
        {
            var kind = row["outcome"] == "positive" ? "" : "inconclusive ";
            Take(row, row["by"],
                [("due", row["outcome"] == "positive" ? "positives" : "inconclusive"), ("confirmed", kind + "confirmed"), ("refuted", kind + "refuted"), ("unresolved", kind + "unresolved"), ("pending", kind + "pending"), ("unverified", kind + "unverified")],
                (kind + "conclusive", row["outcome"] == "positive" ? "positives" : "inconclusive"));
        }

        foreach (var row in Rows(files, "comparison"))
        {
            var (trials, events) = row["measure"] switch { "positivity" => ("tests", "positives"), "invalid-runs" => ("runs", "unusable"), _ => ("conclusive", "refuted") };
            Take(row, row["by"], [("trials", trials), ("events", events)], (events, trials));
        }

        foreach (var row in Rows(files, "predictive-values").Where(row => row["basis"] == "observed"))
            Take(row, row["by"], [("confirmed", "confirmed"), ("refuted", "refuted"), ("without_conclusion", "open")], ("confirmed", "conclusive"));
        foreach (var row in Rows(files, "accuracy").Where(row => row["basis"] == "no-assumption"))
            Take(row, row["by"], [("positives", "positives"), ("verified", "conclusive"), ("negatives", "negative"), ("audited", "audit conclusive"), ("missed", "missed")], ("", ""));
        foreach (var row in Rows(files, "retests").Where(row => row["by"] is "program" or "site"))
            Take(row, row["by"], [("positives", "positives")], ("", ""));
        foreach (var row in Rows(files, "delays").Where(row => row["kind"] == "run-to-specimen")) Take(row, row["by"], [("resulted", "waited")], ("", ""));
        Absent(files, "audits", "audited", "missed", "agreed", "audit unresolved", "audit conclusive");
        foreach (var row in Rows(files, "yield"))
        {
            var (done, found) = row["measure"] switch { "runs-per-case" => ("runs", "cases"), "persons-per-case" => ("persons", "cases"), "tests-per-confirmed-run" => ("tests", "confirmed"), _ => ("tests", "refuted") };
            Take(row, "program", [("done", done), ("found", found)], ("", ""));
        }

        foreach (var row in Rows(files, "trends").Where(row => row["trials"].Length > 0))
        {
            var (trials, events) = Followed(row["measure"]);
            Take(row, row["by"], [("trials", trials), ("events", events), ("pending", "pending")], (events, trials));
        }

        foreach (var row in Rows(files, "weekdays").Where(row => row["trials"].Length > 0))
        {
            var (trials, events) = Followed(row["measure"]);
            row["level"] = row["weekday"];
            Take(row, "weekday", [("trials", trials), ("events", events)], (events, trials));
        }

        foreach (var row in files.ContainsKey("tables/changes.csv") ? Rows(files, "changes") : [])
        {
            var (trials, events) = row["measure"] switch
            {
                "positivity" => ("tests", "positives"),
                "invalid-runs" => ("runs", "unusable"),
                "positive-predictive-value" => ("conclusive", "confirmed"),
                "follow-up" => ("positives", "conclusive"),
                "refuted-per-valid-test" => ("tests", "refuted"),
                "confirmed-per-valid-test" => ("tests", "confirmed"),
                "negative-predictive-value" => ("audit conclusive", "agreed"),
                _ => ("person-weeks", "cases"),
            };
            Take(row, row["by"], [("later_trials", trials), ("later_events", events)], ("", ""));
        }

        AbsentDays(files);
        TakeFlow(files);
        Relate();
        if (earlier is null) return;
        foreach (var (name, range) in earlier.bounds) bounds.TryAdd(name, range);
        sums.AddRange(earlier.sums);
        foreach (var name in earlier.bounds.Keys)
        {
            // What was added since cannot be less than nothing; only counts that grow.
            if (!name.EndsWith("tests", StringComparison.Ordinal) && !name.EndsWith("positives", StringComparison.Ordinal) && !name.EndsWith("runs", StringComparison.Ordinal)) continue;
            if (!bounds.ContainsKey(prefix + name)) continue;
            bounds.TryAdd("added " + name, (0, double.PositiveInfinity));
            sums.Add((prefix + name, [name, "added " + name]));
        }
    }

    /// <summary>Counts that a report hides and the reader knows to be below the threshold, or knows exactly; with the range.</summary>
    public IEnumerable<string> Leaks(long threshold)
    {
        Solve();
        // How many more runs than specimens there are is a difference of two counts, nobody's group.
        bounds.Remove(prefix + "program|||" + SharingSpecimens);
        return bounds.Where(one => one.Value.High < threshold && one.Value.High > 0.5 && (hidden.Contains(one.Key) || one.Key.StartsWith("added ", StringComparison.Ordinal) || !Shown(one.Value)))
            .Select(one => $"{one.Key}: {one.Value.Low} to {one.Value.High}")
            .Concat(bounds.Where(one => Shown(one.Value) && one.Value.Low > 0.5 && one.Value.Low < threshold).Select(one => $"{one.Key} is {one.Value.Low}"))
            .Distinct();
    }

    /// <summary>Figures drawn from weeks that are shown: smooths, growth and changes are as fine as these, and none may be seen.</summary>
    public static IEnumerable<string> DrawnFromWeeks(IReadOnlyDictionary<string, byte[]> files) =>
        from kind in new[]
        {
            (Table: "trends", Columns: new[] { "smooth", "smooth_lower", "smooth_upper", "spline" }), ("growth", ["points", "growth_per_week", "lower", "rate_to"]),
            ("trend-changes", ["on_lower", "level_ratio", "slope_before", "p_value"]), ("weekdays", ["odds_ratio", "p_value"]),
        }
        from row in Rows(files, kind.Table)
        from column in kind.Columns
        where row[column] is not ("hidden" or "")
        select $"{kind.Table}, {column}: {row[column]}";

    /// <summary>What a table of changes tells of counts that it hides, or of few people: every count that is shown or can be drawn from what is.</summary>
    public static IEnumerable<string> ToldByChanges(IReadOnlyDictionary<string, byte[]> files, long threshold)
    {
        string[] drawn = ["later_estimate", "basis", "from_events", "from_trials", "to_events", "to_trials", "estimate", "lower", "upper"];
        foreach (var row in Rows(files, "changes"))
        {
            var name = $"{row["by"]} {row["level"]} {row["measure"]}";
            foreach (var finer in new[] { "widened_lower", "widened_upper", "remark" }.Where(finer => row[finer] is not ("hidden" or ""))) yield return $"{name}: {finer} rests on people and weeks";
            if (row["later_events"] == "hidden" || row["later_trials"] == "hidden")
            {
                foreach (var column in drawn.Where(column => row[column] is not ("hidden" or ""))) yield return $"{name}: {column} is drawn from a hidden count";
                continue;
            }

            foreach (var side in new[] { "earlier", "later", "from", "to" })
            {
                if (!long.TryParse(row[side + "_events"], out var events) || !long.TryParse(row[side + "_trials"], out var trials)) continue;
                if (events > 0 && events < threshold) yield return $"{name}: {side}_events is {events}";
                if (trials > 0 && trials < threshold) yield return $"{name}: {side}_trials is {trials}";
                if (trials - events > 0 && trials - events < threshold) yield return $"{name}: of {side}_trials {trials - events} are others";
            }
        }
    }

    private static (string Trials, string Events) Followed(string measure) => measure switch
    {
        "positivity" => ("tests", "positives"),
        "invalid-runs" => ("runs", "unusable"),
        _ => ("conclusive", "confirmed"),
    };

    private static bool Shown((double Low, double High) range) => range.Low == range.High;

    private void Take(Dictionary<string, string> row, string by, (string Column, string Count)[] counts, (string Events, string Trials) share)
    {
        if (!Parts.Contains(by)) throw new InvalidOperationException($"A row by {by} is too fine to be shown.");
        var level = row.GetValueOrDefault("level") ?? row.GetValueOrDefault("lot") ?? row.GetValueOrDefault("site") ?? "";
        var unit = $"{by}|{level}|{row.GetValueOrDefault("period_start")}|";
        foreach (var (column, count) in counts)
        {
            var text = row[column];
            if (text.Length == 0) continue;
            if (text == "hidden") Unknown(unit + count, isHidden: true);
            else Narrow(unit + count, double.Parse(text, CultureInfo.InvariantCulture), double.Parse(text, CultureInfo.InvariantCulture));
        }

        if (share.Events.Length == 0 || !row.TryGetValue("estimate", out var estimate) || estimate is "hidden" or "") return;
        // A percentage with a shown denominator is a count.
        Unknown(unit + share.Events);
        if (bounds.TryGetValue(unit + share.Trials, out var trials) && trials.Low == trials.High)
        {
            var events = Math.Round(double.Parse(estimate, CultureInfo.InvariantCulture) * trials.Low);
            Narrow(unit + share.Events, events, events);
        }
    }

    // A table that lists only what there is: a site or lot without a row has none.
    private void Absent(IReadOnlyDictionary<string, byte[]> files, string table, params string[] counts)
    {
        var rows = Rows(files, table).ToList();
        foreach (var by in rows.Select(row => row["by"]).Distinct().Where(by => by is "site" or "lot").ToList())
        {
            var listed = rows.Where(row => row["by"] == by).Select(row => row["level"]).ToHashSet(StringComparer.Ordinal);
            foreach (var level in Rows(files, by + "s").Select(row => row[by]).Where(level => !listed.Contains(level)))
            {
                foreach (var count in counts) Narrow($"{by}|{level}||{count}", 0, 0);
            }
        }
    }

    // Likewise a weekday without a row, where other weekdays have one.
    private void AbsentDays(IReadOnlyDictionary<string, byte[]> files)
    {
        foreach (var measure in Rows(files, "weekdays").Where(row => row["trials"].Length > 0).GroupBy(row => row["measure"]))
        {
            var listed = measure.Select(row => row["weekday"]).ToHashSet(StringComparer.Ordinal);
            foreach (var day in Enum.GetNames<DayOfWeek>().Where(day => !listed.Contains(day))) Narrow($"weekday|{day}||{Followed(measure.Key).Trials}", 0, 0);
        }
    }

    // The boxes of the flow and the rows of the ledger: what comes from one box adds up to it, and a specimen settles at least one run.
    private void TakeFlow(IReadOnlyDictionary<string, byte[]> files)
    {
        const string Program = "program|||";
        var boxes = Rows(files, "flow").ToList();
        foreach (var row in boxes)
        {
            Count(Box(row["box"]), row["count"]);
            if (row["from"].Length == 0 || row["share"] is "hidden" or "" || !bounds.TryGetValue(prefix + Box(row["from"]), out var from) || !Shown(from)) continue;
            var count = Math.Round(double.Parse(row["share"], CultureInfo.InvariantCulture) * from.Low);
            Narrow(Box(row["box"]), count, count);
        }

        foreach (var from in boxes.Where(row => row["from"].Length > 0).GroupBy(row => row["from"])) Sum(prefix, Box(from.Key), [.. from.Select(row => Box(row["box"]))]);
        foreach (var row in Rows(files, "ledger").Where(row => row["export"] is "screening" or "confirmatory"))
            Count(Box((row["export"] == "screening" ? "rows" : "specimen-rows") + (row["entry"] == "read" ? "" : "/" + row["entry"])), row["rows"]);
        foreach (var row in Rows(files, "specimens").Where(row => row["reason"] == "all")) Count(Program + "specimens", row["specimens"]);
        if (!bounds.ContainsKey(prefix + Program + "settling")) return;
        Unknown(Program + "resting");
        Sum(prefix + Program, "resting", "tested", "inconclusive tested", "audited");
        Sum(prefix + Program, "resting", "settling", SharingSpecimens);

        void Count(string name, string text)
        {
            if (text == "hidden") Unknown(name, isHidden: true);
            else Narrow(name, double.Parse(text, CultureInfo.InvariantCulture), double.Parse(text, CultureInfo.InvariantCulture));
        }

        static string Box(string key)
        {
            var outcome = key[(key.LastIndexOf('/') + 1)..];
            var kind = key.StartsWith("rows/counted/inconclusive/", StringComparison.Ordinal) ? "inconclusive " : "";
            return Program + key switch
            {
                "rows/counted" => "runs",
                "rows/counted/positive" => "positives",
                "rows/counted/inconclusive" or "rows/counted/invalid" or "rows/counted/negative" => outcome,
                "specimen-rows/counted" => "specimens",
                "rows/counted/negative/tested" => "audited",
                "rows/counted/negative/not-tested" => "unaudited",
                "rows/counted/negative/tested/unresolved" => "audit unresolved",
                _ when key.StartsWith("specimen-rows/counted/", StringComparison.Ordinal) => outcome,
                _ when !key.StartsWith("rows/counted/", StringComparison.Ordinal) => key,
                _ => kind + outcome,
            };
        }
    }

    private void Unknown(string name, bool isHidden = false)
    {
        bounds.TryAdd(prefix + name, (0, double.PositiveInfinity));
        if (isHidden) hidden.Add(prefix + name);
    }

    private void Narrow(string name, double low, double high)
    {
        Unknown(name);
        var (before, after) = bounds[prefix + name];
        bounds[prefix + name] = (Math.Max(before, low), Math.Min(after, high));
    }

    private void Relate()
    {
        var units = bounds.Keys.Select(name => name[..(name.LastIndexOf('|') + 1)]).Distinct().ToList();
        foreach (var unit in units)
        {
            Sum(unit, "runs", "tests", "unusable");
            Sum(unit, "unusable", "inconclusive", "invalid");
            Sum(unit, "tests", "negative", "positives");
            foreach (var kind in new[] { "", "inconclusive " })
            {
                Sum(unit, kind.Length == 0 ? "positives" : "inconclusive", kind + "conclusive", kind + "open");
                Sum(unit, kind + "conclusive", kind + "confirmed", kind + "refuted");
                Sum(unit, kind + "open", kind + "unresolved", kind + "pending", kind + "unverified");
                Sum(unit, kind + "tested", kind + "conclusive", kind + "unresolved");
            }

            Sum(unit, "negative", "audited", "unaudited");
            Sum(unit, "audited", "audit conclusive", "audit unresolved");
            Sum(unit, "audit conclusive", "missed", "agreed");
        }

        var program = prefix + "program|||";
        foreach (var count in new[] { "runs", "tests", "negative", "positives", "unusable", "inconclusive", "invalid", "confirmed", "refuted", "unresolved", "pending", "unverified", "open", "conclusive", "missed", "agreed", "audited" })
        {
            foreach (var group in units.Where(unit => unit != program).GroupBy(unit => unit[..unit.IndexOf('|', StringComparison.Ordinal)]))
            {
                var members = group.Select(unit => unit + count).Where(bounds.ContainsKey).ToArray();
                if (members.Length == 0 || !bounds.ContainsKey(program + count)) continue;
                // Only where every level is there: a level that a table leaves out has none, or its row would be there.
                sums.Add((program + count, members));
            }
        }
    }

    private void Sum(string unit, string total, params string[] parts)
    {
        // Parts that no table shows are there all the same: to leave them out of a sum would be to know that they are nothing.
        if (!bounds.ContainsKey(unit + total)) return;
        foreach (var part in parts) bounds.TryAdd(unit + part, (0, double.PositiveInfinity));
        sums.Add((unit + total, [.. parts.Select(part => unit + part)]));
    }

    private void Solve()
    {
        for (var round = 0; round < 200; round++)
        {
            var moved = false;
            foreach (var (total, parts) in sums)
            {
                moved |= Tighten(total, parts.Sum(part => bounds[part].Low), parts.Sum(part => bounds[part].High));
                foreach (var part in parts)
                {
                    var others = parts.Where(other => other != part).ToArray();
                    moved |= Tighten(part, bounds[total].Low - others.Sum(other => bounds[other].High), bounds[total].High - others.Sum(other => bounds[other].Low));
                }
            }

            // What contradicts itself tells nothing, and would pass for a report that gives nothing away.
            if (bounds.FirstOrDefault(one => one.Value.Low > one.Value.High + 1e-6) is { Key: { } name } broken)
                throw new InvalidOperationException($"The files contradict each other: {name} would be at least {broken.Value.Low} and at most {broken.Value.High}.");
            if (!moved) return;
        }
    }

    private bool Tighten(string name, double low, double high)
    {
        var (from, to) = bounds[name];
        var tighter = (Math.Max(from, double.IsNaN(low) ? from : low), Math.Min(to, double.IsNaN(high) ? to : high));
        if (tighter == (from, to)) return false;
        bounds[name] = tighter;
        return true;
    }

    private static IEnumerable<Dictionary<string, string>> Rows(IReadOnlyDictionary<string, byte[]> files, string table)
    {
        var lines = Encoding.UTF8.GetString(files[$"tables/{table}.csv"]).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var names = lines[0].Split(',');
        return lines.Skip(1).Select(line => line.Split(',')).Select(fields => names.Zip(fields).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal));
    }
}
