using System.Text;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ScreenStats.Evaluation;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Pages;
using ScreenStats.Reporting.Pages.Worth;

namespace ScreenStats.Reporting.Tests.Pages;

public class WorthPageTests
{
    private static readonly Findings Stated = WorthSketch.With(Programs.FaultyLot);
    private static readonly IElement StatedSection = Section(Stated);
    private static readonly Findings Unpriced = WorthSketch.With(Programs.FaultyLot, priced: false);

    [Fact]
    public void The_question_has_a_group_of_its_own_after_how_often()
    {
        var groups = AllPages.Of(Programs.FaultyLot);
        var at = groups.Select(group => group.Id).ToList().IndexOf("is-screening-worth-it");
        groups[at - 1].Id.Should().Be("how-often-to-screen");
        var page = groups[at].Pages.Should().ContainSingle().Subject;
        page.Id.Should().Be("worth");
        page.Caution.Should().Contain("A negative screen does not rule out infection").And.Contain("local rules").And.Contain("no reason to send a sick person back to work");
        page.CannotTell.Should().StartWith("Money alone never decides").And.Contain("ethics").And.Contain("Nothing is discounted");
        groups.Select(group => group.Id).Concat(groups.SelectMany(group => group.Pages).Select(one => one.Id)).Should().OnlyHaveUniqueItems("they are anchors");
    }

    [Fact]
    public void It_is_read_in_this_order()
    {
        Parts(StatedSection).Should().Equal(
            "figure-option-by-infections",
            "What it did", "figure-average-and-last-step", "table: What the program paid for, over the time of the data, in EUR of 2024", "table: What that comes to, money in EUR", "table: Spending for each infection averted, in EUR: judge a step by its own cost, not by the average",
            "What to choose", "figure-cost-against-effect", "table: Each way of screening against none, for 900 people over 91 days, money in EUR; net cost is what is spent less what illness and outbreaks averted would have cost, as far as these are priced", "table: The same without a confirmatory test (unconfirmed: every positive is away for the whole isolation time)",
            "When it turns", "table: Where twice-weekly just repays its cost against no screening, one figure at a time, the others at their centre",
            "table: Which way of screening gains most, by infections in a week among 1,000 people, the rest at the centre: where one no longer pays a less frequent one still may",
            "How sure it is", "figure-best-by-value", "figure-figures-that-matter", "table: Share of draws in which each option is the best, by what an effect is worth",
            "table: What it would be worth to know something exactly before choosing, in EUR; figures that are worth no more than chance makes of them stand in the file", "table: Each figure at both ends of its 95 % range, the others at their centre",
            "Whom to send away", "table: Gain in infected people sent away for each 1,000 screens, less those sent away for nothing, weighed by the chance from which one would be sent away; no one has 0",
            "What the rule of frequency would have done", "table: The rule of the program file, replayed: the positivity of a period decides on the next; \"could be another\" where its limits lead to different options",
            "The lists of the field", "table: The ten criteria for screening of Wilson and Jungner (1968), as far as the data can answer", "table: What a report of an economic evaluation has to state, by the 28 items of CHEERS 2022",
            "What one more figure would allow");
        StatedSection.QuerySelector("p.lead")!.TextContent.Should().Be("Weekly screening pays at the central figures.");
    }

    [Fact]
    public void Costs_stand_item_by_item_with_parts_said_to_be_parts_and_what_is_known_from_below_said_so()
    {
        Rows("What the program paid for").Should().Equal(
            "Screens | 6.35{5.08 to 7.94} | 59,000 | 374,650{299,720 to 468,313} | a fictional price list", "of which test devices | 3.20{2.56 to 4.00} | 59,000 | 188,800{151,040 to 236,000} | a fictional price list",
            "Confirmatory tests of positives | 58.0{46.4 to 72.5} | 321 | 18,618{14,894 to 23,273} | a fictional price list", "Days of isolation of cases found | undefined a | 448 | undefined b | ");
        Rows("What that comes to").Should().Contain("Cost in all | at least 390,000 | counted, over the time of the data")
            .And.Contain("Real positives, of those followed up | 40.0 % (32.0 to 50.0 %) | counted, over the time of the data").And.Contain("Spending for each infection averted | 9,600 (800 or more) | modelled as done, 900 people over 91 days");
        Rows("Spending for each").Should().HaveCount(3).And.Contain("monthly | 7,100{5,680 to 8,875} | ").And.Contain("daily | 14,300{11,440 to 17,875} | 42,000{33,600 to 52,500}");
    }

