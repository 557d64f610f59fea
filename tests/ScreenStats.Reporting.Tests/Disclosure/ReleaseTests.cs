using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using CsCheck;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Changes;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Reporting.Files.Earlier;

namespace ScreenStats.Reporting.Tests.Disclosure;

public class ReleaseTests
{
    // Numbers that nothing else in the report has: each stands for a small count below 1,000.
    private static readonly int[] Markers = [613, 727, 811, 941, 577];

    [Fact]
    public void No_small_count_is_written_into_any_file()
    {
        var files = Release(Marked().Tally(), 1000);
        var pattern = new Regex(@"(?<![\d.,-])(" + string.Join('|', Markers) + @")(?![\d.–]|,\d)");

        foreach (var (name, text) in Texts(files).Where(file => file.Name != "manifest.json"))
            pattern.Matches(text).Select(match => $"{name}: {text.Substring(Math.Max(0, match.Index - 60), Math.Min(120, text.Length - Math.Max(0, match.Index - 60)))}").Should().BeEmpty();
    }

    [Fact]
    public void The_markers_are_all_written_where_nothing_is_hidden()
    {
        var text = string.Concat(Texts(Release(Marked().Tally(), 0)).Select(file => file.Text));
        foreach (var marker in Markers) Regex.IsMatch(text, $@"(?<![\d.,-]){marker}(?![\d.])").Should().BeTrue($"{marker} is a count of the program");
    }

    [Fact]
    public void The_page_says_at_its_top_that_small_counts_are_hidden()
    {
        var page = Encoding.UTF8.GetString(Release(Marked().Tally(), 1000)["report.html"]);

        page[..page.IndexOf("<main", StringComparison.Ordinal)].Should().Contain("Small counts are hidden: those from 1 to 999").And.NotContain("holds small counts and is not for circulation");
    }

    [Fact]
    public void An_attacker_with_the_folder_finds_no_small_count_of_random_programs()
    {
        Programs.Sample(
            (program, threshold) =>
            {
                var files = Release(Sketch(program).Tally(), threshold);
                new Attacker(files).Leaks(threshold).Should().BeEmpty();
                Attacker.DrawnFromWeeks(files).Should().BeEmpty();
            },
            iter: 40);
    }

    [Fact]
    public void An_attacker_who_follows_rows_and_specimens_through_the_flow_finds_no_small_count()
    {
        var shown = 0;
        Gen.Select(Programs, Gen.Int[0, 30].Array[7]).Sample(
            (drawn, kept) =>
            {
                var (program, threshold) = drawn;
                var files = Release(WithRows(Sketch(program).Tally().Cells, kept), threshold);
                new Attacker(files).Leaks(threshold).Should().BeEmpty();
                var flow = Encoding.UTF8.GetString(files["tables/flow.csv"]);
                // Where most of its boxes are hidden there is no picture.
                var picture = files.TryGetValue("plots/flow.svg", out var drawnFlow) ? Encoding.UTF8.GetString(drawnFlow) : "";
                if (picture.Length > 0 && flow.Split('\n').Any(line => line.Split(',') is { Length: > 5 } cells && cells[4] == "hidden")) picture.Should().Contain(">hidden<");
                Regex.Matches(picture, @">([\d,]+)</text>").Select(match => match.Groups[1].Value).Where(text => IsSmall(text, threshold)).Should().BeEmpty();
                if (flow.Contains("rows/counted,rows,counted", StringComparison.Ordinal)) Interlocked.Increment(ref shown);
            },
            iter: 30);
        shown.Should().BePositive("or the attack is on an empty table");
    }

    // Once drawn above: 44 or 45 inconclusive runs of a site follow from the specimens that settle runs, so its invalid ones would be 0 or 1.
    [Fact]
    public void A_hidden_count_of_nobody_is_not_known_to_be_small()
    {
        Cell[] program = [new(1, 2, 2, 1, 35), new(2, 0, 27, 6, 52), new(1, 0, 26, 0, 19), new(0, 2, 1, 3, 45), new(1, 2, 13, 4, 5)];

        new Attacker(Release(WithRows(Sketch(program).Tally().Cells, [1, 20, 4, 29, 30, 21, 1]), 11)).Leaks(11).Should().BeEmpty();
    }

