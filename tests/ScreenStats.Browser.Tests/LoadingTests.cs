namespace ScreenStats.Browser.Tests;

/// <summary>What a browser loads and shows of the report, with and without scripts.</summary>
public sealed class LoadingTests(SampleReport report)
{
    // Words as they stand, without those of controls that only a script brings; what a script made a button of stays.
    private const string Words =
        "() => { const copy = document.body.cloneNode(true); copy.querySelectorAll('th button, td button').forEach(one => one.replaceWith(...one.childNodes)); copy.querySelectorAll('script, button, input, select, output, label').forEach(one => one.remove()); return copy.textContent.replace(/\\s+/g, ' '); }";

    /// <summary>Runs without a browser, so that a machine without one still runs a test of this project.</summary>
    [Fact]
    public void The_page_of_the_sample_is_below_two_megabytes() => new FileInfo(report.File).Length.Should().BeInRange(100_000, 2_000_000);

    [Theory]
    [InlineData("desk")]
    [InlineData("phone")]
    [InlineData("dark")]
    public async Task Nothing_is_complained_of_and_nothing_but_the_file_is_asked_for(string view)
    {
        await using var opened = await report.Open(View.Named(view));
        await opened.Page.Mouse.WheelAsync(0, 20_000);
        opened.Complaints.Should().BeEmpty();
        opened.Requests.Should().Equal(report.Address);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Every_section_of_the_contents_is_there_and_has_content(bool scripts)
    {
        await using var opened = await report.Open(View.Desk with { Scripts = scripts });
        var missing = await opened.Ask<string[]>("""
            () => [...document.querySelectorAll('nav a')].map(link => [link, document.getElementById(link.hash.slice(1))])
                .filter(([link, heading]) => !heading || !/^H[23]$/.test(heading.tagName) || !heading.checkVisibility() || heading.textContent !== link.textContent
                    || heading.parentElement.getBoundingClientRect().height < 2 * heading.getBoundingClientRect().height)
                .map(([link]) => link.textContent)
            """);
        missing.Should().BeEmpty();
        (await opened.Ask<int>("() => document.querySelectorAll('nav a').length")).Should().BeGreaterThan(40);
        var unlisted = await opened.Ask<string[]>("""
            () => { const listed = new Set([...document.querySelectorAll('nav a')].map(link => link.hash.slice(1)));
                return [...document.querySelectorAll('main h2, main section section h3')]
                    .filter(heading => !heading.closest('nav, .method') && !listed.has(heading.id) && !['answers', 'data', 'next', 'rounding', 'diagnostics'].includes(heading.id)).map(heading => heading.textContent); }
            """);
        unlisted.Should().BeEmpty("every section stands in the contents");
    }

    [Fact]
    public async Task Without_scripts_the_page_says_the_same()
    {
        await using var with = await report.Open(View.Desk);
        await using var without = await report.Open(View.Desk with { Scripts = false });
        (await without.Ask<string>(Words)).Should().Be(await with.Ask<string>(Words)).And.Subject!.Length.Should().BeGreaterThan(50_000);
        without.Complaints.Should().BeEmpty();
    }

    [Fact]
    public async Task Every_picture_has_a_title_a_description_and_a_table()
    {
        await using var opened = await report.Open(View.Desk);
        var bad = await opened.Ask<string[]>("""
            () => [...document.querySelectorAll('figure')].filter(figure => {
                const picture = figure.querySelector('svg[role=img]'), title = figure.querySelector('svg > title'), description = figure.querySelector('svg > desc');
                const named = picture?.getAttribute('aria-labelledby').split(' ').map(id => document.getElementById(id));
                return !(title?.textContent.length > 10 && description?.textContent.length > 30 && named.includes(title) && named.includes(description)
                    && figure.querySelector('figcaption')?.textContent.length > 30 && picture.getBoundingClientRect().height > 100);
            }).map(figure => figure.id)
            """);
        bad.Should().BeEmpty();
        // The first links of a caption lead to its tables on the page, the last to its file.
        var lost = await opened.Ask<string[]>("() => [...document.querySelectorAll('figure figcaption a[href^=\"#\"]')].filter(link => !document.getElementById(link.hash.slice(1))).map(link => link.hash)");
        lost.Should().BeEmpty();
        var tables = await opened.Ask<string[]>("() => [...document.querySelectorAll('figure')].map(figure => [...figure.querySelectorAll('figcaption a')].at(-1).getAttribute('href'))");
        tables.Should().HaveCountGreaterThan(20).And.AllSatisfy(table => File.ReadLines(Path.Combine(report.Folder, table)).Skip(1).Should().NotBeEmpty(table));
    }
}