    [Fact]
    public void Options_say_their_standing_and_what_is_said_of_them()
    {
        Rows("Each way of screening against none").Select(row => (row.Split(" | ")[0], row.Split(" | ")[^1])).Should().Equal(
            ("none", "on the frontier"), ("monthly", "dominated by a mix of none and weekly"), ("weekly (best)", "on the frontier"), ("twice-weekly (planned)", "on the frontier"), ("daily", "on the frontier"));
        Rows("The same without").Select(row => row.Split(" | ")[0]).Should().Equal("monthly, unconfirmed", "weekly, unconfirmed");
    }

    [Fact]
    public void A_break_even_says_on_which_side_it_pays_and_where_the_figure_is_now()
    {
        Rows("Where twice-weekly").Should().Equal(
            "Infections in a week (per 1,000 people in a week) | above 3.65 | 4.79 (3.12 to 9.50) | pays, but the limits hold both", "Specificity of a screen | above 99.40 % | 99.88 % (99.84 to 99.910 %) | pays",
            "Cost of a screen | below 8.15 EUR | 9.35 EUR | does not pay", "Due screens that are taken | at every value | 80.0 % | pays",
            "People infected among those screened, below which half of the alarms are false | most alarms are real above 0.190 % | 0.220 % (0.120 to 0.600 %) | most are real, but the limits hold both");
    }

    [Fact]
    public void What_knowing_more_is_worth_leaves_out_what_is_no_more_than_chance()
    {
        Rows("What it would be worth to know").Select(row => row.Split(" | ")[0]).Should().Equal("Everything that is uncertain", "Infections per person-day", "Whether negatives are infected (1,200 of them, which cost 69,600)");
        Rows("Share of draws in which").Should().Contain("8,000 (stated) | 40.0 % | 60.0 % | weekly");
        Rows("Each figure at both ends").Should().Contain("Infections per person-day | 46 in 100,000 | -20,000 | 96 in 100,000 | 128,000 | none; twice-weekly").And.Contain("Operator's minutes for a screen | 1 minute | 67,000 | 6 minutes | 17,000 | twice-weekly");
        Rows("The rule of the program file").Should().Equal("2025-01-06 | 900 | 9 | 1.00 %{0.500 to 1.90 %} | monthly | weekly | 4.00 |  | ", "2025-02-03 | 900 | 9 | 1.00 %{0.500 to 1.90 %} | weekly | weekly (could be another) | 4.00 | 1 | monthly");
    }

    [Fact]
    public void Each_sentence_stands_where_its_figures_are()
    {
        string Before(string words) => StatedSection.QuerySelectorAll("p, h4").TakeWhile(part => !part.TextContent.StartsWith(words, StringComparison.Ordinal)).Last(part => part.LocalName == "h4").TextContent;
        Before("The program kept 241 infectious days").Should().Be("What it did");
        Before("The rule asks each person for 12.0").Should().Be("What the rule of frequency would have done");
        Before("The less likely an infection has to be").Should().Be("Whom to send away");
        Before("Within its limits one figure alone may turn the verdict: infections in a week").Should().Be("When it turns");
        StatedSection.TextContent.Should().Contain("where that chance is 0.100 % to 0.100 % (of those looked at, 0.100 % to 20.0 %); by its limits that is sure up to 0.100 %");
    }

    [Fact]
    public void That_no_screening_is_best_most_often_is_explained_where_another_option_is_to_be_chosen()
    {
        Evaluation.Worth.WorthFindings WithNone(double share) => Stated.Worth with { Options = [.. Stated.Worth.Options.Select(option => option.IsNone ? option with { BestShare = share } : option)] };
        var most = Stated.Worth.Options.Where(option => !option.IsNone).Max(option => option.BestShare)!.Value;
        WorthRemarks.Choice(WithNone(most + 0.01)).Text.Should().StartWith("No screening is the best in ").And.Contain("not by how often an option is the best");
        WorthRemarks.Choice(WithNone(most)).Text.Should().BeEmpty();
        WorthRemarks.Choice(WithNone(most + 0.01) with { Options = [.. WithNone(most + 0.01).Options.Select(option => option with { IsBest = option.IsNone })] }).Text.Should().BeEmpty("then it is to be chosen");
    }

