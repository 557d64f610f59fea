using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Files;

namespace ScreenStats.Reporting.Tests.Files;

public class CsvTextTests
{
    [Fact]
    public void Headings_come_first_and_every_line_ends_with_a_line_feed() =>
        CsvText.Of(SmallTable.Of([Cell.Text("a"), Cell.Count(2)])).Should().Be("c0,c1\na,2\n");

    /// <summary>RFC 4180, section 2, rules 5 to 7.</summary>
    [Theory]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData("a\"b", "\"a\"\"b\"")]
    [InlineData("a\nb", "\"a\nb\"")]
    [InlineData("a\r\nb", "\"a\r\nb\"")]
    [InlineData("plain text", "plain text")]
    [InlineData("", "")]
    public void Fields_are_quoted_where_the_standard_asks_for_it(string text, string field) =>
        CsvText.Of(SmallTable.Of([Cell.Text(text), Cell.Count(1)])).Should().Be($"c0,c1\n{field},1\n");

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@sum")]
    [InlineData("\tx")]
    [InlineData("\rx")]
    [InlineData("\nx")]
    public void A_text_that_a_spreadsheet_would_run_is_guarded(string text) =>
        CsvText.Guarded(text).Should().Be("'" + text);

    [Theory]
    [InlineData("a=1")]
    [InlineData("(none)")]
    [InlineData("A-1")]
    [InlineData("")]
    public void Other_texts_are_left_alone(string text) => CsvText.Guarded(text).Should().Be(text);

    [Fact]
    public void Negative_numbers_are_not_guarded() =>
        CsvText.Of(SmallTable.Of([Cell.Number(-0.5), Cell.Count(-3)])).Should().Be("c0,c1\n-0.5,-3\n");

    [Fact]
    public void Undefined_and_empty_cells_are_empty_and_hidden_ones_say_so() =>
        CsvText.Of(SmallTable.Of([Cell.Undefined("no run"), Cell.Empty, Cell.Hidden, Cell.Date(new DateOnly(2026, 2, 1))])).Should().Be("c0,c1,c2,c3\n,,hidden,2026-02-01\n");

    [Fact]
    public void Numbers_come_back_as_they_were_under_every_culture()
    {
        foreach (var culture in Cultures.Names)
        {
            foreach (var number in (double[])[1.0 / 3, 1e-300, 123456789.125, double.Epsilon, 0.1 + 0.2])
            {
                var text = Cultures.In(culture, () => CsvText.Of(SmallTable.Of([Cell.Number(number)])));
                double.Parse(text.Split('\n')[1], CultureInfo.InvariantCulture).Should().Be(number);
            }
        }
    }

    [Fact]
    public void Set_aside_rows_hold_no_text_unless_it_was_asked_for()
    {
        SetAsideText.Of([new SetAsideLine("screening.csv", 7, "person-missing", "No person.")]).Should()
            .Be("file,line,code,reason,first_line\nscreening.csv,7,person-missing,No person.,\n");
        SetAsideText.Of([new SetAsideLine("screening.csv", 9, "duplicate", "Repeats a row.", 3, "=x,y")]).Should()
            .Be("file,line,code,reason,first_line,text\nscreening.csv,9,duplicate,Repeats a row.,3,\"'=x,y\"\n");
        SetAsideText.Of([]).Should().Be("file,line,code,reason,first_line\n");
    }
}
