using CsCheck;
using ScreenStats.Cli.Terminal;

namespace ScreenStats.Cli.Tests.Terminal;

public sealed class PlainLayoutTests
{
    // Letters, blanks, signs that mean something to the drawing library, and now and then what is not plain.
    private static readonly Gen<char> Letter = Gen.Frequency((30, Gen.Char['a', 'z']), (8, Gen.Const(' ')), (4, OneOf("[]/-:~0.")), (1, OneOf("ä\n界\u0301")));
    private static readonly Gen<string> Text = Gen.String[Letter, 0, 120];
    private static readonly Gen<string> Word = Gen.String[Letter, 0, 12];

    private static Gen<char> OneOf(string signs) => Gen.Int[0, signs.Length - 1].Select(index => signs[index]);

    private static readonly Gen<(TableColumnPlan[] Columns, string[][] Rows)> AnyTable = Gen.Int[1, 5].SelectMany(columns => Gen.Select(
        Gen.Select(Word, Gen.Bool, (heading, right) => new TableColumnPlan(heading, right)).Array[columns], Word.Array[columns].Array[0, 6]));

    [Fact]
    public void A_paragraph_is_what_the_drawing_library_makes_of_it()
    {
        var plain = 0;
        Gen.Select(Text, Gen.Int[5, 100]).Sample((text, width) =>
        {
            if (PlainLayout.Paragraph(text, width) is not { } made) return;
            Interlocked.Increment(ref plain);
            made.Should().Be(DrawnLayout.Paragraph(text, width, color: false));
            foreach (var color in (bool[])[false, true])
            {
                if (PlainLayout.Title(text, width, color) is { } title) title.Should().Be(DrawnLayout.Title(text, width, color));
            }
        }, iter: 3000);
        plain.Should().BePositive();
    }

    [Fact]
    public void A_table_is_what_the_drawing_library_makes_of_it()
    {
        var plain = 0;
        Gen.Select(AnyTable, Gen.Int[10, 80], Gen.Bool).Sample((table, width, color) =>
        {
            if (PlainLayout.Table(table.Columns, table.Rows, width, color) is not { } made) return;
            Interlocked.Increment(ref plain);
            made.Should().Be(DrawnLayout.Table(table.Columns, table.Rows, width, color));
        }, iter: 3000);
        plain.Should().BePositive();
    }

    [Theory]
    [InlineData("", 80)]
    [InlineData("two  blanks", 80)]
    [InlineData(" first", 80)]
    [InlineData("last ", 80)]
    [InlineData("café", 80)]
    [InlineData("of\nlines", 80)]
    [InlineData("averylongword", 12)]
    public void What_is_not_plain_is_left_to_the_drawing_library(string text, int width) => PlainLayout.Paragraph(text, width).Should().BeNull();

    [Fact]
    public void A_table_wider_than_the_screen_is_left_to_the_drawing_library()
    {
        PlainLayout.Table([new("name"), new("count", true)], [["abcdef", "12"]], 15, styled: false).Should().Be("name    count\nabcdef     12\n");
        PlainLayout.Table([new("name"), new("count", true)], [["abcdef", "12"]], 14, styled: false).Should().BeNull();
    }
}
