using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;

namespace ScreenStats.Browser.Tests;

/// <summary>A site or lot that a reader chooses is marked everywhere.</summary>
public sealed class MarkTests(SampleReport report)
{
    private const string Lot = "D-0719";

    // Rows whose words name the lot, and rows that are marked. Points of charts have names of many kinds in one column, which does not say which.
    private const string Named = "() => [...document.querySelectorAll('tbody tr')].filter(row => !row.closest('table').caption.textContent.startsWith('Points of the charts')).filter(row => [...row.cells].some(cell => ['D-0719', 'lot D-0719'].includes(cell.textContent.replace('marked: ', '')))).map(row => row.closest('table').caption.textContent)";
    private const string Marked = "() => [...document.querySelectorAll('tr.marked')].map(row => row.closest('table').caption.textContent)";

    [Fact]
    public async Task A_lot_chosen_from_the_list_is_marked_in_every_table_and_picture_that_names_it()
    {
        await using var opened = await report.Open(View.Desk);
        await opened.Page.GetByLabel("Mark a site or lot everywhere").SelectOptionAsync(new Microsoft.Playwright.SelectOptionValue { Label = Lot });
        var marked = await opened.Ask<string[]>(Marked);
        marked.Should().BeEquivalentTo(await opened.Ask<string[]>(Named)).And.Subject.Distinct().Should().HaveCountGreaterThan(8);
        (await opened.Ask<string[]>("() => [...document.querySelectorAll('tr.marked')].map(row => row.cells[0].textContent)")).Should().OnlyContain(name => name.StartsWith("marked: ", StringComparison.Ordinal));
        // Not by a colour alone: a bar, strong words, and a word for those who hear the page.
        (await opened.Ask<string[]>("() => [...document.querySelectorAll('tr.marked > :first-child')].map(cell => getComputedStyle(cell)).map(style => style.fontWeight + ' ' + /gradient/.test(style.backgroundImage))")).Should().OnlyContain(style => style == "600 true");
        var said = await opened.Ask<string>("() => document.querySelector('.marks output').textContent");
        said.Should().Be($"{Lot} is marked in {marked.Distinct().Count()} tables and {await opened.Ask<int>("() => new Set([...document.querySelectorAll('svg .marked')].map(box => box.closest('figure'))).size")} pictures.");
        // The frame stands around the words.
        (await opened.Ask<string[]>("""
            () => [...document.querySelectorAll('svg .marked')].filter(box => { const frame = box.getBoundingClientRect(), text = box.nextElementSibling.getBoundingClientRect();
                return box.nextElementSibling.textContent !== 'D-0719' || frame.left > text.left || frame.right < text.right || frame.top > text.top + 1 || frame.bottom < text.bottom - 1; }).map(box => box.closest('figure').id)
            """)).Should().BeEmpty();
        (await opened.Ask<int>("() => document.querySelectorAll('svg .marked').length")).Should().BeGreaterThan(1);
    }

    [Fact]
    public async Task A_name_in_a_table_is_a_button_that_marks_it_and_takes_the_mark_back()
    {
        await using var opened = await report.Open(View.Desk);
        var name = opened.Page.Locator(".scroll[aria-label='Every lot'] tbody .name").First;
        var lot = await name.InnerTextAsync();
        await name.ClickAsync();
        (await opened.Ask<string>("() => document.querySelector('#mark').selectedOptions[0].label")).Should().Be(lot);
        (await opened.Ask<string[]>("() => [...document.querySelectorAll('tr.marked .name[aria-pressed=true]')].map(one => one.textContent.replace(/^(lot|site) /, ''))")).Should().HaveCountGreaterThan(5).And.OnlyContain(pressed => pressed == lot);
        await name.ClickAsync();
        (await opened.Ask<int>("() => document.querySelectorAll('.marked, .unseen, .name[aria-pressed=true]').length")).Should().Be(0);
        (await opened.Ask<string>("() => document.querySelector('.marks output').textContent")).Should().Be("Nothing is marked.");
    }

    [Fact]
    public async Task From_the_keyboard_a_lot_is_chosen_walked_through_and_cleared()
    {
        await using var opened = await report.Open(View.Desk);
        await opened.Page.Locator("#mark").FocusAsync();
        await opened.Page.Keyboard.TypeAsync(Lot);
        await opened.Page.Keyboard.PressAsync("Tab");
        (await opened.Ask<string>("() => document.activeElement.textContent")).Should().Be("Next place");
        await opened.Page.Keyboard.PressAsync("Enter");
        (await opened.Ask<bool>("() => document.activeElement.closest('tr').matches('.marked')")).Should().BeTrue();
        var said = await opened.Ask<string>("() => document.querySelector('.marks output').textContent");
        said.Should().MatchRegex("^Place 1 of [0-9]+: .+\\.$");
        // The bar stays in sight, and what has the focus is not behind it.
        (await opened.Ask<bool>("() => { const bar = document.querySelector('.marks').getBoundingClientRect(), cell = document.activeElement.getBoundingClientRect(); return bar.top >= 0 && bar.bottom <= cell.top && cell.bottom <= innerHeight; }")).Should().BeTrue();
        await opened.Page.Locator("button", new() { HasText = "Next place" }).FocusAsync();
        await opened.Page.Keyboard.PressAsync("Tab");
        await opened.Page.Keyboard.PressAsync("Space");
        (await opened.Ask<int>("() => document.querySelectorAll('.marked').length")).Should().Be(0);
        (await opened.Ask<string>("() => document.activeElement.id")).Should().Be("mark");
        opened.Complaints.Should().BeEmpty();
    }

