using System.Globalization;
using Microsoft.Playwright;

namespace ScreenStats.Browser.Tests;

/// <summary>Tables in a browser: sorted, filtered, copied. The values to expect come from the files of the report.</summary>
public sealed class TableTests(SampleReport report)
{
    private const string Lots = "Every lot";
    private const string Periods = "Unusable runs by period";

    // What the clipboard of the page was given last, and the page's own marked text where it has none.
    private const string Clipboard = "window.copied = null; Object.defineProperty(navigator, 'clipboard', { value: { writeText: async text => { window.copied = text; } } });";
    private const string NoClipboard = "window.copied = null; Object.defineProperty(navigator, 'clipboard', { value: undefined }); document.addEventListener('copy', () => { window.copied = document.activeElement.value; });";

    [Fact]
    public async Task Numbers_sort_by_their_value_up_down_and_as_written()
    {
        await using var opened = await report.Open(View.Desk);
        var written = await Column(opened, Lots, 0);
        var runs = Csv("lots").ToDictionary(row => row["lot"], row => long.Parse(row["runs"], CultureInfo.InvariantCulture));
        var heading = Heading(opened, Lots, "Runs");
        await heading.ClickAsync();
        (await Column(opened, Lots, 0)).Should().Equal(runs.OrderBy(lot => lot.Value).Select(lot => lot.Key)).And.NotEqual(written);
        (await Sorted(opened, Lots)).Should().Equal("Runs ascending");
        await heading.ClickAsync();
        (await Column(opened, Lots, 0)).Should().Equal(runs.OrderByDescending(lot => lot.Value).Select(lot => lot.Key));
        (await Sorted(opened, Lots)).Should().Equal("Runs descending");
        (await Said(opened, Lots)).Should().Be($"All {runs.Count} rows, by Runs, highest first.");
        await heading.ClickAsync();
        (await Column(opened, Lots, 0)).Should().Equal(written);
        (await Sorted(opened, Lots)).Should().BeEmpty();
        opened.Complaints.Should().BeEmpty();
    }

    [Fact]
    public async Task Figures_with_a_sign_below_the_printed_digits_sort_by_what_the_file_has()
    {
        await using var opened = await report.Open(View.Desk);
        await Heading(opened, Lots, "p, refuted").ClickAsync();
        var rows = Csv("lots").ToArray();
        var expected = rows.Where(row => row["refuted_p"].Length > 0).OrderBy(row => double.Parse(row["refuted_p"], CultureInfo.InvariantCulture)).Select(row => row["lot"]).ToArray();
        // Undefined ones come last, in both directions.
        var last = rows.Where(row => row["refuted_p"].Length == 0).Select(row => row["lot"]).ToArray();
        last.Should().NotBeEmpty();
        (await Column(opened, Lots, 0)).Should().Equal([.. expected, .. last]);
        await Heading(opened, Lots, "p, refuted").ClickAsync();
        (await Column(opened, Lots, 0)).Should().Equal([.. expected.Reverse(), .. last]);
    }

    [Fact]
    public async Task Days_and_names_sort_by_their_own_order()
    {
        await using var opened = await report.Open(View.Desk);
        var days = await Column(opened, Periods, 0);
        await Heading(opened, Periods, "Period from").ClickAsync();
        await Heading(opened, Periods, "Period from").ClickAsync();
        (await Column(opened, Periods, 0)).Should().Equal(days.OrderDescending(StringComparer.Ordinal));
        await Heading(opened, Lots, "Lot").ClickAsync();
        await Heading(opened, Lots, "Lot").ClickAsync();
        (await Column(opened, Lots, 0)).Should().Equal(Csv("lots").Select(row => row["lot"]).OrderDescending(StringComparer.Ordinal));
        (await Said(opened, Lots)).Should().EndWith(", by Lot, from Z to A.");
    }

