using CsCheck;
using ScreenStats.Cli.Terminal;

namespace ScreenStats.Cli.Tests.Terminal;

public sealed class WrappedTests
{
    [Fact]
    public void Lines_are_broken_between_words_and_go_on_under_their_beginning() =>
        Wrapped.Of("note: one two three\n  four five six", 12).Should().Be("note: one\n  two three\n  four five\n    six");

    [Fact]
    public void A_word_longer_than_the_line_stands_alone_and_whole() =>
        Wrapped.Of("see /a/very/long/path/indeed for more", 12).Should().Be("see\n  /a/very/long/path/indeed\n  for more");

    [Fact]
    public void Wide_letters_take_two_columns() => Wrapped.Of("東京 大阪", 8).Should().Be("東京\n  大阪");

    [Fact]
    public void No_word_is_lost_and_only_a_single_word_is_longer_than_the_line() => Gen.Select(Gen.String[Gen.Char['a', 'c'], 1, 12].Array[1, 20], Gen.Int[10, 30]).Sample((words, width) =>
    {
        var lines = Wrapped.Of(string.Join(' ', words), width).Split('\n');

        lines.SelectMany(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Should().Equal(words);
        lines.Should().OnlyContain(line => line.Length <= width || !line.Trim().Contains(' ', StringComparison.Ordinal));
    });
}
