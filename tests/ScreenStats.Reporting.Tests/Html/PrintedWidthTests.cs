using System.Collections.Immutable;
using ScreenStats.Reporting.Html;
using ScreenStats.Reporting.Html.Tables;

namespace ScreenStats.Reporting.Tests.Html;

/// <summary>How tables are set on paper; that none is cut there is measured in a browser.</summary>
public class PrintedWidthTests
{
    [Theory]
    [InlineData(4, "")]
    [InlineData(10, "wide")]
    [InlineData(12, "stack")]
    public void The_more_columns_the_smaller_the_type_and_then_lines_are_wrapped(int columns, string expected) =>
        PrintedWidth.Class(Repeat(columns, "Heading"), Repeat(columns, "n"), [Row(columns, "1,234,567", "n")]).Should().Be(expected);

    [Fact]
    public void Long_words_count_as_they_cannot_be_broken_and_long_texts_do_not() =>
        (Class(4, new string('w', 30)), Class(4, string.Join(' ', Enumerable.Repeat("word", 40)))).Should().Be(("stack", ""));

    [Fact]
    public void What_stands_below_a_figure_counts_too() =>
        PrintedWidth.Class(Repeat(6, "A"), Repeat(6, "n"), [[.. Enumerable.Repeat(new TableCell("1", "0.123 % to 45.6 %", "n"), 6)]]).Should().Be("wide");

    private static string Class(int columns, string text) => PrintedWidth.Class(Repeat(columns, "A"), Repeat(columns, "t"), [Row(columns, text, "t")]);

    private static ImmutableArray<string> Repeat(int count, string text) => [.. Enumerable.Repeat(text, count)];

    private static ImmutableArray<TableCell> Row(int count, string text, string style) => [.. Enumerable.Repeat(new TableCell(text, "", style), count)];
}