    [Fact]
    public async Task Every_heading_of_every_table_sorts_without_losing_a_row()
    {
        await using var opened = await report.Open(View.Desk);
        var wrong = await opened.Ask<string[]>("""
            () => { const wrong = [];
                for (const table of document.querySelectorAll('.scroll > table')) {
                    const rows = () => [...table.tBodies].flatMap(body => [...body.rows]), before = rows();
                    for (const heading of table.tHead.rows[0].cells) {
                        const sort = heading.querySelector('button');
                        for (const state of ['ascending', 'descending', null]) {
                            sort.click();
                            const after = rows();
                            if (heading.getAttribute('aria-sort') !== state || after.length !== before.length || !before.every(row => after.includes(row)) || state === null && before.some((row, index) => after[index] !== row))
                                wrong.push(table.caption.textContent + ': ' + heading.textContent + ' ' + state);
                        }
                    }
                }
                return wrong; }
            """);
        wrong.Should().BeEmpty();
        opened.Complaints.Should().BeEmpty();
    }

    [Fact]
    public async Task A_filter_by_site_keeps_the_rows_of_the_site()
    {
        await using var opened = await report.Open(View.Desk);
        const string caption = "Follow-up of positive and inconclusive runs by a confirmatory test";
        var site = Csv("sites").First()["site"];
        await (await Tool(opened, caption, "Site")).SelectOptionAsync(site);
        (await Column(opened, caption, 0)).Should().NotBeEmpty().And.OnlyContain(part => part == "site " + site);
        (await Said(opened, caption)).Should().MatchRegex("^[0-9]+ of [0-9]+ rows, as written\\.$");
        await (await Tool(opened, caption, "Site")).SelectOptionAsync("");
        await (await Tool(opened, caption, "Lot")).SelectOptionAsync("D-0719");
        (await Column(opened, caption, 0)).Should().NotBeEmpty().And.OnlyContain(part => part == "lot D-0719");
        await (await Tool(opened, caption, "As written")).ClickAsync();
        (await Column(opened, caption, 0)).Should().Contain("whole program").And.Contain("site " + site);
        (await (await Tool(opened, caption, "Lot")).InputValueAsync()).Should().BeEmpty();
    }

    [Fact]
    public async Task A_filter_by_days_keeps_both_ends()
    {
        await using var opened = await report.Open(View.Desk);
        var days = await Column(opened, Periods, 0);
        await (await Tool(opened, Periods, "From")).FillAsync(days[3]);
        await (await Tool(opened, Periods, "To")).FillAsync(days[7]);
        (await Column(opened, Periods, 0)).Should().Equal(days[3..8]);
        (await Said(opened, Periods)).Should().Be($"5 of {days.Length} rows, as written.");
        await (await Tool(opened, Periods, "To")).FillAsync(days[2]);
        (await Column(opened, Periods, 0)).Should().BeEmpty();
        (await Said(opened, Periods)).Should().Be("No row, as written.");
    }

    [Theory]
    [InlineData(Clipboard)]
    [InlineData(NoClipboard)]
    public async Task What_is_copied_is_the_file(string clipboard)
    {
        await using var opened = await report.Open(View.Desk, clipboard);
        await (await Tool(opened, Lots, "Copy as CSV")).ClickAsync();
        await opened.Page.WaitForFunctionAsync("() => window.copied !== null");
        (await opened.Ask<string>("() => window.copied")).Should().Be(File.ReadAllText(Path.Combine(report.Folder, "tables", "lots.csv")));
        var said = await Said(opened, Lots);
        said.Should().MatchRegex("^Copied 12 of 12 rows with all [0-9]+ columns of tables/lots\\.csv\\.$");
        (await opened.Ask<int>("() => document.querySelectorAll('.copied').length")).Should().Be(0);
        opened.Complaints.Should().BeEmpty();
    }

