using System.Text;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Pages;
using ScreenStats.Reporting.Pages.Cadence;

namespace ScreenStats.Reporting.Tests.Pages;

public class CadencePageTests
{
    private static readonly Findings Stated = CadenceSketch.With(Programs.FaultyLot);

    [Fact]
    public void The_question_has_a_group_of_its_own_after_whether_it_is_getting_better()
    {
        var groups = AllPages.Of(Programs.FaultyLot);
        var at = groups.Select(group => group.Id).ToList().IndexOf("how-often-to-screen");
        groups[at - 1].Id.Should().Be("is-it-getting-better");
        groups[at].Pages[0].Caution.Should().Contain("A negative screen does not rule out infection").And.Contain("local rules");
    }

    [Fact]
    public void It_is_read_in_this_order()
    {
        var section = Section(Stated);
        var parts = section.QuerySelectorAll("p.lead, figure, h4, table, details > p").Select(part => part.LocalName switch
        {
            "figure" => part.Id,
            "h4" => part.TextContent,
            "table" => "table: " + part.QuerySelector("caption")!.TextContent,
            _ => "",
        }).Where(part => part!.Length > 0).ToArray();
        parts.Should().Equal(
            "figure-gain-against-burden",
            "Every way of screening", "table: What it gives to 900 people over 91 days, against no screening", "table: What it asks of 900 people over 91 days",
            "What each step adds", "table: Infectious days removed by each step to the next option",
            "How sure the choice is", "table: How often each option is the one to choose, of all draws (those in 1 of 100 or more)",
            "What it rests on", "table: Every figure that the answer rests on",
            "What matters most", "figure-assumptions-that-matter", "table: Each assumption at both ends of its 95 % range, the others at their centre",
            "What the program really did", "figure-days-between-screens", "table: What was planned, and what was done",
            "How much infection there is", "What one more figure would allow");
        section.TextContent.Should().Contain("It is not the share of people infected at one time (prevalence)");
    }

    [Fact]
    public void Each_option_is_a_row_and_each_figure_has_its_limits_below_it()
    {
        var (gives, asks) = (Section(Stated).QuerySelectorAll("table")[0], Section(Stated).QuerySelectorAll("table")[1]);
        foreach (var table in new[] { gives, asks })
        {
            table.QuerySelectorAll("tbody th").Select(cell => cell.TextContent).Should().Equal(
                "none", "monthly", "fortnightly", "weekly (chosen)", "twice-weekly (planned)", "every-second-day", "daily", "as done, gaps as they were");
        }

        gives.QuerySelectorAll("thead th").Select(cell => cell.TextContent).Should().Equal(
            "Way of screening", "Infections found", "Infectious days removed", "Share of infectious days", "Caught before they spread", "Infections averted");
        asks.QuerySelectorAll("thead th").Select(cell => cell.TextContent).Should().Equal(
            "Way of screening", "Screens", "False alarms", "A person's chance of a false alarm", "Working days lost", "Positives that are infected");
        var weekly = gives.QuerySelectorAll("tbody tr")[3].Children;
        weekly[2].InnerHtml.Should().Be("152<small>122 to 190</small>");
        weekly[3].InnerHtml.Should().Be("38.0 %<small>30.4 to 45.6 %</small>");
        gives.QuerySelectorAll("tbody tr")[0].Children[2].InnerHtml.Should().Be("0", "nothing without limits");
    }

    [Fact]
    public void Where_nothing_is_stated_of_infections_brought_in_both_bounds_stand_on_the_page()
    {
        var captions = Section(CadenceSketch.With(Programs.FaultyLot, CadenceBasis.AllBroughtIn)).QuerySelectorAll("caption").Select(caption => caption.TextContent).ToArray();
        captions[0].Should().EndWith("were all infections brought in");
        captions[2].Should().StartWith("What depends on it").And.EndWith("were all infections caught inside");
    }