    [Fact]
    public void No_number_of_the_data_file_or_the_page_is_a_small_count()
    {
        Programs.Sample(
            (program, threshold) =>
            {
                var files = Release(Sketch(program).Tally(), threshold);
                using var json = JsonDocument.Parse(files["findings.json"]);
                SmallNumbers(json.RootElement, "", threshold).Should().BeEmpty();
                // What would be is the same whatever the data (the next test): days between screens are no counts.
                var page = Regex.Replace(Encoding.UTF8.GetString(files["report.html"]), "<section>\n<h3 id=\"what-if-.*?</section>", "", RegexOptions.Singleline);
                Regex.Matches(page, @"<t[dh][^>]*>([\d,]+)</t[dh]>").Where(match => IsSmall(match.Groups[1].Value, threshold) && !IsLevelOfParticipation(page, match.Index)).Select(match => page[Math.Max(0, match.Index - 300)..(match.Index + match.Length)]).Should().BeEmpty();
                Regex.Matches(page, @"<data value=""([^""]+)"">([\d,]+)</data>").Where(match => match.Groups[1].Value is not ("yield.episodeDays" or "followUp.confirmWithinHours" or "accuracy.stratumCount" or "comparison.levelCount") && !match.Groups[1].Value.StartsWith("participation.", StringComparison.Ordinal) && IsSmall(match.Groups[2].Value, threshold))
                    .Select(match => match.Value).Should().BeEmpty();
            },
            iter: 15);
    }

    [Fact]
    public void What_would_be_is_the_same_whatever_the_data()
    {
        (string Json, string Page) Of(Counting.Cubes.Tally tally, int threshold)
        {
            var files = Release(tally, threshold);
            using var json = JsonDocument.Parse(files["findings.json"]);
            var page = Encoding.UTF8.GetString(files["report.html"]);
            return (json.RootElement.GetProperty("whatIf").GetRawText(), string.Concat(Regex.Matches(page, "<div class=\"what-if\".*?</div>", RegexOptions.Singleline).Select(match => match.Value)));
        }

        var one = Of(ExamplePrograms.FaultyLotAndClumsySite().Tally(), 5);
        one.Page.Should().Contain("positive-predictive-value");
        Programs.Sample((program, threshold) => Of(Sketch(program).Tally(), threshold).Should().Be(one), iter: 5);
    }

    [Fact]
    public void Limits_turned_back_into_counts_give_no_small_count_of_random_programs()
    {
        var tried = 0;
        Programs.Sample(
            (program, threshold) =>
            {
                foreach (var (table, name, count) in Release(Sketch(program).Tally(), threshold).SelectMany(Inverted))
                {
                    Interlocked.Increment(ref tried);
                    (count < 0.5 || count > threshold - 0.5).Should().BeTrue($"{table}, {name} is {count} by its limits, with {threshold}");
                }
            },
            iter: 25);
        tried.Should().BeGreaterThan(1000);
    }

    // Wilson's plain limits, from estimate p and centre c: n = z squared (1/2 - c) / (c - p).
    private static IEnumerable<(string Table, string Name, double Count)> Inverted(KeyValuePair<string, byte[]> file)
    {
        if (!file.Key.StartsWith("tables/", StringComparison.Ordinal) || file.Key == "tables/columns.csv") yield break;
        var lines = Encoding.UTF8.GetString(file.Value).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var names = lines[0].Split(',').ToList();
        var (estimate, lower, upper, method) = (names.IndexOf("estimate"), names.IndexOf("lower"), names.IndexOf("upper"), names.IndexOf("method"));
        if (estimate < 0 || lower < 0 || method < 0) yield break;
        foreach (var fields in lines.Skip(1).Select(line => line.Split(',')).Where(fields => fields.Length > method && fields[method] == "wilson"))
        {
            if (!double.TryParse(fields[estimate], CultureInfo.InvariantCulture, out var p) || p > 1 || !double.TryParse(fields[lower], CultureInfo.InvariantCulture, out var low) || !double.TryParse(fields[upper], CultureInfo.InvariantCulture, out var high)) continue;
            var centre = (low + high) / 2;
            if (Math.Abs(centre - p) < 1e-9) continue;
            var trials = 1.959963984540054 * 1.959963984540054 * (0.5 - centre) / (centre - p);
            yield return (file.Key, "trials", trials);
            // A share of 0 or of all is no small count; what was not repeated or not followed up of all is.
            yield return (file.Key, "events", p * trials);
            yield return (file.Key, "others", (1 - p) * trials);
        }
    }