    [Fact]
    public async Task What_is_copied_is_what_is_chosen_in_the_order_it_is_sorted()
    {
        await using var opened = await report.Open(View.Desk, Clipboard);
        const string caption = "Refuted positives per 1,000 valid tests";
        await (await Tool(opened, caption, "Lot")).SelectOptionAsync("D-0719");
        await (await Tool(opened, caption, "Copy as CSV")).ClickAsync();
        await opened.Page.WaitForFunctionAsync("() => window.copied !== null");
        var lines = File.ReadAllLines(Path.Combine(report.Folder, "tables", "refuted.csv"));
        (await opened.Ask<string>("() => window.copied")).Should().Be(string.Join('\n', [lines[0], .. lines.Where(line => line.StartsWith("lot,D-0719,", StringComparison.Ordinal)), ""]));
        await (await Tool(opened, caption, "As written")).ClickAsync();
        await Heading(opened, caption, "Refuted").ClickAsync();
        await Heading(opened, caption, "Refuted").ClickAsync();
        await opened.Ask<string?>("() => window.copied = null");
        await (await Tool(opened, caption, "Copy as CSV")).ClickAsync();
        await opened.Page.WaitForFunctionAsync("() => window.copied !== null");
        var copied = (await opened.Ask<string>("() => window.copied")).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        copied.Should().BeEquivalentTo(lines);
        Rows(copied).Select(row => long.Parse(row["refuted"], CultureInfo.InvariantCulture)).Should().BeInDescendingOrder();
    }

    [Fact]
    public async Task Where_nothing_can_be_copied_the_text_is_marked_for_the_readers_own_key()
    {
        await using var opened = await report.Open(View.Desk, NoClipboard + "document.execCommand = () => false;");
        await (await Tool(opened, Lots, "Copy as CSV")).ClickAsync();
        await opened.Page.WaitForFunctionAsync("() => document.activeElement.matches('.copied')");
        (await opened.Ask<string>("() => document.activeElement.value.slice(document.activeElement.selectionStart, document.activeElement.selectionEnd)"))
            .Should().Be(File.ReadAllText(Path.Combine(report.Folder, "tables", "lots.csv")));
        (await Said(opened, Lots)).Should().Be("The browser does not let a page copy. The text is marked: copy it with its own key.");
    }

    [Fact]
    public async Task What_every_table_copies_stands_in_its_file()
    {
        await using var opened = await report.Open(View.Desk, Clipboard);
        var copied = await opened.Ask<string[]>("""
            async () => { const copied = [];
                for (const table of document.querySelectorAll('.scroll > table')) {
                    const box = table.parentElement; box.querySelector('.opener').click(); window.copied = null;
                    [...box.querySelectorAll('.panel button')].find(one => one.textContent === 'Copy as CSV').click();
                    while (window.copied === null) await Promise.resolve();
                    copied.push(JSON.parse(box.querySelector('script').textContent).table + '\n' + window.copied);
                }
                return copied; }
            """);
        copied.Should().HaveCountGreaterThan(90);
        var alike = 0;
        foreach (var lines in copied.Select(text => text.Split('\n')))
        {
            var file = File.ReadAllLines(Path.Combine(report.Folder, "tables", lines[0] + ".csv"));
            if (lines[1] != file[0]) continue; // the page has it in another shape: an option to a row
            alike++;
            lines[1..^1].Except(file).Should().BeEmpty(lines[0]);
            lines.Length.Should().BeGreaterThan(3);
        }

        alike.Should().BeGreaterThan(70);
    }

    [Fact]
    public async Task Rows_after_the_first_forty_come_when_they_are_asked_for_and_sort_with_the_others()
    {
        await using var opened = await report.Open(View.Desk);
        await opened.Unfold();
        var box = opened.Page.Locator(".scroll:has(.rest)").First;
        var all = await box.Locator("tbody tr").CountAsync();
        all.Should().BeGreaterThan(40);
        (await Seen(box)).Should().Be(40);
        await box.Locator("thead button").First.ClickAsync();
        (await Seen(box)).Should().Be(40);
        await box.Locator(".more").ClickAsync();
        (await Seen(box)).Should().Be(all);
        (await box.Locator(".more").TextContentAsync()).Should().Be("Show the first 40 rows");
        await box.Locator(".more").ClickAsync();
        (await Seen(box)).Should().Be(40);
        (await box.Locator(".more").TextContentAsync()).Should().Be($"Show all {all} rows");
    }