    [Fact]
    public async Task The_tools_of_a_table_are_reached_and_used_from_the_keyboard()
    {
        await using var opened = await report.Open(View.Desk);
        await opened.Page.Locator(".scroll[aria-label='Every lot'] .opener").FocusAsync();
        await opened.Page.Keyboard.PressAsync("Enter");
        var names = new List<string>();
        for (var stop = 0; stop < 5; stop++)
        {
            await opened.Page.Keyboard.PressAsync("Tab");
            names.Add(await opened.Ask<string>("() => document.activeElement.getAttribute('aria-label') ?? document.activeElement.textContent"));
        }

        names.Should().Equal("Lot: Every lot", "Copy as CSV: Every lot", "As written: Every lot", "Lot", "Runs");
        await opened.Page.Keyboard.PressAsync("Enter");
        (await opened.Ask<string>("() => document.activeElement.closest('th').getAttribute('aria-sort')")).Should().Be("ascending", "the focus stays where it was");
        (await opened.Ask<string>("() => document.getElementById(document.activeElement.getAttribute('aria-describedby')).textContent")).Should().Be("Every lot");
    }

    [Theory]
    [InlineData("desk")]
    [InlineData("dark")]
    [InlineData("phone")]
    public async Task Axe_finds_nothing_with_tools_open_a_filter_set_and_a_lot_marked(string view)
    {
        await using var opened = await report.Open(View.Named(view));
        await opened.Unfold();
        await opened.Page.EvaluateAsync("""
            () => { for (const opener of document.querySelectorAll('.opener')) opener.click();
                for (const list of document.querySelectorAll('.panel select')) { list.selectedIndex = 1; list.dispatchEvent(new Event('change')); }
                for (const table of document.querySelectorAll('.scroll > table')) table.querySelector('thead button').click();
                const mark = document.querySelector('#mark'); mark.selectedIndex = mark.options.length - 1; mark.dispatchEvent(new Event('change')); }
            """);
        // What the tools change; the rest of the page is asked without them.
        var result = await opened.Page.RunAxe(new AxeRunContext { Include = [new AxeSelector(".tools"), new AxeSelector(".marks"), new AxeSelector("thead"), new AxeSelector("tr.marked"), new AxeSelector("svg .marked")] }, AccessibilityTests.Every());
        AccessibilityTests.Found(result).Should().BeEmpty();
        result.Passes.Select(rule => rule.Id).Should().Contain(["color-contrast", "target-size", "button-name", "select-name", "empty-table-header"], "the rules did run");
        (await opened.Ask<int>("() => document.documentElement.scrollWidth")).Should().Be(View.Named(view).Width);
        opened.Complaints.Should().BeEmpty();
        opened.Requests.Should().Equal(report.Address);
        var small = await opened.Ask<string[]>("""
            () => [...document.querySelectorAll('button, select, input')].filter(one => one.checkVisibility()).map(one => [one, one.getBoundingClientRect()])
                .filter(([, place]) => place.width < 23.9 || place.height < 23.9).map(([one, place]) => one.className + ' ' + one.textContent.slice(0, 20) + ' ' + place.width + ' x ' + place.height)
            """);
        small.Should().BeEmpty("a target has 24 pixels at least");
        (await opened.Ask<string[]>("() => [...document.querySelectorAll('.tools button, .tools select, .tools input')].filter(one => !one.getAttribute('aria-label').endsWith(one.closest('.scroll').getAttribute('aria-label'))).map(one => one.outerHTML)")).Should().BeEmpty("each control tells its table");
    }

    [Theory]
    [InlineData("desk", 0, 20)]
    [InlineData("phone", 20, 110)]
    public async Task A_box_is_a_stop_of_the_Tab_key_only_where_it_scrolls(string view, int least, int most)
    {
        await using var opened = await report.Open(View.Named(view));
        await opened.Unfold();
        await opened.Page.WaitForFunctionAsync("() => [...document.querySelectorAll('.scroll')].every(box => (box.tabIndex === 0) === (box.scrollWidth > box.clientWidth + 1))");
        (await opened.Ask<int>("() => document.querySelectorAll('.scroll[tabindex]').length")).Should().BeInRange(least, most);
    }
}
