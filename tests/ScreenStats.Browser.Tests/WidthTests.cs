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

    [Fact]
    public async Task The_name_of_a_row_stays_in_sight_while_its_figures_scroll()
    {
        await using var opened = await report.Open(View.SmallPhone);
        await opened.Unfold();
        var lost = await opened.Ask<string[]>("""
            () => [...document.querySelectorAll('.scroll')].filter(box => box.scrollWidth > box.clientWidth + 40).filter(box => { box.scrollLeft = 40;
                return [...box.querySelectorAll('tbody th, thead th:first-child')].some(name => name.checkVisibility() && Math.abs(name.getBoundingClientRect().left - box.getBoundingClientRect().left) > 1); }).map(box => box.getAttribute('aria-label'))
            """);
        lost.Should().BeEmpty();
        (await opened.Ask<int>("() => [...document.querySelectorAll('.scroll')].filter(box => box.scrollLeft > 0).length")).Should().BeGreaterThan(20);
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