    [Fact]
    public async Task Without_scripts_every_row_is_there_and_no_control()
    {
        await using var opened = await report.Open(View.Desk with { Scripts = false });
        await opened.Unfold();
        (await opened.Ask<int>("() => [...document.querySelectorAll('tbody tr')].filter(row => !row.checkVisibility()).length")).Should().Be(0);
        (await opened.Ask<int>("() => document.querySelectorAll('tbody tr').length")).Should().BeGreaterThan(1000);
        (await opened.Ask<int>("() => document.querySelectorAll('button, select, input, output, label').length")).Should().Be(0);
    }

    [Fact]
    public async Task Paper_has_no_controls_and_the_rows_that_a_reader_asked_for()
    {
        await using var opened = await report.Open(View.Desk);
        await opened.Unfold();
        await opened.Page.EmulateMediaAsync(new() { Media = Media.Print });
        (await opened.Ask<string[]>("() => [...document.querySelectorAll('.tools, .tools *, .marks, .marks *, .more')].filter(one => one.checkVisibility()).map(one => one.className)")).Should().BeEmpty();
        var box = opened.Page.Locator(".scroll:has(.rest)").First;
        (await Seen(box)).Should().Be(40);
        (await opened.Page.Locator(".paper").First.IsVisibleAsync()).Should().BeTrue();
        await opened.Page.EvaluateAsync("() => document.querySelector('.more').click()");
        (await Seen(box)).Should().BeGreaterThan(40);
        (await opened.Page.Locator(".paper").First.IsVisibleAsync()).Should().BeFalse("all are printed then");
    }

    private static Task<int> Seen(ILocator box) => box.EvaluateAsync<int>("one => [...one.querySelectorAll('tbody tr')].filter(row => row.checkVisibility()).length");

    private static ILocator Box(OpenedReport opened, string caption) => opened.Page.Locator($".scroll[aria-label=\"{caption}\"]").First;

    private static ILocator Heading(OpenedReport opened, string caption, string heading) => Box(opened, caption).GetByRole(AriaRole.Button, new() { Name = heading, Exact = true }).First;

    // A control by its full name, which tells its table; the tools are opened for it.
    private static async Task<ILocator> Tool(OpenedReport opened, string caption, string name)
    {
        var opener = Box(opened, caption).Locator(".opener");
        if (await opener.GetAttributeAsync("aria-expanded") == "false") await opener.ClickAsync();
        return Box(opened, caption).GetByLabel($"{name}: {caption}", new() { Exact = true });
    }

    private static Task<string[]> Column(OpenedReport opened, string caption, int column) =>
        Box(opened, caption).EvaluateAsync<string[]>("(box, column) => [...box.querySelectorAll('tbody tr')].map(row => row.cells[column].textContent)", column);

    private static Task<string[]> Sorted(OpenedReport opened, string caption) =>
        Box(opened, caption).EvaluateAsync<string[]>("box => [...box.querySelectorAll('[aria-sort]')].map(one => one.textContent + ' ' + one.getAttribute('aria-sort'))");

    private static Task<string> Said(OpenedReport opened, string caption) => Box(opened, caption).Locator("output").First.InnerTextAsync();

    private IEnumerable<Dictionary<string, string>> Csv(string table) => Rows(File.ReadAllLines(Path.Combine(report.Folder, "tables", table + ".csv")));

    // Fields before the first that may be quoted are enough here.
    private static IEnumerable<Dictionary<string, string>> Rows(string[] lines) =>
        lines.Skip(1).Select(line => lines[0].Split(',').Zip(line.Split(',')).GroupBy(pair => pair.First, StringComparer.Ordinal).ToDictionary(pairs => pairs.Key, pairs => pairs.First().Second, StringComparer.Ordinal));
}