    [Fact]
    public void Which_figures_may_turn_the_verdict_is_said_only_where_limits_are_known()
    {
        WorthRemarks.Turns(Stated.Worth with { Turns = [.. Stated.Worth.Turns.Where(turn => turn.Figure == "specificity")], Swings = [] }).Text.Should().Be("No figure alone turns the verdict within its limits.");
        WorthRemarks.Turns(Stated.Worth with { Turns = [.. Stated.Worth.Turns.Where(turn => turn.Lower is null)] }).Text.Should().BeEmpty();
    }

    [Fact]
    public void What_is_missing_is_a_list() =>
        StatedSection.QuerySelectorAll("li").Select(item => item.TextContent).Should().Contain("isolationDay: what cases found cost");

    [Fact]
    public void Without_costs_the_page_says_what_can_be_said_and_no_heading_stands_alone()
    {
        var section = Section(Unpriced);
        Parts(section).Where(part => !part.StartsWith("figure", StringComparison.Ordinal)).Take(6).Should().Equal(
            "What it did", "table: What a price would be multiplied by, over the time of the data", "table: What that comes to", "When it turns",
            "table: From which share infected on more alarms are real than false, beside that share as it is", "Whom to send away");
        section.QuerySelectorAll("figure").Should().BeEmpty();
        section.QuerySelectorAll("table")[0].QuerySelectorAll("thead th").Select(cell => cell.TextContent).Should().Equal("Item", "Number");
        section.TextContent.Should().Contain("whose costs count is not stated").And.NotContain("NaN").And.NotContain("undefined");
        foreach (var heading in section.QuerySelectorAll("h4")) heading.NextElementSibling!.LocalName.Should().NotBe("h4");
    }

    [Fact]
    public void A_real_program_without_costs_has_the_page_and_no_empty_part()
    {
        var section = Section(Programs.FaultyLot);
        section.ParentElement!.QuerySelector(".answer")!.TextContent.Should().Contain("cannot be said");
        section.QuerySelector("p.lead").Should().BeNull("the answer above it has said so");
        section.TextContent.Should().NotContain("NaN");
        foreach (var heading in section.QuerySelectorAll("h4")) (heading.NextElementSibling!.LocalName == "h4" || heading.NextElementSibling.TextContent.StartsWith("What this cannot", StringComparison.Ordinal)).Should().BeFalse(heading.TextContent);
        foreach (var item in Programs.FaultyLot.Worth.Missing) section.QuerySelectorAll("li").Select(one => one.TextContent).Should().Contain(item);
    }

