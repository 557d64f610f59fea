using System.Text;
using AngleSharp.Html.Parser;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Pages;
using ScreenStats.Reporting.Pages.Trends;

namespace ScreenStats.Reporting.Tests.Pages;

public class SideBySidePageTests
{
    private static readonly Findings Many = Evaluator.Evaluate(ManySites().Tally(), new ProgramSettings());

    [Fact]
    public void Whether_they_differ_and_whether_it_is_getting_better_are_questions_of_their_own()
    {
        var groups = AllPages.Of(Programs.FaultyLot);
        groups.Select(group => (group.Id, group.Pages[0].Id, group.Pages.Length)).Should().ContainInConsecutiveOrder(("do-they-differ", "compared", 1), ("is-it-getting-better", "trend", 1));
        groups.Single(group => group.Id == "do-they-differ").Pages.Should().AllSatisfy(page => page.Tables.Should().NotBeEmpty());
    }

    [Fact]
    public void At_most_six_pictures_and_each_names_a_table_and_can_be_read_aloud()
    {
        foreach (var (name, findings) in Programs.All)
        {
            var charts = Charts(findings);
            charts.Length.Should().BeLessThanOrEqualTo(6, name);
            foreach (var chart in charts) chart.Description.Should().MatchRegex(chart.Id.StartsWith("trend", StringComparison.Ordinal) ? " periods from \\d{4}-" : " with limits");
        }
    }

    [Fact]
    public void The_funnel_says_above_and_below_of_as_many_levels_as_the_table()
    {
        var summary = Many.Comparison.Summaries.First(one => one is { Leads: true, Measure: ComparisonMeasure.Positivity });
        var rows = Many.Comparison.RowsOf(summary).ToList();
        var funnel = Charts(Many).Single(chart => chart.Id == "funnel-positivity");
        int Count(ComparisonStanding standing) => rows.Count(row => row.Place.Standing == standing);
        funnel.Caption.Text.Should().StartWith(string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{Count(ComparisonStanding.Above)} of {rows.Count} sites lie above the limits for their size and {Count(ComparisonStanding.Below)} below."));
        rows.Should().Contain(row => row.Place.Standing == ComparisonStanding.Above);
    }

    [Fact]
    public void Of_many_sites_the_page_shows_those_that_stand_out_first_and_says_that_the_file_has_all()
    {
        var view = AllPages.Of(Many).SelectMany(group => group.Pages).Single(page => page.Id == "compared").Tables[0];
        view.Table.RowCount.Should().Be(400);
        view.Caption.Should().Contain("those that stand out and the highest first");
        view.Table.CellAt(0, view.IndexOf("level")).AsText.Should().Be("S007", "its rate is four times the others'");
        var page = Encoding.UTF8.GetString(Report.Files(Many, new ReportInputs())["report.html"]);
        page.Should().Contain("Printed are the first 40 of 400 rows.");
        page.Length.Should().BeLessThan(3_000_000);
    }

    [Fact]
    public void Operators_are_compared_in_the_files_and_named_neither_on_the_page_nor_in_a_picture()
    {
        var sketch = new ProgramSketch();
        for (var index = 0; index < 12; index++)
            sketch.Runs(Outcome.Negative, 400, person: $"op-{index:00}x", day: index).Runs(Outcome.Positive, index == 3 ? 60 : 6, FollowUp.Confirmed, person: $"op-{index:00}x", day: index);
        var findings = Evaluator.Evaluate(sketch.Tally(), new ProgramSettings { Report = new() { CompareBy = CompareBy.Operator } });
        var page = AllPages.Of(findings).SelectMany(group => group.Pages).Single(one => one.Id == "compared");

        page.Heading.Should().Be("Operators compared");
        page.Caution.Should().Contain("for training, not for discipline");
        page.Charts.SelectMany(chart => chart.Marks.OfType<LabelMark>().Select(label => label.Text).Append(chart.Description)).Should().NotContain(text => text.Contains("op-", StringComparison.Ordinal));
        page.Tables.Select(view => view.Table.Id).Should().NotContain(["comparison", "comparison-pairs"]);
    }

    [Fact]
    public void Where_small_counts_are_hidden_there_is_no_picture_and_no_order_that_would_tell()
    {
        var example = ExamplePrograms.All[0];
        var findings = Disclosed(example.Tally, example.Settings);
        Charts(findings).Should().BeEmpty();
        foreach (var view in AllPages.Of(findings).Single(group => group.Id == "do-they-differ").Pages[0].Tables.Where(view => view.Table.Id == "comparison"))
        {
            var names = Enumerable.Range(0, view.Table.RowCount).Select(row => view.Table.CellAt(row, view.IndexOf("level")).AsText).ToArray();
            names.Should().Equal(names.Order(StringComparer.Ordinal));
        }
    }

    [Fact]
    public void Long_tables_are_folded_under_their_caption()
    {
        var page = new HtmlParser().ParseDocument(Encoding.UTF8.GetString(Report.Files(Programs.FaultyLot, new ReportInputs())["report.html"]));
        var folded = page.QuerySelectorAll("section:has(> #trend) details").Where(one => one.QuerySelector("table") is not null).ToArray();
        folded.Should().NotBeEmpty().And.AllSatisfy(one => one.QuerySelector("summary")!.TextContent.Should().Be(one.QuerySelector("caption")!.TextContent));
        page.QuerySelectorAll("section:has(> #trend) > p, section:has(> #is-it-getting-better) > .answer > .said").Length.Should().BeGreaterThan(3, "each measure has a paragraph of its own");
    }

    [Theory]
    [InlineData(0.0612, "+6.1")]
    [InlineData(-0.2034, "\u221220")]
    [InlineData(0.00001, "0.0")]
    [InlineData(12.5, "+1,250")]
    public void Growth_has_its_sign_and_no_more_digits_than_it_is_worth(double growth, string words)
    {
        foreach (var culture in Cultures.Names) Cultures.In(culture, () => TrendWording.Signed(growth)).Should().Be(words);
    }

    private static Chart[] Charts(Findings findings) => [.. AllPages.Of(findings).Where(group => group.Id is "do-they-differ" or "is-it-getting-better").SelectMany(group => group.Pages).SelectMany(page => page.Charts)];

    private static Findings Disclosed(Tally tally, ProgramSettings settings) =>
        Evaluation.Disclosure.DisclosureControl.Apply(Evaluator.Evaluate(tally, settings with { Report = settings.Report with { SuppressBelow = 5 } }));

    private static ProgramSketch ManySites()
    {
        var sketch = new ProgramSketch();
        for (var index = 0; index < 400; index++)
        {
            var size = 120 + (index * 37 % 900);
            sketch.Runs(Outcome.Negative, size, site: $"S{index:000}", day: index % 28).Runs(Outcome.Positive, (index == 7 ? 40 : 1 + (size / 100)), FollowUp.Confirmed, site: $"S{index:000}", day: index % 28);
        }

        return sketch;
    }
}
