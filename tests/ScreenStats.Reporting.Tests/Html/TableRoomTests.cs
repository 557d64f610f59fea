using System.Collections.Immutable;
using System.Globalization;
using AngleSharp.Html.Parser;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Html;
using ScreenStats.Reporting.Html.Tables;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Tests.Html;

public class TableRoomTests
{
    [Fact]
    public void A_page_has_all_rows_as_long_as_there_is_room()
    {
        var groups = Groups(1200, 30, 1);
        TableRoom.Of(groups).Should().Equal(groups);
        Views(groups).Select(view => view.ShownRows).Should().Equal(1200, 30, 1);
    }

    [Fact]
    public void Where_there_is_not_the_longest_tables_are_cut_to_one_round_number()
    {
        var shown = Views(TableRoom.Of(Groups(60_000, 5_000, 300, 30))).Select(view => view.ShownRows).ToArray();
        shown[2..].Should().Equal(300, 30);
        shown[1].Should().Be(5_000);
        shown[0].Should().BeInRange(10_001, 59_999);
        (shown[0] % 1000).Should().Be(0);
    }

    [Fact]
    public void Folded_tables_have_a_quarter_of_the_room()
    {
        var groups = Groups([.. Enumerable.Repeat(9_000, 12)]);
        var folded = groups[0] with { Pages = [.. groups[0].Pages.Select(page => page with { Tables = [page.Tables[0], page.Tables[0] with { Folded = true }] })] };
        var shown = Views(TableRoom.Of([folded])).Select(view => (view.Folded, view.ShownRows)).Distinct().ToArray();
        shown.Should().HaveCount(2);
        shown[0].ShownRows.Should().BeLessThan(9_000);
        shown[1].Should().Be((true, shown[0].ShownRows / 4));
    }

    [Fact]
    public void However_many_rows_there_are_what_is_written_stays_within_the_room_and_says_what_is_left_out()
    {
        var groups = TableRoom.Of(Groups([.. Enumerable.Repeat(9_000, 25)]));
        var page = new Markup();
        foreach (var view in Views(groups)) TableHtml.Write(page, view);
        var written = page.ToString();
        written.Length.Should().BeInRange((int)(TableRoom.Bytes * 0.8), (int)(TableRoom.Bytes * 1.05));
        var rows = Views(groups).First().ShownRows.ToString("N0", CultureInfo.InvariantCulture);
        written.Should().Contain($"The page has the first {rows} of 9,000 rows, and sorts and filters these.");
    }

    [Fact]
    public void Rows_after_the_first_forty_stand_in_a_part_of_their_own_and_paper_says_so()
    {
        var page = new Markup();
        TableHtml.Write(page, Views(Groups(41)).Single());
        TableHtml.Write(page, Views(Groups(40)).Single());
        var document = new HtmlParser().ParseDocument(page.ToString());
        document.QuerySelectorAll("tbody").Select(body => (body.ClassName, body.ChildElementCount)).Should().Equal(("", 40), ("rest", 1), ("", 40));
        document.QuerySelectorAll(".paper").Should().ContainSingle().Which.TextContent.Trim().Should().Be("Printed are the first 40 of 41 rows. All stand in tables/sites.csv");
    }

    private static IEnumerable<TableView> Views(ImmutableArray<PageGroup> groups) => groups.SelectMany(group => group.Pages).SelectMany(page => page.Tables);

    private static ImmutableArray<PageGroup> Groups(params int[] rows) =>
    [
        AllPages.Of(Programs.FaultyLot)[0] with
        {
            Pages = [.. rows.Select(count => new Page("p", "P", Programs.FaultyLot.Lots, "", "") { Tables = [View(count)] })],
        },
    ];

    private static TableView View(int rows) => new(
        new Table<int>(
            "sites", "Sites", "For tests.",
            [
                new("by", "By", Unit.Text, "By.", _ => Cell.Text("site")), new("level", "Level", Unit.Text, "Level.", row => Cell.Text("Site-" + row.ToString(CultureInfo.InvariantCulture))),
                new("runs", "Runs", Unit.Count, "Runs.", row => Cell.Count(4000 + row)), new("estimate", "Share", Unit.Proportion, "Share.", row => Cell.Number(1 / (row + 3.0))),
                new("lower", "Lower", Unit.Proportion, "Lower.", row => Cell.Number(1 / (row + 4.0))), new("upper", "Upper", Unit.Proportion, "Upper.", row => Cell.Number(1 / (row + 2.0))),
                new("method", "Method", Unit.Text, "Method.", _ => Cell.Text("wilson")), new("remark", "Remark", Unit.Text, "Remark.", row => row % 3 == 0 ? Cell.Text("few counts") : Cell.Empty),
            ],
            [.. Enumerable.Range(0, rows)]),
        "Every site", [ViewColumn.Level("Site"), "runs", "estimate", new ViewColumn("lower", "Limits", "upper"), ViewColumn.Remark]);
}
