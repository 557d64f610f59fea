using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;

namespace ScreenStats.Browser.Tests;

/// <summary>The rules of WCAG 2.2 to level AA and the good practice that axe-core knows.</summary>
public sealed class AccessibilityTests(SampleReport report)
{
    [Theory]
    [InlineData("desk")]
    [InlineData("dark")]
    [InlineData("phone")]
    public async Task Axe_finds_nothing(string view)
    {
        await using var opened = await report.Open(View.Named(view));
        await opened.Unfold();
        var result = await opened.Page.RunAxe(new AxeRunOptions
        {
            RunOnly = RunOnlyOptions.Tags("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"),
            ResultTypes = [ResultType.Violations], // of the others one node each, which tells that a rule ran
        });
        result.Violations.Select(found => $"{found.Id}: {found.Help}, {found.Nodes.Length} times, first at {found.Nodes[0].Target}").Should().BeEmpty();
        result.Passes.Select(rule => rule.Id).Should().Contain(["document-title", "html-has-lang", "svg-img-alt", "scrollable-region-focusable", "heading-order", "target-size", "th-has-data-cells"], "the rules did run");
    }

    [Fact]
    public async Task Only_the_large_parts_of_the_page_are_landmarks()
    {
        await using var opened = await report.Open(View.Desk);
        var landmarks = await opened.Ask<int>("() => document.querySelectorAll('main, nav, header, footer, section[aria-labelledby], section[aria-label], [role=region]').length");
        landmarks.Should().BeInRange(10, 20, "a reader who jumps from landmark to landmark passes questions, not tables");
    }
}