    [Fact]
    public void Pictures_say_what_to_see()
    {
        var charts = Charts(Stated);
        charts.Select(chart => chart.Id).Should().Equal("option-by-infections", "average-and-last-step", "cost-against-effect", "best-by-value", "figures-that-matter");
        charts[0].Caption.Text.Should().Contain("All days of the data: 4.79 (limits 3.12 to 9.50), where weekly gains most; at the limits weekly and daily, unconfirmed.");
        charts[0].Description.Should().Contain("no screening up to 2.40; weekly from 2.40 to 5.10; daily, unconfirmed from 5.10");
        charts[1].Caption.Text.Should().Contain("The dearest step, to daily, costs 42,000 EUR for each infection averted that it adds, where the average up to it is 14,300.");
        charts[1].Description.Should().Contain("monthly: on average 7,100 (limits 5,680 to 8,875), of the last step not known");
        charts = charts[2..];
        charts[0].Caption.Text.Should().Contain("The first step along the frontier, to weekly, costs 5,000 EUR for each infection averted; the last, to daily, 25,000.").And.Contain("none of them on the frontier, stand in the table");
        charts[0].Description.Should().Contain("weekly, best, on the frontier: 75,000 (limits 60,000 to 93,750) for 15.0 (limits 12.0 to 18.8)").And.NotContain("unconfirmed");
        charts[0].Marks.OfType<LabelMark>().Select(label => label.Text).Should().Contain("weekly, best").And.Contain("twice-weekly, planned").And.Contain("worth 8,000 each");
        charts[1].Caption.Text.Should().Contain("At the stated 8,000 EUR: weekly in 60.0 %, none in 40.0 %.");
        charts[2].Caption.Text.Should().Contain("Net benefit of twice-weekly against no screening");
        charts[2].Marks.OfType<LabelMark>().Select(label => label.Text).Should().Contain("lower end: 46 in 100,000: none").And.Contain("2.60 EUR: twice-weekly");
        Charts(Stated).Should().OnlyContain(chart => chart.Title.Length > 0 && chart.Description.Length > 80 && chart.TableId.StartsWith("worth-", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_stated_value_no_picture_and_no_table_speaks_of_one()
    {
        var findings = WorthSketch.With(Programs.FaultyLot, value: null);
        Charts(findings).Select(chart => chart.Id).Should().Equal("average-and-last-step", "cost-against-effect", "best-by-value");
        Parts(Section(findings)).First().Should().Be("figure-cost-against-effect", "without a ladder cost against effect leads");
        Charts(findings).Should().OnlyContain(chart => !chart.Caption.Text.Contains("stated", StringComparison.Ordinal) && !chart.Marks.OfType<LineMark>().Any(line => line.Dashed));
        Section(findings).QuerySelectorAll("thead th").Select(cell => cell.TextContent).Should().NotContain("Net benefit").And.NotContain("Best in draws");
    }

    [Fact]
    public void Page_and_pictures_are_the_same_under_every_culture()
    {
        Cultures.Names.Select(culture => Cultures.In(culture, () => Section(WorthSketch.With(Programs.FaultyLot)).OuterHtml + string.Concat(Charts(WorthSketch.With(Programs.FaultyLot)).Select(ChartRenderer.Svg)))).Distinct().Should().ContainSingle();
    }

    [Fact]
    public void What_flagged_lots_do_to_the_rule_and_to_the_curve_stands_beside_them()
    {
        Rows("The rule of the program file").Should().Contain(row => row.StartsWith("2025-02-03", StringComparison.Ordinal) && row.EndsWith(" | 1 | monthly", StringComparison.Ordinal));
        Rows("Gain in infected people").Should().Contain(row => row.StartsWith("20.0 %", StringComparison.Ordinal) && row.EndsWith(" | 0.500{0.400 to 0.625} | by the screen", StringComparison.Ordinal));
        StatedSection.TextContent.Should().Contain("Without the runs of flagged lots it does so at 20.0 %.");
    }

    [Fact]
    public void Where_small_counts_are_hidden_there_is_no_picture()
    {
        var settings = Stated.Settings;
        Charts(Evaluation.Disclosure.DisclosureControl.Apply(Stated with { Settings = settings with { Report = settings.Report with { SuppressBelow = 5 } } })).Should().BeEmpty();
    }

    private static string[] Parts(IElement section) => [.. section.QuerySelectorAll("figure, h4, table").Select(part => part.LocalName switch
    {
        "figure" => part.Id!,
        "h4" => part.TextContent,
        _ => "table: " + part.QuerySelector("caption")!.TextContent,
    })];

    private static string[] Rows(string caption) =>
        [.. StatedSection.QuerySelectorAll("table").Single(table => table.QuerySelector("caption")!.TextContent.StartsWith(caption, StringComparison.Ordinal)).QuerySelectorAll("tbody tr")
            .Select(row => string.Join(" | ", row.Children.Select(cell => cell.QuerySelector("small") is { } limits ? $"{cell.FirstChild!.TextContent}{{{limits.TextContent}}}" : cell.TextContent)))];

    private static IElement Section(Findings findings) =>
        new HtmlParser().ParseDocument(Encoding.UTF8.GetString(Report.Files(findings, new ReportInputs())["report.html"])).QuerySelector("section:has(> #worth)")!;

    private static Chart[] Charts(Findings findings) => [.. AllPages.Of(findings).Single(group => group.Id == "is-screening-worth-it").Pages.SelectMany(page => page.Charts)];
}
