namespace ScreenStats.Browser.Tests;

/// <summary>
/// Contrast by the formula of WCAG 2.2 (relative luminance, success criteria 1.4.3 and 1.4.11), computed here from the colours that the
/// browser uses: axe-core cannot judge words in boxes that scroll or in pictures.
/// </summary>
public sealed class ContrastTests(SampleReport report)
{
    // Colours of the browser as [red, green, blue, alpha]; the formula; what lies behind an element.
    private const string Formula = """
        window.colour = text => { const parts = (text.match(/[\d.]+/g) ?? []).map(Number); return parts.length < 3 ? null : [parts[0], parts[1], parts[2], parts[3] ?? 1]; };
        window.over = (front, back) => front.slice(0, 3).map((value, index) => value * front[3] + back[index] * (1 - front[3])).concat(1);
        window.luminance = colour => { const [red, green, blue] = colour.slice(0, 3).map(value => { const part = value / 255; return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4; });
            return 0.2126 * red + 0.7152 * green + 0.0722 * blue; };
        window.contrast = (one, other) => { const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b); return (high + 0.05) / (low + 0.05); };
        window.behind = element => { let layers = []; for (let one = element; one; one = one.parentElement) { const ground = colour(getComputedStyle(one).backgroundColor); if (ground && ground[3] > 0) { layers.push(ground); if (ground[3] === 1) break; } }
            return layers.reverse().reduce((back, front) => over(front, back), colour(getComputedStyle(document.documentElement).colorScheme === 'dark' ? 'rgb(0, 0, 0)' : 'rgb(255, 255, 255)')); };
        """;

    [Theory]
    [InlineData("black on white", "rgb(0, 0, 0)", "rgb(255, 255, 255)", 21)] // WCAG 2.2, definition of contrast ratio: from 1 to 21
    [InlineData("alike", "rgb(9, 9, 9)", "rgb(9, 9, 9)", 1)]
    [InlineData("#767676 on white", "rgb(118, 118, 118)", "rgb(255, 255, 255)", 4.54)] // the well-known lightest grey that passes AA; from memory
    public async Task The_formula_gives_what_is_known(string name, string one, string other, double expected)
    {
        await using var opened = await report.Open(View.Desk);
        (await opened.Ask<double>($"() => {{ {Formula} return contrast(colour('{one}'), colour('{other}')); }}")).Should().BeApproximately(expected, 0.005, name);
    }

    [Theory]
    [InlineData("desk")]
    [InlineData("dark")]
    public async Task Words_stand_out_from_what_lies_behind_them(string view)
    {
        await using var opened = await report.Open(View.Named(view));
        await opened.Unfold();
        var seen = await opened.Ask<string[]>($$"""
            () => { {{Formula}}
                const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), pairs = new Map();
                while (walker.nextNode()) {
                    const element = walker.currentNode.parentElement;
                    if (!walker.currentNode.textContent.trim() || element.closest('svg, script, style')) continue;
                    const style = getComputedStyle(element), back = behind(element), ratio = contrast(over(colour(style.color), back), back);
                    const key = style.color + ' on ' + back.slice(0, 3).map(Math.round);
                    if (!pairs.has(key)) pairs.set(key, ratio.toFixed(2) + ' ' + key + ' ' + element.tagName + ' ' + walker.currentNode.textContent.trim().slice(0, 30));
                }
                return [...pairs.values()]; }
            """);
        seen.Should().HaveCountGreaterThan(4);
        seen.Where(pair => Ratio(pair) < 4.5).Should().BeEmpty();
    }

