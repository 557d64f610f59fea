using System.Collections.Immutable;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Tests;

public class ProgramHintsTests
{
    private const string Head = "Key;Plant;Date;Finding\n";

    [Fact]
    public void Several_columns_without_a_heading_are_one_message_that_names_each_key()
    {
        using var folder = new TestFolder().With("screening.csv", Head + "p1;North;2026-01-05;negative\n");

        var found = folder.Refused().Should().ContainSingle().Subject;

        found.Code.Should().Be(ReadingDiagnostics.MissingColumn);
        found.Message.Should().Contain("required columns person and result (or control_line and test_line)")
            .And.Contain("\"person\": \"the heading\", \"result\": \"the heading\"");
    }

    [Fact]
    public void What_is_printed_needs_only_its_dots_filled_and_its_slashes_taken_away()
    {
        using var folder = new TestFolder().With("screening.csv", Head + "p1;North;2026-01-05;negative\n");
        var text = Printed(folder);

        text.Should().Contain("// Headings that were not read: \"Key\", \"Finding\"");
        ProgramFile.Parse(text).Exports.Screening.Columns.Should().NotContainKey("person", "comments say nothing yet");
        var filled = text.Replace("// \"person\": \"...\"", "\"person\": \"Key\"", StringComparison.Ordinal).Replace("// \"result\": \"...\"", "\"result\": \"Finding\"", StringComparison.Ordinal)
            .Replace("// \"timeZone\"", "\"timeZone\"", StringComparison.Ordinal);
        var settings = ProgramFile.Parse(filled);

        settings.TimeZone.Should().Be("Europe/Vienna");
        TestFolder.Outcomes(folder.Read(settings)).Should().Equal(1, 0, 0, 0);
    }

    [Fact]
    public void An_order_of_dates_in_doubt_and_words_that_are_not_known_are_keys_to_fill_in()
    {
        using var folder = new TestFolder().With("screening.csv", "person,site,collected_at,result\np1,A,01/02/2026,negative\np2,A,03/04/2026,negative\n");
        Refilled(Printed(folder), "dateOrder").Exports.Screening.DateOrder.Should().Be(DateOrder.DayFirst);

        var rows = string.Concat(Enumerable.Range(0, 12).Select(i => $"p{i},A,2026-01-05T08:{i:00},{(i < 6 ? "ujemny" : "dodatni")}\n"));
        using var words = new TestFolder().With("screening.csv", "person,site,collected_at,result\n" + rows);
        var text = Printed(words);
        text.Should().Contain("Words of result that are not known: write what each means (negative, positive, inconclusive, invalid)");
        var settings = ProgramFile.Parse(text.Replace("// \"ujemny\": \"...\"", "\"ujemny\": \"negative\"", StringComparison.Ordinal).Replace("// \"dodatni\": \"...\"", "\"dodatni\": \"positive\"", StringComparison.Ordinal));
        TestFolder.Outcomes(words.Read(settings)).Should().Equal(6, 6, 0, 0);
    }

    [Theory]
    [InlineData("specimen", "policzek", true)]
    [InlineData("specimen", "Schneider", false)]
    [InlineData("collected by", "policzek", false)]
    public void The_few_words_of_a_column_in_another_language_are_shown_but_no_names(string heading, string word, bool shown)
    {
        var rows = string.Concat(Enumerable.Range(0, 12).Select(i => $"p{i},A,2026-01-05T08:{i:00},negative,{(i < 6 ? word : "gardziel")}\n"));
        using var folder = new TestFolder().With("screening.csv", $"person,site,collected_at,result,{heading}\n{rows}");

        var column = folder.Read().Understanding[0].Columns.Single(one => one.UnknownWords > 0);

        column.UnknownWords.Should().Be(12);
        column.UnknownWordsShown.Should().HaveCount(shown ? 2 : 0);
    }

    [Fact]
    public void A_comment_never_leaves_its_line()
    {
        var text = PinnedProgram.Text([], [new ProgramHint([], "one\n\"title\": \"two\u2028three\""), new ProgramHint(["policy"], "\"episodeDays\": 3")]);

        ProgramFile.Parse(text).Title.Should().Be(new ProgramSettings().Title);
        text.Split('\n').Should().HaveCount(7);
    }

    [Theory]
    [InlineData("/data/works_north-2026", "Works north 2026")]
    [InlineData("/data/2026", null)]
    [InlineData("/data/anna_schmidt", null)]
    [InlineData("/", null)]
    public void A_program_without_a_title_is_called_as_its_folder_unless_that_could_be_a_person(string folder, string? title) =>
        ProgramTitle.OfFolder(folder).Should().Be(title);

    private static string Printed(TestFolder folder)
    {
        var (understanding, diagnostics) = Look(folder);
        var pinned = PinnedProgram.Of(understanding);
        return PinnedProgram.Text(pinned, ProgramHints.Of(understanding, diagnostics, pinned));
    }

    private static (ImmutableArray<ExportUnderstanding> Understanding, ImmutableArray<Diagnostic> Diagnostics) Look(TestFolder folder)
    {
        try
        {
            var read = folder.Read();
            return (read.Understanding, read.Diagnostics);
        }
        catch (RefusedReadingException refusal)
        {
            return (refusal.Understanding, refusal.Diagnostics);
        }
    }

    private static ProgramSettings Refilled(string text, string key)
    {
        text.Should().Contain($"// \"{key}\"");
        return ProgramFile.Parse(text.Replace($"// \"{key}\"", $"\"{key}\"", StringComparison.Ordinal));
    }
}
