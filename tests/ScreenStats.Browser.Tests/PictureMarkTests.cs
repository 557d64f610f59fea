namespace ScreenStats.Browser.Tests;

/// <summary>A mark frames the words of a picture that name the site or lot, and no other words that read the same.</summary>
public sealed class PictureMarkTests(SampleReport report)
{
    // The first number of an axis reads as a site is called, and the name of a lot as the same.
    private const string SameWords = """
        () => { const site = document.querySelector('svg text[data-site]').dataset.site;
            document.querySelector('svg text:not([data-site])').textContent = site;
            document.querySelector('svg text[data-lot]').dataset.lot = site;
            return site; }
        """;

    [Fact]
    public async Task Words_that_only_read_the_same_are_not_framed()
    {
        await using var opened = await report.Open(View.Desk);
        var site = await opened.Ask<string>(SameWords);
        await opened.Page.GetByLabel("Mark a site or lot everywhere").SelectOptionAsync(new Microsoft.Playwright.SelectOptionValue { Label = site });

        var framed = await opened.Ask<string[]>("() => [...document.querySelectorAll('svg .marked')].map(box => box.nextElementSibling.dataset.site ?? 'another')");
        framed.Should().NotBeEmpty().And.OnlyContain(name => name == site);
        framed.Should().HaveCount(await opened.Ask<int>("() => [...document.querySelectorAll('figure svg text[data-site]')].filter(text => text.dataset.site === document.querySelector('#mark').selectedOptions[0].label).length"));
        opened.Complaints.Should().BeEmpty();
    }
}
