using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;

namespace ScreenStats.Browser.Tests;

/// <summary>The rules of WCAG 2.2 to level AA and the good practice that axe-core knows.</summary>
public sealed class AccessibilityTests(SampleReport report)
{
    /// <summary>Every rule that a page must pass, without some.</summary>
    internal static AxeRunOptions Every(params string[] without) => new()
    {
        Rules = without.ToDictionary(rule => rule, _ => new RuleOptions { Enabled = false }),
        RunOnly = RunOnlyOptions.Tags("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"),
        ResultTypes = [ResultType.Violations], // of the others one node each, which tells that a rule ran
    };

    /// <summary>What a run found, in a line each.</summary>
    internal static IEnumerable<string> Found(AxeResult result) => result.Violations.Select(found => $"{found.Id}: {found.Help}, {found.Nodes.Length} times, first at {found.Nodes[0].Target}");

    // The rules that colours alone decide.
    private static readonly string[] OfColours = ["color-contrast", "link-in-text-block"];

    // The rules take more than a minute for a page of 28,000 elements: views that differ in layout alone, or in colours alone, are asked what that can change.
    [Theory]
    [InlineData("desk", true)]
    [InlineData("phone", false)]
    public async Task Axe_finds_nothing(string view, bool colours)
    {
        await using var opened = await report.Open(View.Named(view));
        await opened.Unfold();
        var result = await opened.Page.RunAxe(colours ? Every() : Every(OfColours));
        Found(result).Should().BeEmpty();
        result.Passes.Select(rule => rule.Id).Should().Contain(["document-title", "html-has-lang", "svg-img-alt", "scrollable-region-focusable", "heading-order", "target-size", "th-has-data-cells"], "the rules did run");
        if (colours) result.Passes.Select(rule => rule.Id).Should().Contain(OfColours);
    }

    [Fact]
    public async Task Axe_finds_nothing_in_the_colours_of_the_dark()
    {
        await using var opened = await report.Open(View.Named("dark"));
        await opened.Unfold();
        var result = await opened.Page.RunAxe(new AxeRunOptions { RunOnly = RunOnlyOptions.Rules(OfColours), ResultTypes = [ResultType.Violations] });
        Found(result).Should().BeEmpty();
        result.Passes.Select(rule => rule.Id).Should().BeEquivalentTo(OfColours);
    }

    [Fact]
    public async Task Only_the_large_parts_of_the_page_are_landmarks()
    {
        await using var opened = await report.Open(View.Desk);
        var landmarks = await opened.Ask<int>("() => document.querySelectorAll('main, nav, header, footer, section[aria-labelledby], section[aria-label], [role=region]').length");
        landmarks.Should().BeInRange(10, 20, "a reader who jumps from landmark to landmark passes questions, not tables");
    }
}