    [Fact]
    public void The_attacker_finds_small_counts_where_only_they_are_hidden()
    {
        var files = Release(new ProgramSketch().Runs(Outcome.Negative, 300).Runs(Outcome.Positive, 40, FollowUp.Refuted).Runs(Outcome.Negative, 300, site: "South").Runs(Outcome.Positive, 3, FollowUp.Refuted, "South").Tally(), 0);
        var naive = files.ToDictionary(file => file.Key, file => file.Key.StartsWith("tables/", StringComparison.Ordinal)
            // The rows that are too fine for any release are left out here too, so that the sums are what gives the count away.
            ? Encoding.UTF8.GetBytes(Regex.Replace(Regex.Replace(Encoding.UTF8.GetString(file.Value), @"^(operator|site,[^,]*,\d{4}-).*\n", "", RegexOptions.Multiline), @"(?<=^|,)3(?=,|$)", "hidden", RegexOptions.Multiline)) : file.Value);

        new Attacker(naive).Leaks(5).Should().NotBeEmpty();
    }

    [Theory]
    [InlineData(null, 20)]
    // Here the audit works a count out of the first plan: nothing was released, and a defect was reported.
    [InlineData("440Fn9CJa6L6", 1)]
    // Here open positives of a day without a conclusive one were taken to be none.
    [InlineData("5LOFnlLefvI5", 1)]
    public void Two_releases_together_give_no_small_count_away(string? seed, int programs)
    {
        Gen.Select(Programs, Cells).Sample(
            (first, added) =>
            {
                var (program, threshold) = first;
                var earlier = Release(Sketch(program).Tally(), threshold);
                var tables = earlier.Where(file => file.Key.StartsWith("tables/", StringComparison.Ordinal)).ToImmutableDictionary(file => Path.GetFileNameWithoutExtension(file.Key), file => Encoding.UTF8.GetString(file.Value), StringComparer.Ordinal);
                var tally = Sketch([.. program, .. added.Select(cell => cell with { Day = 28 + (cell.Day % 7) })]).Tally();
                var now = Report.Files(DisclosureControl.Apply(Evaluator.Evaluate(Accounted(tally), Settings(threshold)), new EarlierRelease(tables)), new ReportInputs());

                new Attacker(now, new Attacker(earlier)).Leaks(threshold).Should().BeEmpty();
            },
            seed: seed, iter: programs);
    }

    [Fact]
    public void What_has_changed_between_two_releases_gives_no_small_count_away()
    {
        var compared = 0;
        Gen.Select(Programs, Cells).Sample(
            (first, added) =>
            {
                var (program, threshold) = first;
                var earlier = Release(Sketch(program).Tally(), threshold);
                var tables = earlier.Where(file => file.Key.StartsWith("tables/", StringComparison.Ordinal)).ToImmutableDictionary(file => Path.GetFileNameWithoutExtension(file.Key), file => Encoding.UTF8.GetString(file.Value), StringComparer.Ordinal);
                // Above what is hidden, so that something is left to compare.
                var tally = Sketch([.. program, .. added.Select(cell => cell with { Day = 28 + (cell.Day % 7), Runs = cell.Runs + 40 })]).Tally();
                var findings = Evaluator.Evaluate(Accounted(tally), Settings(threshold)).Since(FindingsReader.Read(earlier["findings.json"], "earlier"));
                var now = Report.Files(DisclosureControl.Apply(findings, new EarlierRelease(tables)), new ReportInputs());

                Attacker.ToldByChanges(now, threshold).Should().BeEmpty();
                new Attacker(now, new Attacker(earlier)).Leaks(threshold).Should().BeEmpty();
                using var json = JsonDocument.Parse(now["findings.json"]);
                SmallNumbers(json.RootElement.GetProperty("changes"), ".changes", threshold).Where(found => !Regex.IsMatch(found, @"^\.changes\.(shared|newFlags|stillFlagged|closedFlags|flaggedAndGone|changedSettings)|Estimate is 1$")).Should().BeEmpty();
                compared += Regex.Count(Encoding.UTF8.GetString(now["tables/changes.csv"]), ",added-since,");
            },
            iter: 20, threads: 1);
        compared.Should().BeGreaterThan(20, "else the test would hide behind what is hidden");
    }