    [Fact]
    public void Without_a_course_the_page_says_what_can_be_said_and_what_one_more_figure_would_allow()
    {
        var section = Section(Programs.FaultyLot);
        section.QuerySelectorAll("figure").Select(figure => figure.Id).Should().NotContain("figure-gain-against-burden").And.NotContain("figure-assumptions-that-matter");
        section.QuerySelectorAll("thead th").Select(cell => cell.TextContent).Should().Contain("Screens").And.Contain("A person's chance of a false alarm").And.NotContain("Infections averted");
        section.TextContent.Should().Contain("A prevalence is no substitute");
        section.TextContent.Should().NotContain("NaN");
        foreach (var item in Programs.FaultyLot.Cadence.Missing) section.QuerySelectorAll("li").Select(one => one.TextContent).Should().Contain(item);
    }

    [Fact]
    public void Assumptions_are_read_with_their_units()
    {
        var table = Section(Stated).QuerySelectorAll("table").Single(one => one.QuerySelector("caption")!.TextContent == "Every figure that the answer rests on");
        table.QuerySelectorAll("tbody tr").Select(row => string.Join(" | ", row.Children.Select(cell => cell.TextContent))).Should().Equal(
            "Sensitivity of one screen | 80.0 % | 74.0 to 85.0 % | taken from your data | a fictional source",
            "Infections per person-day | 45 per 100,000 person-days | 30 to 70 | taken from your data | a fictional source",
            "Days from a positive screen to staying away | 0.2 days | 0.1 to 0.5 | stated | a fictional source",
            "People screened | 900 people |  | stated | a fictional source",
            "Infections that one case causes inside without screening | not known |  | not known | both bounds are given");
    }

    [Fact]
    public void The_picture_says_the_first_step_and_the_last_and_where_the_choice_would_change()
    {
        var charts = Charts(Stated);
        charts.Select(chart => chart.Id).Should().Equal("gain-against-burden", "assumptions-that-matter", "days-between-screens");
        charts[0].Caption.Text.Should().Contain("From none to monthly it is 11 points for 1 screen more of each person in 30 days; from every-second-day to daily it is 8 points for 15 screens more of each person in 30 days.");
        charts[0].Description.Should().Contain("weekly, chosen: 38.0 % (limits 30.4 % to 45.6 %) for 4.3 screens");
        charts[1].Marks.OfType<LabelMark>().Select(label => label.Text).Should().Contain("lower end: 30 in 100,000: monthly").And.Contain("upper end: 70 in 100,000");
        charts[1].Caption.Text.Should().Contain("its name stands beside the value");
        charts[2].Caption.Text.Should().Contain("screens that were due and not taken");
    }

    [Fact]
    public void Page_and_pictures_are_the_same_under_every_culture()
    {
        Cultures.Names.Select(culture => Cultures.In(culture, () => Section(CadenceSketch.With(Programs.FaultyLot)).OuterHtml + string.Concat(Charts(CadenceSketch.With(Programs.FaultyLot)).Select(ChartRenderer.Svg)))).Distinct().Should().ContainSingle();
    }

    [Fact]
    public void Where_small_counts_are_hidden_there_is_no_picture()
    {
        var settings = Programs.FaultyLot.Settings;
        var hidden = Evaluation.Disclosure.DisclosureControl.Apply(Programs.FaultyLot with { Settings = settings with { Report = settings.Report with { SuppressBelow = 5 } } });
        Charts(hidden).Should().BeEmpty();
    }

    [Theory]
    [InlineData(0, "share", "0 %")]
    [InlineData(0.00045, "per person-day", "45 per 100,000 person-days")]
    [InlineData(1, "days since infection", "1 day")]
    [InlineData(12.5, "days since infection", "12.5 days")]
    [InlineData(1234.5, "screens", "1,235 screens")]
    [InlineData(0.25, "correlation", "0.25")]
    [InlineData(0.0000123, "negative binomial k", "1.23E-5")]
    public void A_figure_has_its_unit(double value, string unit, string words)
    {
        foreach (var culture in Cultures.Names) Cultures.In(culture, () => CadenceWording.Value(value, unit)).Should().Be(words);
    }

    private static IElement Section(Findings findings) =>
        new HtmlParser().ParseDocument(Encoding.UTF8.GetString(Report.Files(findings, new ReportInputs())["report.html"])).QuerySelector("section:has(> #cadence)")!;

    private static Chart[] Charts(Findings findings) => [.. AllPages.Of(findings).Single(group => group.Id == "how-often-to-screen").Pages.SelectMany(page => page.Charts)];
}
