using System.Xml.Linq;
using CsCheck;
using ScreenStats.Reporting.Html;

namespace ScreenStats.Reporting.Tests.Html;

public class MarkupTests
{
    [Fact]
    public void The_five_characters_of_markup_are_escaped() => Markup.Escape("<a href=\"x\">&'").Should().Be("&lt;a href=&quot;x&quot;&gt;&amp;&#39;");

    [Fact]
    public void Characters_that_turn_the_direction_of_writing_are_shown_as_replaced() => Markup.Escape("a\u202Eb\u2066c").Should().Be("a\uFFFDb\uFFFDc");

    [Fact]
    public void Any_text_stays_text() => Gen.String.Sample(text =>
    {
        var page = new Markup().Element("p", text, ("title", text)).ToString();
        var element = XElement.Parse(page);
        element.HasElements.Should().BeFalse();
        element.Attributes().Should().ContainSingle();
        element.Attribute("title")!.Value.Should().Be(element.Value);
    });

    [Fact]
    public void An_element_left_open_is_a_defect() =>
        FluentActions.Invoking(() => new Markup().Open("p").ToString()).Should().Throw<InvalidOperationException>();
}
