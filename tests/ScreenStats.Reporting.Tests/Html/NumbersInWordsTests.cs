using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Files;
using ScreenStats.Reporting.Tests.Pages;

namespace ScreenStats.Reporting.Tests.Html;

/// <summary>Numbers in the words of the page: each is a figure of findings.json, rounded by the one rule, or one of the few that are none.</summary>
public partial class NumbersInWordsTests
{
    private static readonly (string Name, Findings Findings)[] Programs = [.. Tests.Programs.All.Where(program => program.Name != "hostile"), ("cadence", CadenceSketch.With(Tests.Programs.FaultyLot)), ("worth", WorthSketch.With(Tests.Programs.FaultyLot)), ("hidden", Hidden())];

    /// <summary>Numbers that are no findings: bases of rates, levels of limits, names, places of a proportion, thresholds of our own rules that are spoken of.</summary>
    private static readonly string[] Stated =
    [
        @"\b(95|998) in (100|1,000)\b", @"\b(per|in|of|each|for each|for) (1,000|10,000|100,000|100)\b", @"\b1,000 (more )?(screens|people|runs)\b", @"\b(95|99|99\.8|97\.5) %", "95 and 99.8 per cent",
        "CHEERS 2022", @"\b1 - (stated )?specificity\b", "prevalence is 0\\b", "there it is 0\\b", @"\b(is|are|be) 1 or more\b", @"\b(leaves|leave|below|above|at|than|includes?) [01]\b(?![.,]\d)", "Dots: 2, 5, 10 and 20 times", @"\b[Ff]ewer than \d+\b", @"prevalence is given as 0\b", @"\(0 where it costs nothing\)", "24 hours a day", @"Printed are the first 40 of [\d,]+ rows",
        @"\bbelow \d+ or would give such a one away",
        "SHA-256", "ISO 8601",
    ];

    [Theory]
    [InlineData("p, li, dd, dt, h2, h3, h4")]
    public void No_number_stands_in_the_words_of_the_page_that_is_no_figure(string where)
    {
        var loose = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var (name, findings) in Programs)
        {
            var page = Page(findings);
            // Methods, meanings of columns and notes of tables state rules; what was found in files quotes its lines; the foot names files.
            foreach (var element in page.QuerySelectorAll("#methods, #diagnostics").Select(heading => heading.ParentElement!).ToArray()) element.Remove();
            foreach (var element in page.QuerySelectorAll("table, script, style, svg, nav, footer, .span, .disclosure, .columns, .notes, .formula, .methods, details > summary + p, data, .drawn, a, code").ToArray()) element.Remove();
            foreach (var element in page.QuerySelectorAll(where).Where(one => !one.Children.Any(child => child.LocalName is "p" or "ul" or "ol")))
            {
                var words = Spaces().Replace(element.TextContent, " ").Trim();
                foreach (var one in Stated) words = Regex.Replace(words, one, "");
                if (Digit().IsMatch(words)) loose.Add($"{element.LocalName} in {name}: {words}");
            }
        }

        string.Join('\n', loose).Should().BeEmpty();
    }

    [Fact]
    public void Every_figure_of_the_page_stands_in_the_file_and_is_rounded_by_the_one_rule()
    {
        // The invented findings have keys of their own; those of "published" take long to walk.
        foreach (var (name, findings) in Programs.Where(program => program.Name is not ("published" or "cadence" or "worth")))
        {
            using var json = JsonDocument.Parse(findings.Disclosure is null ? JsonText.Of(findings) : Text(findings, "findings.json"));
            var figures = Page(findings).QuerySelectorAll("data");
            foreach (var figure in figures)
            {
                var path = figure.GetAttribute("value")!;
                var (found, undefined) = JsonPaths.Find(json.RootElement, path);
                Printed(found, undefined).Should().Contain(figure.TextContent, $"{name}: {path}");
            }

            if (findings.Positivity.Program.Trials > 0) figures.Should().HaveCountGreaterThan(20, name);
        }
    }

    // What one rule makes of a value of the file, by each unit that it may have.
    private static string[] Printed(JsonElement found, string? undefined) => found.ValueKind switch
    {
        JsonValueKind.String => [found.GetString()!],
        JsonValueKind.Null => undefined is null ? [""] : ["undefined", ""],
        JsonValueKind.Number =>
        [
            .. Enum.GetValues<Unit>().Where(unit => unit is not (Unit.Text or Unit.Date)).Select(unit => Rounding.Print(Cell.Number(found.GetDouble()), unit)),
            // A confidence is spoken of as "95 %".
            (found.GetDouble() * 100).ToString("0.##", CultureInfo.InvariantCulture) + " %",
        ],
        _ => [],
    };

    private static Findings Hidden()
    {
        var settings = Tests.Programs.FaultyLot.Settings;
        return DisclosureControl.Apply(Tests.Programs.FaultyLot with { Settings = settings with { Report = settings.Report with { SuppressBelow = 5 } } });
    }

    private static string Text(Findings findings, string file) => Encoding.UTF8.GetString(Report.Files(findings, new ReportInputs())[file]);

    private static IDocument Page(Findings findings) => new HtmlParser().ParseDocument(Text(findings, "report.html"));

    [GeneratedRegex("[0-9]")]
    private static partial Regex Digit();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
