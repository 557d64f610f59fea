namespace ScreenStats.Browser.Tests;

/// <summary>A page is never wider than its window; what is wider scrolls in a box of its own.</summary>
public sealed class WidthTests(SampleReport report)
{
    [Theory]
    [InlineData("desk")]
    [InlineData("phone")]
    [InlineData("narrowest")]
    public async Task The_page_never_scrolls_sideways(string view)
    {
        var window = View.Named(view);
        await using var opened = await report.Open(window);
        await opened.Unfold();
        var wide = await opened.Ask<string[]>("""
            () => [...document.querySelectorAll('body *')].filter(one => !one.closest('.scroll') || one.matches('.scroll')).filter(one => !one.closest('svg') && one.checkVisibility())
                .filter(one => one.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5 || one.getBoundingClientRect().left < -0.5)
                .filter(one => !one.matches('.skip')).map(one => one.tagName + ' ' + one.textContent.trim().slice(0, 60))
            """);
        wide.Should().BeEmpty();
        (await opened.Ask<int>("() => document.documentElement.scrollWidth")).Should().Be(window.Width);
        (await opened.Ask<int>("() => innerWidth")).Should().Be(window.Width, "a phone does not zoom out to fit what is too wide");
    }

    [Theory]
    [InlineData("desk")]
    [InlineData("phone")]
    public async Task Words_in_pictures_stay_large_enough_to_read(string view)
    {
        await using var opened = await report.Open(View.Named(view));
        await opened.Unfold();
        var smallest = await opened.Ask<double>("""
            () => Math.min(...[...document.querySelectorAll('figure svg text')].map(text => { const picture = text.ownerSVGElement;
                return parseFloat(text.getAttribute('font-size')) * picture.getBoundingClientRect().width / picture.viewBox.baseVal.width; }))
            """);
        smallest.Should().BeGreaterThan(9);
    }
}