    [Theory]
    [InlineData("desk")]
    [InlineData("dark")]
    public async Task Words_in_pictures_stand_out_from_the_surface_they_stand_on(string view)
    {
        await using var opened = await report.Open(View.Named(view));
        await opened.Unfold();
        var seen = await opened.Ask<string[]>($$"""
            () => { {{Formula}}
                const pairs = new Map();
                for (const picture of document.querySelectorAll('figure svg')) {
                    const paper = colour(getComputedStyle(picture.querySelector('rect')).fill);
                    const surfaces = [...picture.querySelectorAll('rect, text')];
                    for (const text of picture.querySelectorAll('text')) {
                        const place = text.getBoundingClientRect(), x = (place.left + place.right) / 2, y = (place.top + place.bottom) / 2;
                        let back = paper;
                        for (const surface of surfaces) {
                            if (surface === text) break;
                            const style = getComputedStyle(surface), box = surface.getBoundingClientRect();
                            if (surface.tagName !== 'rect' || style.fill === 'none' || surface.closest('clipPath') || x < box.left || x > box.right || y < box.top || y > box.bottom) continue;
                            const fill = colour(style.fill); back = over([fill[0], fill[1], fill[2], parseFloat(style.fillOpacity)], back);
                        }
                        const fill = colour(getComputedStyle(text).fill), key = fill.slice(0, 3) + ' on ' + back.slice(0, 3).map(Math.round);
                        if (!pairs.has(key)) pairs.set(key, contrast(fill, back).toFixed(2) + ' ' + key + ' ' + picture.parentElement.id + ': ' + text.textContent);
                    }
                }
                return [...pairs.values()]; }
            """);
        seen.Should().HaveCountGreaterThan(3);
        seen.Where(pair => Ratio(pair) < 4.5).Should().BeEmpty();
    }

    [Theory]
    [InlineData("desk")]
    [InlineData("dark")]
    public async Task Marks_that_carry_meaning_stand_out_from_the_paper(string view)
    {
        await using var opened = await report.Open(View.Named(view));
        await opened.Unfold();
        var seen = await opened.Ask<string[]>($$"""
            () => { {{Formula}}
                const pairs = new Map();
                for (const picture of document.querySelectorAll('figure svg')) {
                    const first = picture.querySelector('rect'), paper = colour(getComputedStyle(first).fill), grid = getComputedStyle(document.documentElement).getPropertyValue('--grid');
                    for (const mark of picture.querySelectorAll('rect, path, circle, ellipse, line, polygon, polyline')) {
                        if (mark.closest('clipPath')) continue;
                        const style = getComputedStyle(mark);
                        for (const [what, opacity] of [['fill', style.fillOpacity], ['stroke', style.strokeOpacity]]) {
                            const used = colour(style[what]), asked = (mark.getAttribute(what) ?? '').toLowerCase();
                            // Lines behind the figures and bands around lines are aids, not what is said; paper is paper.
                            if (style[what] === 'none' || !used || parseFloat(opacity) < 0.9 || asked === '#e4e1d9' || asked === '#fcfbf8') continue;
                            const key = asked + ' as ' + used.slice(0, 3);
                            if (!pairs.has(key)) pairs.set(key, contrast(used, paper).toFixed(2) + ' ' + key + ' ' + picture.parentElement.id);
                        }
                    }
                }
                return [...pairs.values()]; }
            """);
        seen.Should().HaveCountGreaterThan(5);
        seen.Where(pair => Ratio(pair) < 3).Should().BeEmpty();
    }

    [Fact]
    public async Task In_the_dark_the_paper_of_pictures_is_dark_too()
    {
        await using var opened = await report.Open(View.Night);
        var papers = await opened.Ask<double[]>($$"""
            () => { {{Formula}} return [...document.querySelectorAll('figure svg')].map(picture => luminance(colour(getComputedStyle(picture.querySelector('rect')).fill))); }
            """);
        papers.Should().HaveCountGreaterThan(20).And.AllSatisfy(paper => paper.Should().BeLessThan(0.03));
        (await opened.Ask<double>($"() => {{ {Formula} return luminance(behind(document.body)); }}")).Should().BeLessThan(0.03);
    }

    [Fact]
    public async Task Nothing_moves_for_a_reader_who_prefers_so()
    {
        await using var opened = await report.Open(View.Desk with { ReducedMotion = true });
        var moving = await opened.Ask<string[]>("""
            () => [...document.querySelectorAll('*')].map(one => [one, getComputedStyle(one)])
                .filter(([, style]) => style.animationName !== 'none' || parseFloat(style.transitionDuration) > 0 || style.scrollBehavior === 'smooth').map(([one]) => one.tagName)
            """);
        moving.Should().BeEmpty();
    }

    private static double Ratio(string pair) => double.Parse(pair[..pair.IndexOf(' ', StringComparison.Ordinal)], System.Globalization.CultureInfo.InvariantCulture);
}
