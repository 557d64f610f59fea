using System.Text;
using System.Text.Json;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Tests;

public sealed class ReportTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("screenstats-report-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public void Every_program_gives_the_whole_folder_and_twice_in_a_row_works()
    {
        foreach (var (name, findings) in Programs.All.Where(program => program.Name != "published"))
        {
            var folder = Path.Combine(root, name);
            Report.Write(findings, folder);
            if (name == "hostile") Report.Write(findings, folder);
            var names = Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(folder, path).Replace('\\', '/')).ToArray();
            names.Should().Contain(["report.html", "findings.json", "workbook.xlsx", "manifest.json", "set-aside.csv", "tables/columns.csv"]);
            names.Should().Contain(findings.Tables.Select(table => $"tables/{table.Id}.csv"));
            using var manifest = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "manifest.json")));
            manifest.RootElement.GetProperty("files").EnumerateArray().Select(file => file.GetProperty("path").GetString()).Append("manifest.json").Should().BeEquivalentTo(names);
        }
    }

    [Fact]
    public void The_same_findings_give_the_same_bytes_of_every_file_under_every_culture()
    {
        foreach (var findings in new[] { Programs.FaultyLot, Programs.Hostile })
        {
            var first = Report.Files(findings, Inputs());
            foreach (var culture in Cultures.Names)
            {
                var other = Cultures.In(culture, () => Report.Files(findings, Inputs()));
                other.Keys.Should().Equal(first.Keys);
                other.Where(file => !file.Value.AsSpan().SequenceEqual(first[file.Key])).Select(file => file.Key).Should().BeEmpty($"they differ under \"{culture}\"");
            }
        }
    }

    [Fact]
    public void The_manifest_says_what_was_read_and_with_what_options_and_holds_no_clock_and_no_path()
    {
        var text = Encoding.UTF8.GetString(Report.Files(Programs.FaultyLot, Inputs())["manifest.json"]);
        using var manifest = JsonDocument.Parse(text);
        manifest.RootElement.GetProperty("version").GetString().Should().Be("9.9.9");
        manifest.RootElement.GetProperty("seed").GetInt64().Should().Be(7);
        manifest.RootElement.GetProperty("options").GetProperty("as-of").GetString().Should().Be("2026-02-01");
        manifest.RootElement.GetProperty("inputs")[0].GetProperty("name").GetString().Should().Be("screening.csv");
        text.Should().NotContain(DateTimeOffset.Now.Year.ToString(System.Globalization.CultureInfo.InvariantCulture) + "-" + DateTimeOffset.Now.Month.ToString("00", System.Globalization.CultureInfo.InvariantCulture)).And.NotContain(root);
    }

    [Fact]
    public void Each_finding_has_a_page_with_a_method_and_each_picture_a_table()
    {
        foreach (var (name, findings) in Programs.All)
        {
            var pages = AllPages.Of(findings).SelectMany(group => group.Pages).ToArray();
            pages.Select(page => page.Finding).Should().BeEquivalentTo(findings.All, options => options.WithStrictOrdering().ComparingByValue<object>().WithoutStrictOrdering(), name);
            pages.Select(page => page.Id).Should().OnlyHaveUniqueItems();
            pages.Should().AllSatisfy(page =>
            {
                page.Method.Should().NotBeEmpty();
                page.CannotTell.Should().NotBeEmpty();
                page.Finding.Sentences.Should().NotBeEmpty();
            });
            var tables = findings.Tables.Select(table => table.Id).ToHashSet();
            var charts = pages.SelectMany(page => page.Charts).ToArray();
            charts.Select(chart => chart.Id).Should().OnlyHaveUniqueItems();
            charts.Select(chart => chart.TableId).Should().BeSubsetOf(tables);
            charts.Where(chart => chart.Caption.Text.Length == 0 || chart.Description.Length == 0).Should().BeEmpty();
        }
    }

    [Fact]
    public void A_page_with_every_row_of_537_sites_is_less_than_four_megabytes()
    {
        var page = Encoding.UTF8.GetString(Report.Files(Programs.Published, new ReportInputs())["report.html"]);
        page.Length.Should().BeLessThan(4_000_000);
        Programs.Published.Sites.Should().HaveCount(PublishedProgram.Sites).And.AllSatisfy(site => page.Should().Contain(site.Site));
    }

    [Fact]
    public void A_finding_shows_its_first_lines_and_none_where_small_counts_are_hidden()
    {
        var found = new Counting.Diagnostics.Diagnostic("x", Counting.Diagnostics.Severity.Warning, "a.csv", 7, "person", "It is missing.", 9)
        {
            Places = [new("a.csv", 7), new("a.csv", 9), new("a.csv", 1234), new("b.csv", 3)],
        };
        string Page(Findings findings) => Encoding.UTF8.GetString(Report.Files(findings, Inputs() with { Diagnostics = [found] })["report.html"]);
        Page(Programs.All.First().Findings).Should().Contain("warning in a.csv, lines 7, 9, 1234; b.csv, line 3: It is missing.");
        Counting.Diagnostics.DiagnosticPlaces.Text(found with { Places = [] }).Should().Be("a.csv, line 7");
        Counting.Diagnostics.DiagnosticPlaces.Text(found with { Places = [], Line = null, File = "" }).Should().BeEmpty();
        var hiding = ExamplePrograms.All[0];
        Page(Evaluator.Evaluate(hiding.Tally, hiding.Settings with { Report = hiding.Settings.Report with { SuppressBelow = 5 } }))
            .Should().Contain("warning in a.csv: what it says of single rows is left out of this report").And.NotContain("lines 7").And.NotContain("b.csv");
    }

    private static ReportInputs Inputs() => new()
    {
        Version = "9.9.9",
        Seed = 7,
        Options = System.Collections.Immutable.ImmutableSortedDictionary<string, string>.Empty.Add("as-of", "2026-02-01"),
        Files = [new InputFile("screening.csv", new string('a', 64))],
        SetAside = [new SetAsideLine("screening.csv", 7, "x", "No person.")],
        Diagnostics = [new Counting.Diagnostics.Diagnostic("x", Counting.Diagnostics.Severity.Warning, "screening.csv", 7, "person", "A <person> is missing.", 3)],
    };
}
