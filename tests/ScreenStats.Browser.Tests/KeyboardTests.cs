namespace ScreenStats.Browser.Tests;

/// <summary>The page from the keyboard alone.</summary>
public sealed class KeyboardTests(SampleReport report)
{
    private const string Reachable = "a[href], summary, button:enabled:not([tabindex='-1']), input, select, textarea, [tabindex='0']";

    [Fact]
    public async Task Tab_walks_through_everything_in_the_order_of_the_page_and_shows_where_it_is()
    {
        await using var opened = await report.Open(View.Desk);
        await opened.Page.EvaluateAsync("""
            reachable => {
                window.stops = [...document.querySelectorAll(reachable)].filter(one => one.checkVisibility());
                window.walked = []; window.unseen = [];
                document.addEventListener('focusin', event => {
                    const one = event.target, style = getComputedStyle(one), place = one.getBoundingClientRect();
                    walked.push(stops.indexOf(one));
                    if (style.outlineStyle === 'none' || parseFloat(style.outlineWidth) < 2 || place.width < 1 || place.height < 1)
                        unseen.push(one.tagName + ' ' + one.textContent.trim().slice(0, 40));
                });
            }
            """, Reachable);
        var count = await opened.Ask<int>("() => stops.length");
        count.Should().BeGreaterThan(100);
        for (var stop = 0; stop < count; stop++) await opened.Page.Keyboard.PressAsync("Tab");
        (await opened.Ask<int[]>("() => walked")).Should().Equal(Enumerable.Range(0, count));
        (await opened.Ask<string[]>("() => unseen")).Should().BeEmpty("a reader sees where the focus is");
    }

    [Fact]
    public async Task A_folded_part_opens_and_closes_by_a_key()
    {
        await using var opened = await report.Open(View.Desk);
        var first = opened.Page.Locator("summary").First;
        await first.FocusAsync();
        await opened.Page.Keyboard.PressAsync("Enter");
        (await opened.Ask<bool>("() => document.querySelector('details').open")).Should().BeTrue();
        await opened.Page.Keyboard.PressAsync("Space");
        (await opened.Ask<bool>("() => document.querySelector('details').open")).Should().BeFalse();
    }

    [Fact]
    public async Task A_wide_table_scrolls_by_the_arrow_keys()
    {
        await using var opened = await report.Open(View.SmallPhone with { Phone = false });
        var moved = await opened.Ask<bool>("() => { window.box = [...document.querySelectorAll('.scroll')].find(one => one.checkVisibility() && one.scrollWidth > one.clientWidth + 100); box.focus(); return document.activeElement === box; }");
        moved.Should().BeTrue();
        await opened.Page.Keyboard.PressAsync("ArrowRight");
        await opened.Page.WaitForFunctionAsync("() => box.scrollLeft > 0");
    }
}