    [Fact]
    public void The_same_findings_give_the_same_bytes()
    {
        var tally = Marked().Tally();
        Release(tally, 11).Select(file => (file.Key, Convert.ToBase64String(file.Value))).Should().Equal(Release(tally, 11).Select(file => (file.Key, Convert.ToBase64String(file.Value))));
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void The_bytes_are_the_same_in_every_culture(string culture)
    {
        var tally = Marked().Tally();
        var before = CultureInfo.CurrentCulture;
        var invariant = Release(tally, 1000);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Release(tally, 1000).Select(file => (file.Key, Convert.ToBase64String(file.Value))).Should().Equal(invariant.Select(file => (file.Key, Convert.ToBase64String(file.Value))));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    // How many runs a person had, or days lay between two: what is counted stands beside it.
    private static bool IsLevelOfParticipation(string page, int at) =>
        page.AsSpan(0, at).EndsWith("<th scope=\"row\">runs per person</th>", StringComparison.Ordinal) || page.AsSpan(0, at).EndsWith("<th scope=\"row\">days between runs</th>", StringComparison.Ordinal);

    private static bool IsSmall(string text, int threshold) => long.Parse(text, NumberStyles.AllowThousands, CultureInfo.InvariantCulture) is > 0 and var value && value < threshold;

    // Shares of exactly 1, weights that happen to be whole, and what is no count of the program.
    // The number of the format is no count.
    private static IEnumerable<string> SmallNumbers(JsonElement element, string path, int threshold) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(property => SmallNumbers(property.Value, path + "." + property.Name, threshold)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(item => SmallNumbers(item, path, threshold)),
        JsonValueKind.Number when element.TryGetInt64(out var value) && value > 0 && value < threshold
            && !path.StartsWith(".disclosure.", StringComparison.Ordinal) && path is not (".format" or ".answers.nextSteps.rank" or ".accuracy.stratumCount" or ".comparison.levelCount" or ".accuracy.strata.weight") && !path.StartsWith(".participation.", StringComparison.Ordinal)
            && !path.StartsWith(".whatIf.", StringComparison.Ordinal) // the same whatever the data: What_would_be_is_the_same_whatever_the_data
            && !(value == 1 && (path.EndsWith("estimate", StringComparison.Ordinal) || path.EndsWith("hare", StringComparison.Ordinal) || path.EndsWith("pper", StringComparison.Ordinal) || path.EndsWith("ower", StringComparison.Ordinal))) => [$"{path} is {value}"],
        _ => [],
    };

    private static Gen<Cell[]> Cells => Gen.Select(Gen.Int[0, 2], Gen.Int[0, 2], Gen.Int[0, 27], Gen.Int[0, 6], Gen.Frequency((2, Gen.Int[1, 6]), (2, Gen.Int[7, 60]))).Select((site, lot, day, kind, runs) => new Cell(site, lot, day, kind, runs)).Array[3, 25];

    private static Gen<(Cell[] Program, int Threshold)> Programs => Gen.Select(Cells, Gen.OneOf(Gen.Const(5), Gen.Const(11)));

    private static ProgramSketch Sketch(Cell[] cells)
    {
        var sketch = new ProgramSketch();
        for (var site = 0; site < 3; site++) sketch.Runs(Outcome.Negative, 150 + (70 * site), site: $"S{site}", lot: $"L{site}").Runs(Outcome.Negative, 90, site: $"S{site}", lot: $"L{(site + 1) % 3}", day: 8);
        foreach (var cell in cells)
        {
            var (outcome, followUp) = cell.Kind switch
            {
                0 => (Outcome.Positive, FollowUp.Confirmed),
                1 => (Outcome.Positive, FollowUp.Refuted),
                2 => (Outcome.Positive, FollowUp.Unverified),
                3 => (Outcome.Inconclusive, FollowUp.Refuted),
                4 => (Outcome.Invalid, FollowUp.None),
                5 => (Outcome.Negative, FollowUp.Agreed),
                _ => (Outcome.Negative, FollowUp.Missed),
            };
            sketch.Runs(outcome, cell.Runs, followUp, $"S{cell.Site}", $"L{cell.Lot}", cell.Day);
        }

        return sketch;
    }

    private static Tally WithRows(TallyCells cells, int[] kept)
    {
        var resting = cells.Screens.Where(cell => cell.FollowUp is not (FollowUp.None or FollowUp.Pending or FollowUp.Unverified)).Sum(cell => cell.Runs);
        var settling = resting - Math.Min(resting, kept[0] % 8);
        return Tally.FromCells(cells with
        {
            SettlingSpecimens = settling,
            Specimens = settling + kept[1] == 0 ? [] : [new(SpecimenReason.NotRecorded, 0, 1, 0, 0, settling + kept[1])],
            Ledger =
            [
                new(ExportKind.Screening, LedgerEntry.Counted, cells.Screens.Sum(cell => cell.Runs)), new(ExportKind.Screening, LedgerEntry.SetAside, kept[2]),
                new(ExportKind.Screening, LedgerEntry.Duplicate, kept[3]), new(ExportKind.Screening, LedgerEntry.KeptOutSymptomatic, kept[4]),
                new(ExportKind.Screening, LedgerEntry.KeptOutExposed, kept[5]), new(ExportKind.Confirmatory, LedgerEntry.Counted, settling + kept[1]), new(ExportKind.Confirmatory, LedgerEntry.Duplicate, kept[6]),
            ],
        });
    }

    private static ProgramSketch Marked() => new ProgramSketch()
        .Runs(Outcome.Negative, 40_000).Runs(Outcome.Negative, 30_000, site: "South", lot: "B2", day: 8).Runs(Outcome.Negative, 52_000, site: "East", lot: "C3", day: 15)
        .Runs(Outcome.Positive, 613, FollowUp.Confirmed).Runs(Outcome.Positive, 2_500, FollowUp.Refuted, day: 8).Runs(Outcome.Positive, 4_000, FollowUp.Confirmed, "South", "B2", 8)
        .Runs(Outcome.Positive, 727, FollowUp.Refuted, "East", "C3", 15).Runs(Outcome.Inconclusive, 811, FollowUp.Refuted, "South", "B2", 8).Runs(Outcome.Invalid, 941, site: "East", lot: "C3", day: 15)
        .Runs(Outcome.Invalid, 3_333).Runs(Outcome.Negative, 577, FollowUp.Missed, "South", "B2", 8).Runs(Outcome.Negative, 9_000, FollowUp.Agreed, "South", "B2", 8);

    private static ProgramSettings Settings(int threshold) => new() { Report = new ReportSettings { SuppressBelow = threshold } };

    private static SortedDictionary<string, byte[]> Release(Tally tally, int threshold) =>
        Report.Files(DisclosureControl.Apply(Evaluator.Evaluate(Accounted(tally), Settings(threshold))), new ReportInputs());

    // A sketch has no rows: with a ledger that says none were counted its report would contradict itself, and a reader who works things out learn nothing.
    private static Tally Accounted(Tally tally) => tally.Cells.Ledger.Any(cell => cell.Rows > 0) ? tally : Tally.FromCells(tally.Cells with
    {
        Ledger = [new LedgerCell(ExportKind.Screening, LedgerEntry.Counted, tally.Cells.Screens.Sum(cell => cell.Runs))],
    });

    // Pictures by their words: their lines are numbers of another kind.
    private static IEnumerable<(string Name, string Text)> Texts(IReadOnlyDictionary<string, byte[]> files)
    {
        foreach (var (name, bytes) in files)
        {
            if (name.EndsWith(".png", StringComparison.Ordinal)) continue;
            if (name.EndsWith(".xlsx", StringComparison.Ordinal))
            {
                using var zip = new ZipArchive(new MemoryStream(bytes));
                foreach (var entry in zip.Entries.Where(entry => entry.FullName.StartsWith("xl/worksheets/", StringComparison.Ordinal) || entry.FullName == "xl/sharedStrings.xml"))
                {
                    using var reader = new StreamReader(entry.Open());
                    // A cell of a text holds the place of the text among all, which stands in a part of its own.
                    yield return (name + "/" + entry.FullName, string.Join('\n', Regex.Matches(reader.ReadToEnd(), @"(?<! t=""s"">)<(?:v|t)(?: [^>]*)?>([^<]*)</(?:v|t)>").Select(match => match.Groups[1].Value)));
                }

                continue;
            }

            // The font in the page is letters and digits of another kind.
            var text = Regex.Replace(Encoding.UTF8.GetString(bytes), "base64,[A-Za-z0-9+/=]+", "");
            var pictures = new Regex("<svg.*?</svg>", RegexOptions.Singleline);
            yield return (name, pictures.Replace(text, picture => string.Join('\n', Regex.Matches(picture.Value, @"<(text|title|desc)[^>]*>([^<]*)<").Select(match => match.Groups[2].Value))));
        }
    }

    private sealed record Cell(int Site, int Lot, int Day, int Kind, int Runs);
}
